using System.Collections.Immutable;

namespace SweepStats.Receivers;

/// <summary>A test with receivers: which observations are evidence, and what those of like frequency show together.
/// Immutable.</summary>
public sealed record ReceiverTest
{
    /// <summary>More observations than this are no test with receivers, and take long.</summary>
    public const int MostObservations = 200;

    /// <summary>What was asked.</summary>
    public required ReceiverQuestion Question { get; init; }

    /// <summary>All observations, as they came.</summary>
    public required ImmutableArray<ReceiverObservation> Observations { get; init; }

    /// <summary>Groups of like frequency, lowest first; none where nothing is evidence.</summary>
    public required ImmutableArray<StationGroup> Groups { get; init; }

    /// <summary>Whether the claim is supported in every group, refuted in one, or neither; null where nothing is
    /// claimed.</summary>
    /// <remarks>Supported in each of them at the level stated: all at once then hold at that level too (intersection-union), and
    /// no allowance is needed.</remarks>
    public ClaimOutcome? Claim => Question.Claim is null ? null
        : Groups.Any(g => g.Claim == ClaimOutcome.Refuted) ? ClaimOutcome.Refuted
        : Groups.Length > 0 && Groups.All(g => g.Claim == ClaimOutcome.Supported) ? ClaimOutcome.Supported
        : ClaimOutcome.NotShown;

    /// <summary>Judges a test.</summary>
    /// <param name="observations">At most <see cref="MostObservations"/>.</param>
    /// <param name="question">What is asked.</param>
    /// <exception cref="ArgumentException">More observations.</exception>
    public static ReceiverTest Of(ImmutableArray<ReceiverObservation> observations, ReceiverQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (observations.Length > MostObservations)
        {
            throw new ArgumentException($"{observations.Length} observations; at most {MostObservations} are judged.",
                nameof(observations));
        }

        ImmutableArray<ReceiverObservation> evidence = [.. observations.Where(o => o.State == EvidenceState.Counts)];
        return new ReceiverTest
        {
            Question = question,
            Observations = observations,
            Groups = [.. Alike(evidence, question.Ratio).Select(g => StationGroup.Of(g, question))],
        };
    }

    // From the lowest frequency up: what lies within the ratio of it, then the next.
    private static List<ImmutableArray<ReceiverObservation>> Alike(ImmutableArray<ReceiverObservation> evidence, double ratio)
    {
        List<ImmutableArray<ReceiverObservation>> groups = [];
        ReceiverObservation[] left = [.. evidence.OrderBy(o => o.Frequency?.Value ?? 0)];
        while (left.Length > 0)
        {
            // Frequencies are rounded; a ratio of 1 still holds the same one.
            double highest = (left[0].Frequency?.Value ?? 0) * ratio * (1 + 1e-9);
            int count = left.Count(o => (o.Frequency?.Value ?? 0) <= highest);
            groups.Add([.. left[..count]]);
            left = left[count..];
        }

        return groups;
    }
}
