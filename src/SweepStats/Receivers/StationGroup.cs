using SweepStats.Quantities;
using SweepStats.Statistics;

namespace SweepStats.Receivers;

/// <summary>Stations near enough in frequency to meet the same shielding, and what they show of it together. Immutable.</summary>
/// <remarks>Where two of them contradict each other nothing is claimed: shielding, level or sensitivity is not what it was taken
/// for, and nobody knows which.</remarks>
public sealed record StationGroup
{
    // Frequencies are rounded; a ratio of 1 still holds the same one.
    internal const double Rounding = 1 + 1e-9;

    /// <summary>From the lowest to the highest frequency; null where a single observation states none.</summary>
    public required FrequencyBand? Band { get; init; }

    /// <summary>The evidence, smallest margin first.</summary>
    public required ImmutableArray<ReceiverObservation> Observations { get; init; }

    /// <summary>Two stations that cannot both be right; null where all may be.</summary>
    public required MarginContradiction? Contradiction { get; init; }

    /// <summary>One-sided lower bound of the shielding; null where none fell silent, under a contradiction, or without
    /// uncertainties.</summary>
    public required Decibels? AtLeast { get; init; }

    /// <summary>One-sided upper bound; null where none was heard, or under a contradiction.</summary>
    public required Decibels? AtMost { get; init; }

    /// <summary>Two-sided interval in dB; null where an end is open, or under a contradiction.</summary>
    public required Interval? Interval { get; init; }

    /// <summary>The station that tells most next; null where none is better than another.</summary>
    public required NextStation? Next { get; init; }

    /// <summary>What becomes of the claim; null where nothing is claimed.</summary>
    public required ClaimOutcome? Claim { get; init; }

    /// <summary>Least margin in dB at which one more silent station would support a claim that is not shown; null where none
    /// would.</summary>
    public required double? SupportingMarginDb { get; init; }

    /// <summary>The largest margin that fell silent in dB, beyond which nothing can be shown; null where none did.</summary>
    public double? LargestSilentDb => Observations.Where(o => !o.HeardCovered).Select(o => (double?)o.MarginDb).Max();

    /// <summary>The smallest margin still heard in dB; null where none was.</summary>
    public double? SmallestHeardDb => Observations.Where(o => o.HeardCovered).Select(o => (double?)o.MarginDb).Min();

    /// <summary>Usable dynamic range in dB that sweeps need for the same: the claim, or the shielding as high as it may
    /// be.</summary>
    /// <param name="claim">The claim; null where there is none.</param>
    public double? RangeForSweepsDb(Decibels? claim) => claim?.Value ?? Interval?.High ?? AtMost?.Value ?? AtLeast?.Value;

    /// <summary>Whether the upper bound at a one-sided level lies below the claim.</summary>
    internal bool Refutes(Decibels claim, double level) =>
        Claim == ClaimOutcome.Refuted && MarginBound.AtMost(Observations, level) < claim.Value;

    /// <summary>Whether a station is near enough in frequency to meet the same shielding; one without frequency may be.</summary>
    internal bool MayHold(ReceiverObservation observation, double ratio)
    {
        if (Band is not { } band || observation.Frequency is not { } frequency)
        {
            return true;
        }

        double low = Math.Min(band.Start.Value, frequency.Value), high = Math.Max(band.Stop.Value, frequency.Value);
        return high <= low * ratio * Rounding;
    }

    /// <summary>Stations of like frequency that were heard under the cover, though their rows are no evidence: put right, each
    /// may lie above what the group shows.</summary>
    public ImmutableArray<ReceiverObservation> HeardAside { get; private init; } = [];

    /// <summary>The same beside such stations: without support for a claim.</summary>
    internal StationGroup Beside(ImmutableArray<ReceiverObservation> heard) => heard.IsEmpty ? this
        : this with { HeardAside = heard, Claim = Claim == ClaimOutcome.Supported ? ClaimOutcome.NotShown : Claim };

    /// <summary>What a group shows.</summary>
    /// <param name="evidence">Observations that count, at least one.</param>
    /// <param name="question">What is asked.</param>
    internal static StationGroup Of(ImmutableArray<ReceiverObservation> evidence, ReceiverQuestion question)
    {
        ImmutableArray<ReceiverObservation> sorted = [.. evidence.OrderBy(o => o.MarginDb)];
        // Figures that are taken for exact have no confidence.
        bool sure = sorted.All(o => o.IsUncertaintyStated);
        double? least = sure ? MarginBound.AtLeast(sorted, question.Confidence.Level) : null, most = sure
            ? MarginBound.AtMost(sorted, question.Confidence.Level) : null;
        MarginContradiction? contradiction = MarginContradiction.Of(sorted, question.Confidence) ?? (least > most
            ? MarginContradiction.Widest(sorted) : null);
        Decibels? low = contradiction is null ? InDecibels(least) : null, high = contradiction is null ? InDecibels(most) : null;
        Interval? interval = low is null || high is null ? null : TwoSided(sorted, question.Confidence);
        ClaimOutcome? claim = question.Claim is { } c ? Outcome(c, low, high) : null;
        return new StationGroup
        {
            Band = BandOf(sorted),
            Observations = sorted,
            Contradiction = contradiction,
            AtLeast = low,
            AtMost = high,
            Interval = interval,
            Next = interval is { } i ? NextStation.Of(sorted, i, question.Confidence) : null,
            Claim = claim,
            SupportingMarginDb = claim == ClaimOutcome.NotShown && contradiction is null && sure
                ? NextStation.Supporting(sorted, question.Claim!.Value, question.Confidence) : null,
        };
    }

    // Both ends are held to the same level, so that they may cross by no more than chance; a limit beyond the other tells
    // nothing.
    private static Interval? TwoSided(ImmutableArray<ReceiverObservation> observations, Confidence confidence)
    {
        double low = MarginBound.AtLeast(observations, confidence.TwoSidedQuantile)!.Value;
        double high = MarginBound.AtMost(observations, confidence.TwoSidedQuantile)!.Value;
        return low <= high ? new Interval(low, high) : null;
    }

    private static ClaimOutcome Outcome(Decibels claim, Decibels? low, Decibels? high) =>
        low >= claim ? ClaimOutcome.Supported : high < claim ? ClaimOutcome.Refuted : ClaimOutcome.NotShown;

    private static Decibels? InDecibels(double? value) => value is { } db ? new Decibels(db) : null;

    private static FrequencyBand? BandOf(ImmutableArray<ReceiverObservation> observations) =>
        observations.All(o => o.Frequency is not null)
        ? new FrequencyBand(observations.Min(o => o.Frequency!.Value), observations.Max(o => o.Frequency!.Value)) : null;
}
