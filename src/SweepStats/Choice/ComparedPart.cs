using SweepStats.Bands;
using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Choice;

/// <summary>The frequencies of a band at which candidates are compared: where each of them is bounded from both sides.</summary>
/// <remarks>
/// A candidate that is capped over more than half of the band does not narrow the part down for the others: it stays known from
/// below, and may always be the best. Where a single frequency of 160 is capped, the mean over all of them has no upper limit
/// either, however plainly another specimen shields more everywhere else; so that frequency is left out for all instead.
/// </remarks>
internal static class ComparedPart
{
    private const double MostCapped = 0.5;

    /// <summary>Places of the frequencies.</summary>
    /// <param name="grid">All frequencies.</param>
    /// <param name="band">The band.</param>
    /// <param name="readable">Those of the band where a comparison makes sense.</param>
    /// <param name="candidates">The candidates.</param>
    public static int[] Of(FrequencyGrid grid, FrequencyBand band, int[] readable, IReadOnlyList<SpecimenSweeps> candidates)
    {
        double[] weights = LogWeights.OfPart(grid, band, new HashSet<int>(readable).Contains);
        SpecimenSweeps[] narrowing = [.. candidates.Where(c => LogWeights.Mean(weights, f => c.Bounds[f] ? 1 : 0) <= MostCapped)];
        return [.. readable.Where(f => !Array.Exists(narrowing, c => c.Bounds[f]))];
    }
}
