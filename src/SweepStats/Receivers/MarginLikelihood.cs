using SweepStats.Statistics;

namespace SweepStats.Receivers;

/// <summary>How likely stations silent and heard are at a shielding.</summary>
/// <remarks>
/// ln L(s) = Σ ln Φ((s − m)/u) over the silent + Σ ln Φ((m − s)/u) over the heard, in dB; concave. Assumes margins that err
/// normally and independently about what is stated; what receivers or sources share is not in it. It weighs values for
/// <see cref="NextStation"/> and is not printed: between stations far apart it is flat, and its summit says nothing. Limits are
/// those of <see cref="MarginBound"/>. Source: interval-censored regression, as survreg of R has it
/// (fixtures/oracles/receivers.R), with all scales known.
/// </remarks>
internal static class MarginLikelihood
{
    /// <summary>ln L at a shielding in dB.</summary>
    /// <param name="observations">Evidence at one shielding.</param>
    /// <param name="s">The shielding.</param>
    public static double Log(ImmutableArray<ReceiverObservation> observations, double s) =>
        observations.Sum(o => NormalTail.LogCdf(Standardised(o, s)));

    private static double Standardised(ReceiverObservation observation, double s) =>
        (observation.HeardCovered ? -1 : 1) * (s - observation.MarginDb) / MarginErrors.Uncertainty(observation);
}
