using OxyPlot;
using SweepStats.Checks;
using SweepStats.Report.Drawing;
using SweepStats.Sweeps;

namespace SweepStats.Report.Findings;

/// <summary>
/// How steady the sweeps were: the offset of each from the middle of its group, at the time it was taken or in order.
/// </summary>
internal static class OffsetChart
{
    private const string Drift = "drift";

    // From so many sweeps on marks of full size would hide each other.
    private const int Crowded = 250;
    private const int MostStripes = 40;

    /// <summary>The chart; null where no sweeps repeat each other.</summary>
    public static Chart? Of(AnalysisResult result, string name)
    {
        if (result.Repeats.IsEmpty)
        {
            return null;
        }

        var places = SweepPlaces.Of(result.Repeats);
        OddMarks odd = OddSweeps(places, result);
        var offsets = OffsetSummary.Of(result.Repeats, places);
        PlotModel model = Frame.Model(FindingChartWords.OffsetTitle, FindingChartWords.OffsetSubtitle(offsets), places.Axis,
            DecibelScale.Axis("Offset from the middle of its group (dB)",
                places.Groups.SelectMany(g => g.Sweeps).Select(s => s.Offset.Value).Append(0), 0.1))
            .With([
                places.ByTime ? null : new GroupStripes { Colour = Ink.Veil(Ink.Faint, 110), Groups = Stripes(places) },
                new Trace { Colour = Ink.Black, Points = Frame.Across(places.Axis, 0), Thickness = 1 },
                .. Marks(places), Drifts(places, result), odd,
            ]);
        return new Chart(name, ChartKind.Offsets, FindingChartWords.OffsetTitle,
            FindingChartWords.OffsetDescription(offsets, [.. odd.Sweeps.Select(o => o.Name)]), model)
        {
            Shows = ["odd-sweep", Drift],
        };
    }

    /// <summary>Stretches of the groups; of the lots where groups are too many to see.</summary>
    private static List<(double From, double To)> Stripes(SweepPlaces places) =>
    [
        .. places.Groups.Zip(places.Places)
            .GroupBy(g => (g.First.Role, g.First.Specimen?.Lot, places.Groups.Length > MostStripes ? null : g.First))
            .Select(g => (g.First().Second[0], g.Last().Second[^1])),
    ];

    private static IEnumerable<OffsetMarks> Marks(SweepPlaces places)
    {
        bool crowded = places.Groups.Sum(g => g.Sweeps.Length) > Crowded;
        (SweepRole Role, OxyColor Colour, MarkerType Marker, double Size)[] kinds =
        [
            (SweepRole.Covered, Ink.Blue, MarkerType.Circle, crowded ? 2.4 : 3.6),
            (SweepRole.Reference, Ink.Black, MarkerType.Diamond, 4.6),
            (SweepRole.Floor, Ink.Grey, MarkerType.Square, 3.6),
        ];
        return from kind in kinds
               let groups = Enumerable.Range(0, places.Groups.Length).Where(i => places.Groups[i].Role == kind.Role)
                   .Select(places.Points).ToList()
               where groups.Count > 0
               select new OffsetMarks
               {
                   Colour = kind.Colour,
                   Groups = groups,
                   Marker = kind.Marker,
                   Size = kind.Size,
                   Hollow = kind.Role == SweepRole.Floor,
                   Title = FindingChartWords.Sweeps(kind.Role),
               };
    }

    private static OddMarks OddSweeps(SweepPlaces places, AnalysisResult result) => new()
    {
        Colour = Ink.Red,
        Sweeps =
        [
            .. places.Groups.Zip(places.Places).SelectMany(g => g.First.Sweeps.Zip(g.Second, (sweep, x) => (sweep, x, g.First)))
                .Where(s => result.OddRepeats.Any(odd => ReferenceEquals(odd.Sweep, s.sweep)))
                .Select(s => (new DataPoint(s.x, s.sweep.Offset.Value),
                    FindingChartWords.SweepOf(s.First, s.sweep.Sweep, result.Repeats))),
        ],
        Others = [.. Enumerable.Range(0, places.Groups.Length).SelectMany(places.Points)],
        Title = FindingChartWords.OddLegend,
    };

    private static DriftLines? Drifts(SweepPlaces places, AnalysisResult result)
    {
        Finding[] drifts = [.. result.Findings.Where(f => f.Code == Drift)];
        List<DataPoint>[] lines =
        [
            .. from test in result.Drifts
               from i in Enumerable.Range(0, test.Groups.Length)
               where drifts.Any(f => f.Role is null || f.Role == test.Groups[i].Role)
               select places.Places[places.Groups.IndexOf(test.Groups[i])].Zip(test.Line(i), (x, y) => new DataPoint(x, y))
                   .OrderBy(p => p.X).ToList(),
        ];
        return lines.Length == 0 ? null
            : new DriftLines { Colour = Ink.Red, Lines = lines, Title = FindingChartWords.DriftLegend(drifts) };
    }
}
