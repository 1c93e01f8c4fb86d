using SweepStats.Bands;
using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Choice;

/// <summary>The frequencies of a band at which candidates are compared: where each of them is bounded from both sides.</summary>
/// <remarks>
/// Some candidates do not narrow the part down for the others: they stay known from below, and may always be the best. One is
/// capped over more than half of the band. Another is capped over more than a tenth of it where its bound tops all values of the
/// others: left out for all would be where it is better than they are. Where a single frequency of 160 is capped, the mean over
/// all of them has no upper limit either, however plainly another specimen shields more everywhere else; so that frequency is
/// left out for all instead. So is one at which nobody is seen to shield less.
/// </remarks>
internal static class ComparedPart
{
    private const double MostCapped = 0.5;

    // Even 20 dB that nobody sees move the mean by no more than 2 dB there (judgement, no source).
    private const double MostAhead = 0.1;

    /// <summary>Places of the frequencies.</summary>
    /// <param name="grid">All frequencies.</param>
    /// <param name="band">The band.</param>
    /// <param name="readable">Those of the band where a comparison makes sense.</param>
    /// <param name="candidates">The candidates.</param>
    public static int[] Of(FrequencyGrid grid, FrequencyBand band, int[] readable, IReadOnlyList<SpecimenSweeps> candidates)
    {
        double[] weights = LogWeights.OfPart(grid, band, new HashSet<int>(readable).Contains);
        double[] seen = HighestSeen(candidates, grid.Count);
        double Share(Func<int, bool> counts) => LogWeights.Mean(weights, f => counts(f) ? 1 : 0);
        bool Narrows(SpecimenSweeps c) =>
            Share(f => c.Bounds[f]) <= MostCapped
            && Share(f => c.Bounds[f] && double.IsFinite(seen[f]) && c.Values[f] >= seen[f]) <= MostAhead;
        SpecimenSweeps[] narrowing = [.. candidates.Where(Narrows)];
        return [.. readable.Where(f => !Array.Exists(narrowing, c => c.Bounds[f]))];
    }

    // The highest value that is bounded from both sides; minus infinity where there is none.
    private static double[] HighestSeen(IReadOnlyList<SpecimenSweeps> candidates, int points)
    {
        var highest = new double[points];
        Array.Fill(highest, double.NegativeInfinity);
        foreach (SpecimenSweeps candidate in candidates)
        {
            for (int f = 0; f < points; f++)
            {
                highest[f] = candidate.Bounds[f] ? highest[f] : Math.Max(highest[f], candidate.Values[f]);
            }
        }

        return highest;
    }
}
