using SweepStats.Quantities;
using SweepStats.Sweeps;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;

namespace SweepStats.Report.Setup;

/// <summary>How much of what is asked was measured, and how much of what was measured is asked about.</summary>
internal static class AskedWords
{
    // Exports round frequencies.
    private const double SameFrequency = 1e-6;

    /// <summary>
    /// "at every measured frequency", or "at the 2 of 11 measured frequencies where something is asked (122 MHz to 173 MHz)".
    /// </summary>
    internal static string WhereAsked(AnalysisResult result)
    {
        FrequencyGrid grid = result.Campaign.Grid;
        Hertz[] asked = result.Plan.Requirement is { } requirement
            ? [.. Enumerable.Range(0, grid.Count).Select(f => grid[f]).Where(h => requirement.At(h) is not null)] : [];
        return asked.Length == 0 || asked.Length == grid.Count ? "at every measured frequency"
            : $"at the {Plain(asked.Length)} of {Plain(grid.Count)} measured frequencies where something is asked "
                + $"({Band(new FrequencyBand(asked[0], asked[^1]))})";
    }

    /// <summary>
    /// "from 10 MHz to 30 MHz and from 1 GHz to 2 GHz: not measured"; null where all that is asked lies in the band.
    /// </summary>
    internal static string? NotMeasured(AnalysisResult result)
    {
        FrequencyBand measured = result.Campaign.Grid.Band;
        if (result.Plan.Requirement?.Stretch is not { } asked)
        {
            return null;
        }

        List<FrequencyBand> missing = [];
        if (asked.Start.Value < measured.Start.Value * (1 - SameFrequency))
        {
            missing.Add(new FrequencyBand(asked.Start, asked.Stop < measured.Start ? asked.Stop : measured.Start));
        }

        if (asked.Stop.Value > measured.Stop.Value * (1 + SameFrequency))
        {
            missing.Add(new FrequencyBand(asked.Start > measured.Stop ? asked.Start : measured.Stop, asked.Stop));
        }

        string how = result.Plan.Band is null ? "not measured" : "not analysed";
        return missing.Count == 0 ? null : $"{string.Join(" and ", missing.Select(m => $"from {Band(m)}"))}: {how}";
    }
}
