using SweepStats.Alignment;
using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>When the reference was taken, beside the covered sweeps.</summary>
public enum ReferenceTiming
{
    /// <summary>Some sweep has no time, or all have the same, and nobody said so.</summary>
    Unknown,

    /// <summary>All before the covered sweeps of some specimen, or all after them.</summary>
    OneSide,

    /// <summary>On both sides of the covered sweeps of each specimen.</summary>
    BothSides,
}

/// <summary>Tells from their times, or from what is stated, when reference sweeps were taken.</summary>
public static class ReferenceTimes
{
    /// <summary>When they were taken.</summary>
    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="taking">When they were taken, where it is stated; times go before.</param>
    public static ReferenceTiming Of(AlignedCampaign campaign, SweepTaking taking)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        ImmutableArray<Sweep> reference = campaign.Reference.Sweeps;
        ImmutableArray<Sweep> covered = [.. campaign.Covered.SelectMany(c => c.Block.Sweeps)];
        if (reference.Concat(covered).Any(s => s.TakenAt is null)
            || reference.Concat(covered).Select(s => s.TakenAt).Distinct().Count() < 2)
        {
            return taking switch
            {
                SweepTaking.Once => ReferenceTiming.OneSide,
                SweepTaking.BeforeAndAfter when IsWhole(campaign) => ReferenceTiming.BothSides,
                SweepTaking.BeforeAndAfter => ReferenceTiming.OneSide,
                _ => ReferenceTiming.Unknown,
            };
        }

        return campaign.Covered.All(specimen => IsBetween(specimen.Block, reference)) ? ReferenceTiming.BothSides
            : ReferenceTiming.OneSide;
    }

    // Half of them were taken on either side: as long as more than a half is left, some of both are.
    private static bool IsWhole(AlignedCampaign campaign)
    {
        int used = campaign.Reference.SweepCount;
        int taken = used + campaign.Excluded.Count(s => s.Role == SweepRole.Reference);
        return used > 1 && used > (taken + 1) / 2;
    }

    private static bool IsBetween(SweepBlock specimen, ImmutableArray<Sweep> reference)
    {
        DateTimeOffset?[] times = [.. specimen.Sweeps.Select(s => s.TakenAt)];
        return reference.Any(s => s.TakenAt <= times.Min()) && reference.Any(s => s.TakenAt >= times.Max());
    }
}
