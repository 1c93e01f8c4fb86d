using SweepStats.Alignment;
using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>When the reference was taken, beside the covered sweeps.</summary>
public enum ReferenceTiming
{
    /// <summary>Some sweep has no time, or all have the same, and nobody said so.</summary>
    Unknown,

    /// <summary>All before the covered sweeps, or all after them.</summary>
    OneSide,

    /// <summary>On both sides of the covered sweeps, or in turn with them.</summary>
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
        Sweep[] reference = [.. campaign.Reference.Sweeps], covered = [.. campaign.Covered.SelectMany(c => c.Block.Sweeps)];
        if (reference.Concat(covered).Any(s => s.TakenAt is null) || reference.Concat(covered).Select(s => s.TakenAt).Distinct().Count() < 2)
        {
            return taking switch
            {
                SweepTaking.Once => ReferenceTiming.OneSide,
                SweepTaking.BeforeAndAfter => ReferenceTiming.BothSides,
                _ => ReferenceTiming.Unknown,
            };
        }

        bool before = reference.Max(s => s.TakenAt) <= covered.Min(s => s.TakenAt), after = reference.Min(s => s.TakenAt) >= covered.Max(s => s.TakenAt);
        return before || after ? ReferenceTiming.OneSide : ReferenceTiming.BothSides;
    }
}
