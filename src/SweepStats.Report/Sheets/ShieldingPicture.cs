using OxyPlot;
using SweepStats.Report.Drawing;
using SweepStats.Report.Pages;
using SweepStats.Report.Screens;
using SweepStats.Report.Specimens;
using SweepStats.Report.Text;
using SweepStats.Shielding;

namespace SweepStats.Report.Sheets;

/// <summary>
/// Shielding of all specimens over frequency: their range, the weakest, the requirement, and how far the set-up can see.
/// </summary>
internal sealed class ShieldingPicture
{
    // Of more frequencies than this the lowest of neighbours is read.
    private const int MostRead = 2000;

    // An upper end further above all else than this would squeeze it.
    private const double TallestRange = 12;

    private readonly AnalysisResult _result;
    private readonly ShieldingCurve _weakest;
    private readonly CurvePoints _points;
    private readonly RangeOfSpecimens _range;
    private readonly IReadOnlyList<DataPoint> _asked;

    private ShieldingPicture(AnalysisResult result)
    {
        _result = result;
        _weakest = result.Curves[FirstScreenWords.LowestClaim(result)];
        _points = new CurvePoints(_weakest);
        _range = new RangeOfSpecimens(result);
        _asked = result.Plan.Requirement is { } asked ? RequirementLine.Points(asked, result.Campaign.Grid) : [];
    }

    /// <summary>The picture in both sizes, and its values.</summary>
    public static void Write(HtmlWriter html, AnalysisResult result)
    {
        var picture = new ShieldingPicture(result);
        picture.Write(html, PictureSize.Broad);
        picture.Write(html, PictureSize.Narrow);
        picture.Values(html);
    }

    private void Values(HtmlWriter html)
    {
        int[] places = Thinning.Places(_weakest.Readings.Length, MostRead, i => RangeOfSpecimens.Known(_weakest.Readings[i]));
        PlottedRow[] rows =
        [
            PlottedValues.Of(_weakest),
            .. _result.Curves.Length > 1 ? [PlottedValues.Of(_result.Curves, _range)] : Array.Empty<PlottedRow>(),
            .. _result.Plan.Requirement is { } requirement ? [PlottedValues.Of(requirement, _result.Campaign.Grid)]
                : Array.Empty<PlottedRow>(),
        ];
        PlottedValues.Write(html, _result.Campaign.Grid, places, rows);
    }

    private void Write(HtmlWriter html, PictureSize size)
    {
        var space = new PlotSpace(size.Width, size.Height, _result.Campaign.Grid, Seen());
        var plot = new Plot(html, space, SheetWords.PictureShows(_result, _weakest.Name), size.Kind, read: true);
        Usable(plot, size);
        plot.Axes("Shielding (dB)");
        plot.Area("range", [.. Thinning.Outermost(_range.Slices, size.MostPoints).Select(plot.Space.Closed)]);
        plot.Line("asked", Thinning.Lowest(_asked, size.MostPoints));
        plot.Line("single", Thinning.Lowest(_points.Unrepeated, size.MostPoints));
        plot.Line("line", Thinning.Lowest(_points.Estimate, size.MostPoints));
        plot.Upwards(_range.Open.Where(p => _result.Curves.Length > 1 && double.IsFinite(p.Y)));
        plot.Bounds(_points.Bounds);
        Weakest(plot, size);
        plot.End();
    }

    private void Usable(Plot plot, PictureSize size)
    {
        if (_range.Usable.Any(p => double.IsFinite(p.Y)))
        {
            IEnumerable<DataPoint> usable = Thinning.Lowest(_range.Usable, size.MostPoints);
            plot.Area("usable", [.. usable.Select(p => new Slice(p.X, plot.Space.Lowest, p.Y))]);
        }
    }

    private double[] Seen()
    {
        double most = _range.Slices.Select(s => s.High).Where(double.IsFinite).DefaultIfEmpty(0).Max() + TallestRange;
        IEnumerable<double> range = _range.Slices.SelectMany(s => new[] { s.Low, s.High });
        return [.. range, .. _points.Seen.Where(y => y < most), .. _asked.Select(p => p.Y)];
    }

    // The lowest claim, named at the point that it rests on.
    private void Weakest(Plot plot, PictureSize size)
    {
        if (_result.Bands.FirstOrDefault(b => b.Name == _weakest.Name) is not { AtLeast: { } claim, WeakestAt: { } at })
        {
            return;
        }

        (double x, double y) = (plot.Space.X(at.Value), plot.Space.Y(claim.Value));
        plot.Dot(x, y);
        bool left = x > (plot.Space.Left + plot.Space.Right) / 2;
        double below = Math.Min(y + 17, plot.Space.Bottom - 5);
        string label = $"{ShortNames.Ends(_weakest.Name.ToString(), size.LongestName)} {PrintedLevel.Bound(claim)}";
        plot.Text(label, x + (left ? -7 : 7), below, left ? "end" : "start", "named");
    }
}
