using System.Collections.Immutable;
using OxyPlot;
using SweepStats.Report.Drawing;
using SweepStats.Shielding;

namespace SweepStats.Report.Specimens;

/// <summary>Shielding of up to eight specimens side by side.</summary>
internal static class OverviewChart
{
    /// <summary>More lines than this cannot be told apart.</summary>
    public const int Most = 8;

    private const double ArrowSpacing = 42;

    public static Chart Of(AnalysisResult result, ImmutableArray<ShieldingCurve> curves, string name, string title)
    {
        ImmutableArray<CurvePoints> points = [.. curves.Select(c => new CurvePoints(c))];
        Trace? required = RequirementLine.Of(result.Plan.Requirement, result.Campaign.Grid);
        Trace? guarded = RequirementLine.Guarded(result.Plan.Rule, result.Campaign.Grid);
        bool capped = points.Any(p => p.Bounds.Count > 0);
        IEnumerable<double> seen = points.SelectMany(p => p.Seen).Concat((guarded ?? required)?.Points.Select(p => p.Y) ?? []);
        IReadOnlyList<string> names = Frame.Names([.. curves.Select(c => c.Name.ToString())]);
        PlotModel model = Frame.Model(
                title, SpecimenChartWords.OverviewSubtitle(result, points.Any(p => p.HasEstimates),
                    points.Any(p => p.HasUnrepeated), capped ? BoundCauses.Of(curves) : null),
                FrequencyScale.Axis(result.Campaign.Grid), DecibelScale.Axis("Shielding (dB)", seen, capped ? 0.16 : 0.06))
            .With(points.SelectMany((p, i) => Lines(p, i, points.Length, names[i])).Append(required).Append(guarded));
        return new Chart(name, ChartKind.Overview, title, SpecimenChartWords.OverviewDescription(curves), model);
    }

    /// <summary>Band, line and arrows of one specimen; the first that is there carries the name.</summary>
    private static IEnumerable<ChartSeries> Lines(CurvePoints points, int place, int places, string piece)
    {
        Ink ink = Ink.Lines[place];
        double shift = MarkerShift(place, places, 96);
        bool named = points.HasEstimates || points.HasUnrepeated;
        if (points.HasEstimates)
        {
            yield return new IntervalBand
            {
                Colour = ink.Colour,
                Slices = points.Interval,
                Strength = 22,
                Outlined = false,
                LoneBars = places == 1,
            };
            yield return new Trace
            {
                Colour = ink.Colour,
                Points = points.Estimate,
                Dash = ink.Dash,
                Marker = ink.Marker,
                MarkerStart = shift,
                LoneDots = true,
                Title = piece,
                ArrowStyle = points.Bounds.Count > 0 ? place : null,
            };
        }

        if (points.HasUnrepeated)
        {
            yield return new Trace
            {
                Colour = ink.Colour,
                Points = points.Unrepeated,
                Dash = [1.5, 3],
                Thickness = 1.2,
                LoneDots = true,
                Hollow = true,
                Marker = ink.Marker,
                MarkerStart = shift,
                Title = points.HasEstimates ? null : $"{piece} ({SpecimenChartWords.UnrepeatedLegend})",
                ArrowStyle = points.Bounds.Count > 0 ? place : null,
            };
        }

        if (points.Bounds.Count > 0)
        {
            yield return new OpenBounds
            {
                Colour = ink.Colour,
                Bounds = points.Bounds,
                Length = 16,
                Style = place,
                Spacing = ArrowSpacing,
                Shift = MarkerShift(place, places, ArrowSpacing),
                Title = named ? null : $"{piece} ({SpecimenChartWords.ArrowLegend})",
            };
        }
    }

    private static double MarkerShift(int place, int places, double spacing) => (place + 0.5) * spacing / places;
}
