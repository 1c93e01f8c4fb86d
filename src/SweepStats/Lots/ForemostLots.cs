using SweepStats.Bands;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Lots that cannot be told from the best by the mean over a band.</summary>
/// <remarks>
/// A lot's specimens are its repeats, so that the answer is of the lot and not of the pieces in hand. A lot's own scatter counts
/// where it is larger than what is usual among all, as for specimens: of four pieces it may be small by chance, and of a single
/// one nothing shows. What reference and stated errors move, moves all lots alike and drops out; floor and averaging move each by
/// its own measure. A lot of which more may lie behind the floor somewhere in the band may be the best whatever its mean over the
/// rest, and stays. Assumes normal means of specimens (<see cref="BestCandidates"/>). Error: the truly best lot is left out in at
/// most the level of the cases (fixtures/oracles/foremost-lots.R, and a coverage run in the tests).
/// </remarks>
internal static class ForemostLots
{
    /// <summary>Whether each lot is one of them.</summary>
    /// <param name="specimens">Means of the specimens of each lot, in dB.</param>
    /// <param name="curves">Their shielding, in the same order; what moves all of a lot is read off them.</param>
    /// <param name="weights">Weights of the mean over the band; they sum to 1.</param>
    /// <param name="open">Whether part of a lot is known from below only, somewhere in the band.</param>
    /// <param name="level">Chance that the truly best lot is left out.</param>
    /// <returns>One a lot; none where no lot has two specimens that scatter, or where a mean is not a number.</returns>
    public static bool[] Among(double[][] specimens, ShieldingCurve[][] curves, double[] weights, bool[] open, double level)
    {
        CandidateMean[] means = Candidates(specimens);
        return means.Length < 2 ? []
            : BestCandidates.Among(
                [.. means.Select((mean, l) => Beside(mean, curves[l], weights) with { Open = open[l] })], level);
    }

    /// <summary>The lots as candidates, by the scatter of their specimens alone; none where nothing tells it.</summary>
    internal static CandidateMean[] Candidates(double[][] specimens)
    {
        int freedom = specimens.Sum(s => s.Length - 1);
        double usual = freedom > 0 ? specimens.Sum(s => Sample.SquaredDeviations(s, Sample.Mean(s))) / freedom : 0;
        return usual > 0 && double.IsFinite(usual) ? [.. specimens.Select(s => Candidate(s, usual, freedom))] : [];
    }

    private static CandidateMean Candidate(double[] specimens, double usual, int freedom)
    {
        double mean = Sample.Mean(specimens);
        double own = specimens.Length > 1 ? Sample.SquaredDeviations(specimens, mean) / (specimens.Length - 1) : 0;
        bool common = own <= usual;
        return new CandidateMean(mean, Math.Sqrt(Math.Max(own, usual) / specimens.Length),
            common ? freedom : specimens.Length - 1, Open: false)
        {
            CommonScatter = common,
        };
    }

    private static CandidateMean Beside(CandidateMean mean, ShieldingCurve[] curves, double[] weights) => mean with
    {
        Shared = curves.Average(c => LogWeights.Mean(weights, f => c.Spread?.FloorShift(f) ?? 0)),
        Shift = curves.Average(c => LogWeights.Mean(weights, f => c.Spread?.AveragingShift(f) ?? 0)),
    };
}
