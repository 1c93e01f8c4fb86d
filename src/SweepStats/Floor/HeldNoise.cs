using SweepStats.Statistics;

namespace SweepStats.Floor;

/// <summary>
/// Noise of a detector that keeps one of several looks, and between which limits the signal behind a reading lies.
/// </summary>
/// <remarks>
/// Looks k at a signal of amplitude A show |A + n_k|, n_k being the noise. The highest of them is at most A + max|n_k|, and
/// max|n_k| is what the floor shows; the lowest is at most A + min|n_k|, and again the floor shows min|n_k|. So for readings c
/// and f of amplitude E c ≤ A + E f. On the scale of levels, by Jensen's inequality, E ln c ≤ ln(A + E f): the noise amplitude to
/// be taken out is the mean amplitude of the floor readings, which lies over their log mean by what they scatter (<see
/// cref="LeastRiseDb"/>: 1.46 dB for a single look, 0.19 dB for the highest of ten, 0.06 dB for that of a hundred). To the other
/// side the highest is, in the mean of the log, not below the signal: E ln|A + n_1|² = ln A² + E₁(γ). The lowest may lie below it
/// by max|n_k|; the floor does not show that, since the lowest of N looks at noise is distributed as one look at an N-th of it. N
/// is then reckoned to be
/// <see cref="MostLooksUnseen"/>. A quasi-peak detector follows the envelope by a circuit that charges and discharges: its
/// reading is a convex, subadditive
/// function of the envelope, so both limits of the highest hold for it in the mean of the amplitude. Scatter and skewness are
/// those of <see cref="HeldLooks"/> with as many looks as the floor's scatter tells; less scatter than 10⁶ looks have is that of
/// averages of which one is kept, and shrinks the shape. Units: dB. Sources: Rice 1945, Bell System Technical Journal 24, 46
/// (envelope of a sine in noise); the limits are worked out here.
/// </remarks>
internal sealed class HeldNoise : DetectorNoise
{
    /// <summary>Looks of which the lowest is reckoned to be kept, since the floor does not show their number.</summary>
    public const double MostLooksUnseen = 1000;

    // Readings that agree to the last digit show the display's steps, not endless averaging.
    private const double MostLooksAveraged = 1e4;

    private static readonly Lazy<HeldLooks> Unseen = new(() => new HeldLooks(MostLooksUnseen));

    private readonly HeldLooks _shape;
    private readonly double _shrunk;
    private readonly ImmutableArray<double> _cumulants;

    // What the lowest of averages does upward: no more than averages that scatter alike. Null where the highest is kept.
    private readonly DetectorNoise? _upward;

    private HeldNoise(KeptLook kept, HeldLooks shape, double deviationDb)
        : base(kept == KeptLook.Lowest ? MostLooksUnseen : shape.Looks)
    {
        (Kept, _shape) = (kept, shape);
        _shrunk = Math.Min(1, deviationDb / DecibelsPerNeper / Math.Sqrt(shape.Cumulants[0]));
        _cumulants = [.. shape.Cumulants.Select((c, i) => c * Math.Pow(_shrunk, i + 2))];
        double under = kept == KeptLook.Lowest ? -Math.Log(MostLooksUnseen) : 0;
        LogMeanOffset = DecibelsPerNeper * (shape.LogMean + under);
        LeastRiseDb = DecibelsPerNeper * _shrunk * (shape.Amplitude - shape.LogMean);
        _upward = kept == KeptLook.Lowest ? new DetectorNoise(Math.Clamp(LooksFor(deviationDb), 1, MostLooksAveraged)) : null;
        LeastAmplitude = Math.Pow(10, LeastRiseDb / 20);
        UnseenAmplitude = kept == KeptLook.Lowest
            ? Math.Pow(10, ((DecibelsPerNeper * Unseen.Value.Amplitude) - LogMeanOffset) / 20) : 0;
    }

