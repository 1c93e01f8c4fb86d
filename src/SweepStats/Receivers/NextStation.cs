using SweepStats.Quantities;
using SweepStats.Statistics;

namespace SweepStats.Receivers;

/// <summary>The station that tells most next: of all margins the one whose outcome is expected to leave the shortest interval.
/// Immutable.</summary>
/// <remarks>
/// The shielding is taken to lie within the interval with the weights of the likelihood. Each of the margins held against each
/// other, evenly over the interval, is given to a further station with a receiver and a source of its own and the middle
/// uncertainty of those used; the interval is computed for both outcomes. Margins in dB.
/// </remarks>
/// <param name="MarginDb">Its margin.</param>
/// <param name="ShareSilent">How likely it falls silent, 0 to 1.</param>
/// <param name="WidthDb">Width of the interval to be expected then.</param>
public sealed record NextStation(double MarginDb, double ShareSilent, double WidthDb)
{
    private const int Margins = 13, Values = 41;

    /// <summary>The best margin; null where the interval is open, or no further station shortens it.</summary>
    /// <param name="observations">Evidence at one shielding.</param>
    /// <param name="interval">What it shows, in dB.</param>
    /// <param name="confidence">Its level.</param>
    public static NextStation? Of(ImmutableArray<ReceiverObservation> observations, Interval interval, Confidence confidence)
    {
        ImmutableArray<WeightedValue> values = Weighted(observations, interval);
        NextStation best = Enumerable.Range(1, Margins)
            .Select(i => interval.Low + (interval.Width * i / (Margins + 1)))
            .Select(margin => Expected(observations, values, new(margin, interval), confidence))
            .MinBy(n => n.WidthDb)!;
        return best.WidthDb < interval.Width ? best : null;
    }

    /// <summary>The least margin at which a further silent station would support a claim; null where none would.</summary>
    /// <param name="observations">Evidence at one shielding.</param>
    /// <param name="claim">The claim.</param>
    /// <param name="confidence">Its one-sided level.</param>
    internal static double? Supporting(ImmutableArray<ReceiverObservation> observations, Decibels claim, Confidence confidence)
    {
        bool Supports(double margin) =>
            MarginBound.AtLeast([.. observations, Further(observations, margin, heard: false)], confidence.Level) >= claim.Value;
        (double low, double high) = (claim.Value, claim.Value + (10 * Typical(observations)));
        if (!Supports(high))
        {
            return null;
        }

        while (high - low > 0.05)
        {
            double middle = (low + high) / 2;
            (low, high) = Supports(middle) ? (low, middle) : (middle, high);
        }

        return high;
    }

    private static NextStation Expected(
        ImmutableArray<ReceiverObservation> observations, ImmutableArray<WeightedValue> values, Trial at,
            Confidence confidence)
    {
        double u = Typical(observations);
        double silent = values.Sum(v => v.Weight * Below((v.Db - at.Margin) / u));
        double low = MarginBound.AtLeast([.. observations, Further(observations, at.Margin, heard: false)],
            confidence.TwoSidedQuantile) ?? at.Now.Low;
        double high = MarginBound.AtMost([.. observations, Further(observations, at.Margin, heard: true)],
            confidence.TwoSidedQuantile) ?? at.Now.High;
        double width = (silent * Math.Max(0, at.Now.High - low)) + ((1 - silent) * Math.Max(0, high - at.Now.Low));
        return new NextStation(at.Margin, silent, width);
    }

    private static ImmutableArray<WeightedValue> Weighted(ImmutableArray<ReceiverObservation> observations, Interval interval)
    {
        double[] values = [.. Enumerable.Range(0, Values).Select(i => interval.Low + (interval.Width * (i + 0.5) / Values))];
        double[] logs = [.. values.Select(v => MarginLikelihood.Log(observations, v))];
        double most = logs.Max(), sum = logs.Sum(l => Math.Exp(l - most));
        return [.. values.Select((v, i) => new WeightedValue(v, Math.Exp(logs[i] - most) / sum))];
    }

    private static ReceiverObservation Further(ImmutableArray<ReceiverObservation> observations, double margin, bool heard) =>
        new()
        {
            Name = string.Empty,
            Frequency = observations[0].Frequency,
            Level = new ReceivedLevel(margin, Typical(observations), LevelOrigin.Level),
            SensitivityDbm = 0,
            SensitivityUncertaintyDb = 0,
            HeardUncovered = true,
            HeardCovered = heard,
        };

    private static double Typical(ImmutableArray<ReceiverObservation> observations)
    {
        double[] sorted = [.. new MarginErrors(observations).Uncertainties.Order()];
        return sorted[sorted.Length / 2];
    }

    private static double Below(double z) => Math.Exp(NormalTail.LogCdf(z));

    private readonly record struct WeightedValue(double Db, double Weight);

    /// <summary>A margin in dB that is tried, and the interval in dB as it stands before.</summary>
    private readonly record struct Trial(double Margin, Interval Now);
}
