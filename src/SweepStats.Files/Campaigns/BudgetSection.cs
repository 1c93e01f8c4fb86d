using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>The section [budget] of campaign.toml: frequencies at which uncertainty budgets are drawn up.</summary>
internal static class BudgetSection
{
    private const string Key = "frequencies_hz";

    // A budget is a table; more of them nobody reads.
    private const int MostFrequencies = 20;

    public static CampaignSettings Read(KeyReader keys, CampaignSettings settings)
    {
        ImmutableArray<(Hertz At, int Line)> asked =
            [.. (keys.Numbers(Key, 0, SettingsReader.HighestHertz) ?? []).Select(n => (new Hertz(n.Number), n.Line))];
        keys.Require(Key);
        if (asked.Length > MostFrequencies)
        {
            keys.Refuse(Key, FormattableString.Invariant($"there are {asked.Length} frequencies, and a budget is drawn up for ")
                + FormattableString.Invariant($"{MostFrequencies} at most"), "keep those that matter");
        }

        return settings with
        {
            BudgetFrequencies = asked,
            Plan = settings.Plan with { BudgetFrequencies = [.. asked.Select(f => f.At)] },
        };
    }

    /// <summary>
    /// Frequencies outside the band that the sweeps share. Where they share none, the comparison of the sweeps has more to say.
    /// </summary>
    public static IEnumerable<ReadFault> Outside(CampaignSettings settings, ImmutableArray<Sweep> sweeps)
    {
        if (SharedBand.Of(settings, sweeps) is not { } band)
        {
            return [];
        }

        return from asked in settings.BudgetFrequencies
               where !band.Meets(asked.At.Value, asked.At.Value)
               select new ReadFault(CampaignFolder.SettingsName, asked.Line,
                   FormattableString.Invariant($"the budget frequency {asked.At.Value:R} Hz lies outside the analysed band"),
                   FormattableString.Invariant($"choose one from {band.Low:R} to {band.High:R} Hz"));
    }
}
