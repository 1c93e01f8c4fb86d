using System.Collections.Immutable;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>The section [budget] of campaign.toml: frequencies at which uncertainty budgets are drawn up.</summary>
internal sealed class BudgetSection
{
    private const string Key = "frequencies_hz";

    // A budget is a table; more of them nobody reads.
    private const int MostFrequencies = 20;

    // Exports round frequencies.
    private const double ShareOfFrequency = 1e-6;

    /// <summary>The frequencies, each with its line.</summary>
    public ImmutableArray<(Hertz At, int Line)> Frequencies { get; private set; } = [];

    public void Read(KeyReader keys)
    {
        if (keys.Numbers(Key, 0, SettingsReader.HighestHertz) is { } numbers)
        {
            Frequencies = [.. numbers.Select(n => (new Hertz(n.Number), n.Line))];
        }

        keys.Require(Key);
        if (Frequencies.Length > MostFrequencies)
        {
            keys.Refuse(Key, FormattableString.Invariant($"there are {Frequencies.Length} frequencies, and a budget is drawn up for {MostFrequencies} at most"), "keep those that matter");
        }
    }

    /// <summary>Frequencies outside the band that the sweeps share. Where they share none, the comparison of the sweeps has more to say.</summary>
    public static IEnumerable<ReadFault> Outside(CampaignSettings settings, ImmutableArray<Sweep> sweeps)
    {
        FrequencyGrid[] grids = [.. sweeps.Where(s => s.ExcludedBecause is null && s.Role is SweepRole.Floor or SweepRole.Reference or SweepRole.Covered).Select(s => s.Grid)];
        if (grids.Length == 0)
        {
            return [];
        }

        double low = Math.Max(grids.Max(g => g[0].Value), settings.Plan.Band?.Start.Value ?? 0);
        double high = Math.Min(grids.Min(g => g[^1].Value), settings.Plan.Band?.Stop.Value ?? double.PositiveInfinity);
        return from asked in settings.BudgetFrequencies
               where low <= high && (asked.At.Value < low * (1 - ShareOfFrequency) || asked.At.Value > high * (1 + ShareOfFrequency))
               select new ReadFault(
                   CampaignFolder.SettingsName, asked.Line,
                   FormattableString.Invariant($"the budget frequency {asked.At.Value:R} Hz lies outside the analysed band"),
                   FormattableString.Invariant($"choose one from {low:R} to {high:R} Hz"));
    }
}
