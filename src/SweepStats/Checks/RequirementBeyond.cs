using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>The requirement asks about frequencies beyond those that were analysed.</summary>
/// <remarks>
/// A step of the sweep is granted at either end, since no grid of whole steps need end where a line does. Between the ends of the
/// grid the step is the user's choice.
/// </remarks>
internal sealed class RequirementBeyond : ICheck
{
    // What an edge of a band is written to.
    private const double Rounding = 1e-9;

    /// <inheritdoc/>
    public string Code => "requirement-beyond";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Rule?.Requirement.Stretch is not { } asked)
        {
            yield break;
        }

        FrequencyGrid grid = seen.Campaign.Grid;
        FrequencyBand[] beyond = [.. Below(grid, asked), .. Above(grid, asked)];
        if (beyond.Length > 0)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                LeavesFrequenciesOut = true,
                Where = [.. beyond],
                Message = $"The requirement asks about {Band(asked)}, and {Band(grid.Band)} was analysed: whether it is met "
                    + "beyond that, nobody knows.",
                Basis = string.Create(Amount.Print, $"Told where the requirement reaches farther than one step of the sweep "
                    + $"beyond the first or last of {grid.Count} frequencies."),
                NextStep = "Measure the whole band that is asked about, or state the requirement for the band that was measured.",
            };
        }
    }

    private static IEnumerable<FrequencyBand> Below(FrequencyGrid grid, FrequencyBand asked)
    {
        double step = grid.Count > 1 ? grid[1].Value - grid[0].Value : 0;
        return asked.Start.Value < grid[0].Value - step - (Rounding * grid[0].Value)
            ? [new FrequencyBand(asked.Start, Lower(asked.Stop, grid[0]))] : [];
    }

    private static IEnumerable<FrequencyBand> Above(FrequencyGrid grid, FrequencyBand asked)
    {
        double step = grid.Count > 1 ? grid[^1].Value - grid[^2].Value : 0;
        return asked.Stop.Value > grid[^1].Value + step + (Rounding * grid[^1].Value)
            ? [new FrequencyBand(asked.Start > grid[^1] ? asked.Start : grid[^1], asked.Stop)] : [];
    }

    private static Hertz Lower(Hertz a, Hertz b) => a < b ? a : b;

    private static string Band(FrequencyBand band) => $"{Amount.Frequency(band.Start)} to {Amount.Frequency(band.Stop)}";
}
