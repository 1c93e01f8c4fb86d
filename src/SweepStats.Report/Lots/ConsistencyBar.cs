using SweepStats.Lots;

namespace SweepStats.Report.Lots;

/// <summary>Mandel's h or k of one group, with what it passes by chance.</summary>
/// <param name="Member">Place of the group among all.</param>
/// <param name="Name">Its name.</param>
/// <param name="Value">h or k; not a number where the group has none.</param>
/// <param name="Critical">Its critical values at 5 % and at 1 %; not numbers where it has none.</param>
internal sealed record ConsistencyBar(int Member, string Name, double Value, ConsistencyLimits Critical)
{
    /// <summary>Beyond 5 %.</summary>
    public bool IsStraggler => Math.Abs(Value) > Critical.Straggler;

    /// <summary>Beyond 1 %.</summary>
    public bool IsOutlier => Math.Abs(Value) > Critical.Outlier;

    /// <summary>How far out it is, 1 at its own straggler limit; a long bar with a wide limit is not the most outlying.</summary>
    public double Outlying => Math.Abs(Value) / Critical.Straggler;

    /// <summary>Whether all that have critical values have the same.</summary>
    public static bool HaveOneLimit(IEnumerable<ConsistencyBar> bars) =>
        bars.Select(b => b.Critical).Where(c => double.IsFinite(c.Straggler)).Distinct().Count() <= 1;
}
