using OxyPlot;
using SweepStats.Report.Drawing;
using SweepStats.Shielding;

namespace SweepStats.Report.Specimens;

/// <summary>Shielding of up to eight specimens side by side.</summary>
internal static class OverviewChart
{
    /// <summary>More lines than this cannot be told apart.</summary>
    public const int Most = 8;

    /// <summary>The chart of these specimens, <see cref="Most"/> at most, with what is asked of them.</summary>
    public static Chart Of(AnalysisResult result, ImmutableArray<ShieldingCurve> curves, string name, string title)
    {
        ImmutableArray<CurvePoints> points = [.. curves.Select(c => new CurvePoints(c))];
        AskedLines asked = AskedLines.Of(result);
        bool capped = points.Any(p => p.Bounds.Count > 0);
        IReadOnlyList<string> names = Frame.Names([.. curves.Select(c => c.Name.ToString())]);
        PlotModel model = Frame.Model(
                title, SpecimenChartWords.OverviewSubtitle(result, points.Any(p => p.HasEstimates),
                    points.Any(p => p.HasUnrepeated), capped ? BoundCauses.Of(curves) : null),
                FrequencyScale.Axis(result.Campaign.Grid),
                DecibelScale.Axis("Shielding (dB)", points.SelectMany(p => p.Seen).Concat(asked.Seen), capped ? 0.16 : 0.06))
            .With([.. points.SelectMany((p, i) => Lines(p, new(i, points.Length), names[i])), asked.Required, asked.Guarded]);
        return new Chart(name, ChartKind.Overview, title, SpecimenChartWords.OverviewDescription(curves), model);
    }

    /// <summary>Band, line and arrows of one specimen; the first that is there carries the name.</summary>
    private static IEnumerable<ChartSeries> Lines(CurvePoints points, OneOfSeveral among, string piece)
    {
        if (points.HasEstimates)
        {
            yield return new IntervalBand
            {
                Colour = among.Ink.Colour,
                Slices = points.Interval,
                Strength = 22,
                Outlined = false,
                LoneBars = among.Places == 1,
            };
            yield return among.Line(points.Estimate, piece, points.Bounds.Count > 0);
        }

        if (points.HasUnrepeated)
        {
            yield return Unrepeated(points, among,
                points.HasEstimates ? null : $"{piece} ({SpecimenChartWords.UnrepeatedLegend})");
        }

        bool named = points.HasEstimates || points.HasUnrepeated;
        yield return among.Arrows(points.Bounds, named ? null : $"{piece} ({SpecimenChartWords.ArrowLegend})");
    }

    private static Trace Unrepeated(CurvePoints points, OneOfSeveral among, string? title) => new()
    {
        Colour = among.Ink.Colour,
        Points = points.Unrepeated,
        Dash = [1.5, 3],
        Thickness = 1.2,
        LoneDots = true,
        Hollow = true,
        Marker = among.Ink.Marker,
        MarkerStart = among.MarkerStart,
        Title = title,
        ArrowStyle = points.Bounds.Count > 0 ? among.Place : null,
    };
}
