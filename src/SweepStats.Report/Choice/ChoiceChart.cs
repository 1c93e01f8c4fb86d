using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Report.Drawing;
using SweepStats.Report.Specimens;
using SweepStats.Sweeps;

namespace SweepStats.Report.Choice;

/// <summary>
/// The candidates of a band, best group first: mean with interval, claim, and the probability of being the best.
/// </summary>
internal static class ChoiceChart
{
    /// <summary>More rows than this are not read.</summary>
    public const int Most = 40;

    private const int RowHeight = 24;
    private const int Surroundings = 175;

    // Room at the right for the probabilities.
    private const double Margin = 96;

    // Room at the end of the longest interval for its figure, as a share of the span; a figure without interval says so.
    private const double RoomForFigures = 0.2;
    private const double RoomForWords = 0.5;

    // Claims that would take more room than the means themselves are left to the tables, with some allowance where these lie
    // close together.
    private const double LeastRoomDb = 3;

    /// <summary>Whether there is a chart of a band: something is known of a candidate.</summary>
    public static bool Shows(BandRanking band) => band.Ranking.Any(IsKnown);

    /// <summary>The chart; null where nothing is known of any candidate.</summary>
    public static Chart? Of(AnalysisResult result, SpecimenChoice choice, BandRanking band, string name)
    {
        if (!Shows(band))
        {
            return null;
        }

        ChoiceRows rows = ChoiceRows.Of(ChoiceWords.NoWinner(choice) is null ? band : Ungrouped(band), Most);
        HashSet<SpecimenName> dominated = [.. choice.Dominated.Select(d => d.Name)];
        string title = ChoiceChartWords.ChoiceChartTitle(choice, band);
        PointMarks? claims = Claims(rows);
        PlotModel model = Frame.Model(title, ChoiceChartWords.ChoiceChartSubtitle(choice, band, rows.Placed.Count),
            Values(rows, claims), rows.Axis()).With([
            new RowStripes { Colour = Ink.Veil(Ink.Faint, 130), Groups = rows.Groups },
            new RowText { Colour = Ink.Black, Rows = rows.Headings, Heading = true },
            .. Probabilities(rows),
            .. Means(rows, dominated, SpecimenChartWords.MeanLegend(result.Plan.Confidence)),
            Yardstick(rows),
            claims,
            Unknown(rows),
        ]);
        model.Padding = Room(model.Padding, rows);
        return new Chart(name, ChartKind.Choice, title, ChoiceChartWords.ChoiceChartDescription(choice, band, dominated), model,
            Surroundings + (RowHeight * Math.Max(4, rows.Count)));
    }

    private static OxyThickness Room(OxyThickness usual, ChoiceRows rows) =>
        new(usual.Left, usual.Top, rows.HasProbabilities ? Margin : usual.Right, usual.Bottom);

    // Groups say who is best, and none is said to be.
    private static BandRanking Ungrouped(BandRanking band) =>
        band with { Ranking = [.. band.Ranking.Select(r => r with { Group = null })] };

    private static bool IsKnown(RankedSpecimen specimen) => specimen.MeanDb is { Low: not null } or { Value: not null };

    private static IEnumerable<BandRows> Means(ChoiceRows rows, HashSet<SpecimenName> dominated, string legend)
    {
        ILookup<bool, PlacedSpecimen> placed = rows.Placed.ToLookup(p => dominated.Contains(p.Specimen.Name));
        yield return Means(Figures(placed[false]), MarkerType.Circle, legend);
        yield return Means(Figures(placed[true]), MarkerType.Diamond, ChoiceChartWords.DominatedLegend);
    }

    private static BandRows Means(List<FigureRow> figures, MarkerType marker, string legend) => new()
    {
        Colour = Ink.Black,
        Figures = figures,
        Hollow = marker == MarkerType.Diamond,
        Marker = marker,
        Title = figures.TrueForAll(f => f.Value is not null && f.High is null) ? SpecimenChartWords.UnrepeatedLegend : legend,
    };

    private static BandRows? Yardstick(ChoiceRows rows) => rows.Yardstick is { } yardstick && IsKnown(yardstick.Specimen)
        ? new BandRows
        {
            Colour = Ink.Lines[1].Colour,
            Figures = Figures([yardstick]),
            Marker = MarkerType.Square,
            Title = ChoiceChartWords.YardstickLegend,
        } : null;

    private static PointMarks? Claims(ChoiceRows rows)
    {
        List<DataPoint> claims = [.. rows.All.Where(p => p.Specimen.AtLeast is not null)
            .Select(p => new DataPoint(p.Specimen.AtLeast!.Value.Value, p.Row))];
        double[] means = Seen(rows);
        bool squeezing = claims.Exists(c => c.X < means.Min() - Math.Max(means.Max() - means.Min(), LeastRoomDb));
        return claims.Count == 0 || squeezing ? null
            : new PointMarks
            {
                Colour = Ink.Blue,
                Points = claims,
                Marker = MarkerType.None,
                Size = 6,
                Title = ChoiceChartWords.ChoiceClaimLegend,
            };
    }

    private static RowText? Unknown(ChoiceRows rows)
    {
        List<(double Row, string Text)> unknown =
            [.. rows.All.Where(p => !IsKnown(p.Specimen)).Select(p => (p.Row, ChoiceChartWords.NothingKnown))];
        return unknown.Count == 0 ? null : new RowText { Colour = Ink.Grey, Rows = unknown };
    }

    private static IEnumerable<RowText> Probabilities(ChoiceRows rows)
    {
        if (rows.HasProbabilities)
        {
            yield return new RowText
            {
                Colour = Ink.Grey,
                Rows = [(rows.Headings[0].Row, ChoiceChartWords.ProbabilityHeading)],
                EndsBeyond = Margin - ChartTitle.Edge,
            };
            yield return new RowText
            {
                Colour = Ink.Black,
                Rows = [.. rows.Placed.Where(p => p.Specimen.Group is not null)
                    .Select(p => (p.Row, ChoiceChartWords.BestProbability(p.Specimen)))],
                EndsBeyond = Margin - ChartTitle.Edge,
            };
        }
    }

    private static List<FigureRow> Figures(IEnumerable<PlacedSpecimen> rows) =>
    [
        .. rows.Where(p => IsKnown(p.Specimen)).Select(p => Figure(p.Row, p.Specimen.MeanDb)),
    ];

    private static FigureRow Figure(double row, BandFigure mean) =>
        new(row, mean.Value, mean.Low ?? mean.Value!.Value, mean.High);

    private static double[] Seen(ChoiceRows rows) => [.. Figures(rows.All).SelectMany(f => new[] { f.Low, f.High ?? f.Low })];

    private static LinearAxis Values(ChoiceRows rows, PointMarks? claims) =>
        DecibelScale.Axis("Shielding (dB)", Seen(rows).Concat(claims?.Points.Select(p => p.X) ?? []),
            rows.All.Any(p => p.Specimen.MeanDb is { Value: not null, High: null }) ? RoomForWords : RoomForFigures).AtBottom();
}
