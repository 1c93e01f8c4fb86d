using System.Collections.Immutable;
using SweepStats.Statistics;

namespace SweepStats.Receivers;

/// <summary>The most likely shielding by stations silent and heard: a normal fit of which every value is known from one side
/// only. Immutable.</summary>
/// <remarks>
/// ln L(s) = Σ ln Φ((s − m)/u) over the silent + Σ ln Φ((m − s)/u) over the heard, in dB; concave, so it has one summit, which
/// exists where some are silent and some heard. Assumes margins that err normally and independently about what is stated; what
/// receivers or sources share is not in it, which moves the estimate little. Halving of the slope's sign, to 1e-9 dB. It weighs
/// values for <see cref="NextStation"/> and is not printed: between stations far apart it is flat, and its summit says nothing.
/// Limits are those of <see cref="MarginBound"/>. Source: interval-censored regression, as survreg of R has it
/// (fixtures/oracles/receivers.R), with all scales known.
/// </remarks>
/// <param name="Summit">The most likely shielding in dB.</param>
/// <param name="LogLikelihood">ln L there.</param>
public sealed record MarginLikelihood(double Summit, double LogLikelihood)
{
    private const double Reach = 40, Accuracy = 1e-9;

    /// <summary>The fit; null where all are silent or all heard, which has no summit.</summary>
    /// <param name="observations">Evidence at one shielding.</param>
    public static MarginLikelihood? Of(ImmutableArray<ReceiverObservation> observations)
    {
        if (observations.IsDefaultOrEmpty || observations.All(o => o.HeardCovered) || observations.All(o => !o.HeardCovered))
        {
            return null;
        }

        double widest = observations.Max(MarginErrors.Uncertainty);
        (double low, double high) = (observations.Min(o => o.MarginDb) - (Reach * widest), observations.Max(o => o.MarginDb)
            + (Reach * widest));
        while (high - low > Accuracy)
        {
            double middle = (low + high) / 2;
            (low, high) = Slope(observations, middle) > 0 ? (middle, high) : (low, middle);
        }

        return new MarginLikelihood(low, Log(observations, low));
    }

    /// <summary>ln L at a shielding in dB.</summary>
    internal static double Log(ImmutableArray<ReceiverObservation> observations, double s) =>
        observations.Sum(o => NormalTail.LogCdf(Standardised(o, s)));

    private static double Slope(ImmutableArray<ReceiverObservation> observations, double s) =>
        observations.Sum(o => Side(o) * NormalTail.Ratio(Standardised(o, s)) / MarginErrors.Uncertainty(o));

    private static double Standardised(ReceiverObservation observation, double s) =>
        Side(observation) * (s - observation.MarginDb) / MarginErrors.Uncertainty(observation);

    private static int Side(ReceiverObservation observation) => observation.HeardCovered ? -1 : 1;
}
