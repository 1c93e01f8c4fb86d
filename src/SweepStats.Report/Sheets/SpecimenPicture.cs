using OxyPlot;
using SweepStats.Report.Pages;
using SweepStats.Report.Specimens;
using SweepStats.Shielding;

namespace SweepStats.Report.Sheets;

/// <summary>One of many small pictures of the same scales: the shielding of one specimen with its interval.</summary>
internal sealed class SpecimenPicture
{
    private const double Width = 300;
    private const double Height = 158;
    private const double ArrowSpacing = 22;

    // So many points can be told apart in so little room.
    private const int MostPoints = 130;

    // And so many read off it: a value at every second pixel of a wide screen.
    private const int MostRead = 400;

    private readonly AnalysisResult _result;
    private readonly PlotSpace _space;
    private readonly IReadOnlyList<DataPoint> _asked;

    /// <summary>Scales that hold all specimens shown.</summary>
    public SpecimenPicture(AnalysisResult result, IEnumerable<ShieldingCurve> shown)
    {
        _result = result;
        _asked = result.Plan.Requirement is { } asked ? RequirementLine.Points(asked, result.Campaign.Grid) : [];
        IEnumerable<double> seen = shown.SelectMany(c => c.Readings).Select(RangeOfSpecimens.Known);
        _space = new PlotSpace(Width, Height, result.Campaign.Grid, seen.Concat(_asked.Select(p => p.Y)));
    }

    /// <summary>Draws a specimen, and leaves the values beside it that the page's script reads off.</summary>
    public void Write(HtmlWriter html, ShieldingCurve curve)
    {
        var points = new CurvePoints(curve);
        string shows = SpecimenChartWords.ShieldingDescription(curve, _result.Bands.FirstOrDefault(b => b.Name == curve.Name));
        var plot = new Plot(html, _space, shows, read: true);
        plot.Axes("dB");
        plot.Area("range", [.. Thinning.Outermost(points.Interval, MostPoints).Select(_space.Closed)]);
        plot.Line("asked", Thinning.Lowest(_asked, MostPoints));
        plot.Line("single", Thinning.Lowest(points.Unrepeated, MostPoints));
        plot.Line("line", Thinning.Lowest(points.Estimate, MostPoints));
        plot.Bounds(points.Bounds, ArrowSpacing);
        plot.End();
        int[] places = Thinning.Places(curve.Readings.Length, MostRead, i => RangeOfSpecimens.Known(curve.Readings[i]));
        PlottedRow[] asked = _result.Plan.Requirement is { } requirement
            ? [PlottedValues.Of(requirement, _result.Campaign.Grid)] : [];
        PlottedValues.Write(html, _result.Campaign.Grid, places, [PlottedValues.Of(curve), .. asked]);
    }
}
