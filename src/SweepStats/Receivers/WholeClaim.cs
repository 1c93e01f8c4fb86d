namespace SweepStats.Receivers;

/// <summary>What becomes of a claim over all groups.</summary>
/// <remarks>
/// Supported in each of them at the level stated: all at once then hold at that level too (intersection-union), and no allowance
/// is needed. "Fails somewhere" among many is what chance finds, so that an upper bound refutes the whole only at a level that
/// allows for the number of groups (Bonferroni, Holm's first step; Holm 1979, Scandinavian Journal of Statistics 6, 65).
/// </remarks>
internal static class WholeClaim
{
    /// <summary>The outcome; null where nothing is claimed.</summary>
    /// <param name="groups">All groups.</param>
    /// <param name="heardAside">Whether a station was heard under the cover whose row is set aside: put right, it may refute the
    /// claim, and until then nothing is supported.</param>
    /// <param name="question">What is asked.</param>
    public static ClaimOutcome? Of(ImmutableArray<StationGroup> groups, bool heardAside, ReceiverQuestion question)
    {
        if (question.Claim is not { } claim)
        {
            return null;
        }

        double level = 1 - ((1 - question.Confidence.Level) / Math.Max(1, groups.Length));
        return groups.Any(g => g.Refutes(claim, level)) ? ClaimOutcome.Refuted
            : !heardAside && groups.Length > 0 && groups.All(g => g.Claim == ClaimOutcome.Supported) ? ClaimOutcome.Supported
            : ClaimOutcome.NotShown;
    }
}
