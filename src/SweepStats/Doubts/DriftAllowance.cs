using System.Collections.Immutable;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

namespace SweepStats.Doubts;

/// <summary>What a drift that shows in the sweeps may have moved reference and covered levels apart by.</summary>
/// <remarks>
/// Where all sweeps have times it is the slope's limit times what lies between the middle of the reference sweeps and that of the specimen farthest from it; else the
/// order in which roles were taken is not known, and it is the whole drift. An error of unknown size up to that limit: rectangular. Nothing is corrected.
/// </remarks>
public static class DriftAllowance
{
    /// <summary>Name of the error in budgets.</summary>
    public const string Name = "drift between reference and covered sweeps";

    // Less than this changes no figure.
    private const double LeastDb = 0.01;

    /// <summary>The error; null where no drift is clear.</summary>
    public static UncertaintyEntry? Of(ImmutableArray<DriftTest> drifts)
    {
        double half = drifts.Where(d => d.IsClear).Select(HalfWidthDb).DefaultIfEmpty(0).Max();
        return half < LeastDb ? null : new UncertaintyEntry { Name = Name, HalfWidthDb = half, Distribution = ErrorDistribution.Rectangular };
    }

    private static double HalfWidthDb(DriftTest drift)
    {
        int reference = drift.Groups.ToList().FindIndex(g => g.Role == SweepRole.Reference);
        if (!drift.IsOfTheClock || reference < 0)
        {
            return Math.Abs(drift.Size);
        }

        double middle = drift.X[reference].Average();
        double farthest = drift.Groups.Zip(drift.X).Where(g => g.First.Role == SweepRole.Covered)
            .Select(g => Math.Abs(g.Second.Average() - middle)).DefaultIfEmpty(0).Max();
        Interval limits = drift.SlopeLimits(Confidence.NinetyFive);
        return farthest * Math.Max(Math.Abs(limits.Low), Math.Abs(limits.High));
    }
}