    /// <summary>The highest of as many looks as a standard deviation of floor readings in dB tells.</summary>
    public static HeldNoise Highest(double deviationDb)
    {
        double nepers = deviationDb / DecibelsPerNeper;
        return new HeldNoise(KeptLook.Highest, HeldLooks.Scattering(nepers * nepers), deviationDb);
    }

    /// <summary>The lowest of an unknown number of looks.</summary>
    /// <param name="deviationDb">Standard deviation of floor readings in dB.</param>
    public static HeldNoise Lowest(double deviationDb) => new(KeptLook.Lowest, new HeldLooks(1), deviationDb);

    /// <inheritdoc/>
    public override KeptLook Kept { get; }

    /// <summary>Log mean of the looks kept minus the power mean of noise, in dB.</summary>
    public override double LogMeanOffset { get; }

    /// <summary>Standard deviation in dB of one reading of noise alone, at most that of the floor readings.</summary>
    public override double LogStandardDeviation => DecibelsPerNeper * Math.Sqrt(_cumulants[0]);

    /// <summary>How far the mean amplitude of floor readings lies over their log mean.</summary>
    internal override double LeastRiseDb { get; }

    /// <summary>
    /// The same as a ratio of amplitudes: what noise may have added to a reading, over the log mean of the floor.
    /// </summary>
    internal double LeastAmplitude { get; }

    /// <summary>What noise may have taken from a reading, over the log mean of the floor; 0 where the highest is kept.</summary>
    internal double UnseenAmplitude { get; }

    /// <summary>Rise in dB that the mean of readings of noise alone seldom passes, one of their looks being kept.</summary>
    public override double CriticalRise(double readings, double probability) =>
        _upward?.CriticalRise(readings, probability) ?? (readings == 1 ? HighestReading(probability)
            : OfMean(readings, probability));

    /// <summary>How far one reading of noise alone lies above the log mean with a small probability, in dB.</summary>
    public override double HighestReading(double probability) =>
        _upward?.HighestReading(probability) ?? DecibelsPerNeper * _shrunk * (_shape.Quantile(probability) - _shape.LogMean);

    private double OfMean(double readings, double probability)
    {
        double variance = _cumulants[0], skewness = _cumulants[1] / Math.Pow(variance, 1.5),
            excess = _cumulants[2] / (variance * variance);
        return LogStandardDeviation / Math.Sqrt(readings)
            * CornishFisher.Quantile(probability, skewness / Math.Sqrt(readings), excess / readings);
    }

    // Noise shakes a reading by its share in the amplitude.
    internal override (double Variance, double Third) LogCumulants(double snrDb)
    {
        double share = 1 / (1 + Math.Pow(10, (snrDb - LogMeanOffset) / 20));
        double moved = DecibelsPerNeper * share;
        return (moved * moved * _cumulants[0], moved * moved * moved * _cumulants[1]);
    }

    /// <summary>The largest rise that a signal can have: the amplitudes add up.</summary>
    public override double Rise(double snr) =>
        20 * Math.Log10((Math.Sqrt(snr) * Math.Pow(10, -LogMeanOffset / 20)) + LeastAmplitude);

    /// <summary>
    /// The weakest signal that a rise leaves possible: the noise amplitude of the floor is taken out as a whole.
    /// </summary>
    public override double SnrInDecibels(double rise) =>
        rise > LeastRiseDb
            ? LogMeanOffset + (20 * Math.Log10(Math.Pow(10, rise / 20) - LeastAmplitude))
            : double.NegativeInfinity;

    /// <summary>The same: the inverse above is in closed form and has no error but rounding.</summary>
    public override double ExactSnrInDecibels(double rise) => SnrInDecibels(rise);

    internal override double StrongestSnrInDecibels(double rise) =>
        LogMeanOffset + (20 * Math.Log10(Math.Pow(10, rise / 20) + UnseenAmplitude));
}
