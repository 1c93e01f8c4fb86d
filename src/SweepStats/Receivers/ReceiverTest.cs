using SweepStats.Quantities;

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

    /// <summary>Whether the claim is supported in every group and no station is <see cref="HeardAside"/>, refuted in one after
    /// allowing for their number, or neither; null where nothing is claimed.</summary>
    public required ClaimOutcome? Claim { get; init; }

    /// <summary>Stations heard under the cover whose rows are set aside: put right, each may refute the claim.</summary>
    public ImmutableArray<ReceiverObservation> HeardAside => [.. Aside(Observations).Where(o => o.HeardCovered)];

    /// <summary>Frequencies of rows that are set aside and lie beyond every group, lowest first: nothing is shown
    /// there.</summary>
    public ImmutableArray<Hertz> Unshown =>
        [.. Aside(Observations).Where(o => !Groups.Any(g => g.MayHold(o, Question.Ratio)))
            .Select(o => o.Frequency).OfType<Hertz>().Distinct().Order()];

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

        ReceiverObservation[] heardAside = [.. Aside(observations).Where(o => o.HeardCovered)];
        ImmutableArray<ReceiverObservation> evidence = [.. observations.Where(o => o.State == EvidenceState.Counts)];
        ImmutableArray<StationGroup> groups = [.. Alike(evidence, question.Ratio).Select(g => StationGroup.Of(g, question))];
        return new ReceiverTest
        {
            Question = question,
            Observations = observations,
            Groups = [.. groups.Select(g => g.Beside([.. heardAside.Where(o => g.MayHold(o, question.Ratio))]))],
            Claim = WholeClaim.Of(groups, heardAside.Length > 0, question),
        };
    }

    private static IEnumerable<ReceiverObservation> Aside(ImmutableArray<ReceiverObservation> observations) =>
        observations.Where(o => o.State != EvidenceState.Counts);

    // From the lowest frequency up: what lies within the ratio of it, then the next.
    private static List<ImmutableArray<ReceiverObservation>> Alike(ImmutableArray<ReceiverObservation> evidence, double ratio)
    {
        List<ImmutableArray<ReceiverObservation>> groups = [];
        ReceiverObservation[] left = [.. evidence.OrderBy(o => o.Frequency?.Value ?? 0)];
        while (left.Length > 0)
        {
            double highest = (left[0].Frequency?.Value ?? 0) * ratio * StationGroup.Rounding;
            int count = left.Count(o => (o.Frequency?.Value ?? 0) <= highest);
            groups.Add([.. left[..count]]);
            left = left[count..];
        }

        return groups;
    }
}
