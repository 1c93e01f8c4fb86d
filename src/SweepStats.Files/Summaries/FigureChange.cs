namespace SweepStats.Files.Summaries;

/// <summary>A figure that differs, in dB.</summary>
/// <param name="Name">Specimen, or lot and band.</param>
/// <param name="Figure">Which of its figures: "mean", "10th percentile", "at least" or "promised".</param>
/// <param name="Earlier">In the earlier result.</param>
/// <param name="Later">In the later result.</param>
/// <param name="ByDb">How much the later lies above; null where one of them is a value and the other a bound, or unknown.</param>
/// <param name="AreApart">Whether the two intervals have nothing in common.</param>
public sealed record FigureChange(string Name, string Figure, Estimate Earlier, Estimate Later, double? ByDb, bool AreApart)
{
    /// <summary>Figures of what both results have, where they differ.</summary>
    internal static ImmutableArray<FigureChange> Between(ResultSummary earlier, ResultSummary later)
    {
        Dictionary<FigureName, Estimate> before =
            Figures(earlier).GroupBy(f => f.Name).ToDictionary(g => g.Key, g => g.First().Is);
        return
        [
            .. Figures(later).Where(f => before.TryGetValue(f.Name, out Estimate was) && was != f.Is)
                .Select(f => Of(f.Name, before[f.Name], f.Is)),
        ];
    }

    private static FigureChange Of(FigureName name, Estimate earlier, Estimate later) =>
        new(name.Of, name.Figure, earlier, later, later.Above(earlier), later.IsApartFrom(earlier));

    private static IEnumerable<NamedFigure> Figures(ResultSummary of) =>
    [
        .. of.Specimens.SelectMany(Figures),
        .. of.Lots.Bands.SelectMany(band => band.Lots.SelectMany(lot => Figures(band.Name, lot))),
    ];

    private static IEnumerable<NamedFigure> Figures(SummarySpecimen of) =>
    [
        new(new(of.Name, "at least"), AtLeast(of.AtLeastDb)),
        new(new(of.Name, "mean"), of.MeanDb),
        new(new(of.Name, "10th percentile"), of.P10Db),
    ];

    private static IEnumerable<NamedFigure> Figures(string? band, SummaryLot of)
    {
        string name = band is null ? $"lot {of.Lot}" : $"lot {of.Lot} in {band}";
        return [new(new(name, "mean"), of.MeanDb), new(new(name, "promised"), AtLeast(of.PromisedDb))];
    }

    private static Estimate AtLeast(double? decibels) => new(null, decibels, null);

    private readonly record struct FigureName(string Of, string Figure);

    private readonly record struct NamedFigure(FigureName Name, Estimate Is);
}
