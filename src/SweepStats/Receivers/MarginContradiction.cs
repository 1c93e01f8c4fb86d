using SweepStats.Statistics;

namespace SweepStats.Receivers;

/// <summary>Two stations that cannot both be right: one fell silent at a margin at which another is still heard.
/// Immutable.</summary>
/// <remarks>
/// Silent asks for S ≥ its margin, heard for S ≤ its own, so that the silent one's may not be the larger. The difference is held
/// against its standard uncertainty, in which what both share drops out, at a level that allows for the number of pairs (Šidák's,
/// conservative for pairs that go together).
/// </remarks>
/// <param name="Silent">The station that fell silent.</param>
/// <param name="Heard">The one still heard.</param>
/// <param name="DifferenceDb">Margin of the silent one less that of the heard one in dB, above 0.</param>
public sealed record MarginContradiction(ReceiverObservation Silent, ReceiverObservation Heard, double DifferenceDb)
{
    // Rounded levels of one receiver and one source differ by rounding alone.
    private const double Rounding = 1e-9;

    /// <summary>The plainest contradiction; null where all may be right.</summary>
    /// <param name="observations">Evidence at one shielding.</param>
    /// <param name="confidence">At one less this a contradiction is found where there is none, at most.</param>
    public static MarginContradiction? Of(ImmutableArray<ReceiverObservation> observations, Confidence confidence)
    {
        int[] silent = [.. Places(observations, heard: false)], heard = [.. Places(observations, heard: true)];
        if (silent.Length == 0 || heard.Length == 0)
        {
            return null;
        }

        var errors = new MarginErrors(observations);
        double critical = StudentT.Quantile(Math.Pow(confidence.Level, 1.0 / (silent.Length * heard.Length)),
            double.PositiveInfinity);
        double worst = 0;
        MarginContradiction? found = null;
        foreach ((int s, int h) in silent.SelectMany(s => heard.Select(h => (s, h))))
        {
            double difference = errors.Margins[s] - errors.Margins[h];
            double excess = difference - (critical * errors.OfDifference(s, h));
            if (difference > Rounding && excess > worst)
            {
                (worst, found) = (excess, new MarginContradiction(observations[s], observations[h], difference));
            }
        }

        return found;
    }

    /// <summary>The pair that lies farthest apart, where limits cross though no pair alone is plain enough: together they still
    /// cannot be right.</summary>
    internal static MarginContradiction Widest(ImmutableArray<ReceiverObservation> observations)
    {
        ReceiverObservation silent = observations.Where(o => !o.HeardCovered).MaxBy(o => o.MarginDb)!,
            heard = observations.Where(o => o.HeardCovered).MinBy(o => o.MarginDb)!;
        return new MarginContradiction(silent, heard, silent.MarginDb - heard.MarginDb);
    }

    private static IEnumerable<int> Places(ImmutableArray<ReceiverObservation> observations, bool heard) =>
        Enumerable.Range(0, observations.Length).Where(i => observations[i].HeardCovered == heard);
}
