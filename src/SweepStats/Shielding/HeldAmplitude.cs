namespace SweepStats.Shielding;

/// <summary>
/// The reading of a kept look and what one end of its law makes of it, as amplitudes over the log mean of the floor: there the
/// signal is a plain sum.
/// </summary>
/// <param name="Reading">Amplitude of the reading.</param>
/// <param name="Noise">What the law adds to it: negative where noise is taken out.</param>
internal readonly record struct HeldAmplitude(double Reading, double Noise)
{
    // Of chords: small against the bend of the law, large against rounding. Half of the chord, in dB and in nepers of amplitude.
    private const double StepDb = 0.001;
    private const double NepersPerDecibel = 0.1151292546497023;
    private static readonly double Sinh = Math.Sinh(StepDb * NepersPerDecibel);
    private static readonly double Cosh = Math.Cosh(StepDb * NepersPerDecibel);

    /// <summary>Amplitude of the signal; 0 where there may be none.</summary>
    public double Signal => Math.Max(0, Reading + Noise);

    /// <summary>
    /// How the level of the signal moves with that of the reading: the slope of the chord over 0.001 dB to either side.
    /// </summary>
    public double SlopeOfReading => Slope(Reading, Noise);

    /// <summary>How the level of the signal moves with that of the floor.</summary>
    public double SlopeOfFloor => Slope(Noise, Reading);

    /// <summary>Amplitude ratio of a level in dB.</summary>
    public static double Of(double db) => Math.Exp(NepersPerDecibel * db);

    /// <summary>Level in dB of a ratio of amplitudes; −∞ for 0.</summary>
    public static double Level(double amplitude) => Math.Log(amplitude) / NepersPerDecibel;

    /// <summary>
    /// By how many dB the signal moves where reading and noise grow by factors; not a number where there is no signal before or
    /// after.
    /// </summary>
    public double Moved(double reading, double noise) => Level(Math.Max(0, (Reading * reading) + (Noise * noise)) / Signal);

    // ln((m·e^h + r)/(m·e^−h + r)) / 2h, without the difference of two logarithms that are almost the same.
    private static double Slope(double moved, double rest) =>
        Math.Atanh(moved * Sinh / ((moved * Cosh) + rest)) / (StepDb * NepersPerDecibel);
}
