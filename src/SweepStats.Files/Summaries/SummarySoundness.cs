using System.Collections.Immutable;
using System.Text.Json;

namespace SweepStats.Files.Summaries;

/// <summary>Whether a summary holds what its types promise: JSON lets lists hold nothing, and numbers run over.</summary>
internal static class SummarySoundness
{
    public static bool Holds(ResultSummary summary) =>
        Holds(summary.NotTested) && Holds(summary.OverturnedBy) && Holds(summary.Checks) && Holds(summary.Inputs)
        && Holds(summary.Excluded) && Holds(summary.Specimens) && summary.Specimens.All(Holds)
        && Holds(summary.Lots.Bands) && summary.Lots.Bands.All(band => Holds(band.Lots) && band.Lots.All(Holds))
        && Holds(summary.Choice?.Bands ?? []) && (summary.Choice?.Bands ?? []).All(band => Holds(band.Ranking))
        && summary.Plan.Values.All(Holds);

    private static bool Holds<T>(ImmutableArray<T> list)
        where T : class => !list.IsDefault && list.All(item => item is not null);

    private static bool Holds(SummarySpecimen specimen) =>
        IsFinite(specimen.StartHz) && IsFinite(specimen.StopHz) && IsFinite(specimen.AtLeastDb)
        && Holds(specimen.MeanDb) && Holds(specimen.P10Db);

    private static bool Holds(SummaryLot lot) => IsFinite(lot.PromisedDb) && Holds(lot.MeanDb ?? default);

    private static bool Holds(Estimate figure) => IsFinite(figure.Value) && IsFinite(figure.Low) && IsFinite(figure.High);

    private static bool IsFinite(double? number) => number is null || double.IsFinite(number.Value);

    // Half a surrogate is found only where the text is asked for.
    private static bool Holds(JsonElement value)
    {
        try
        {
            _ = SummaryDifferences.Compact(value);
            return true;
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or JsonException)
        {
            return false;
        }
    }
}
