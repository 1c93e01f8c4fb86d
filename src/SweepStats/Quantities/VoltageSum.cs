namespace SweepStats.Quantities;

/// <summary>How far the sum of two voltages of unknown phase may lie from the larger of them, in dB.</summary>
/// <remarks>
/// |1 + r·e^(jφ)| lies between |1 − r| and 1 + r, so the sum lies between 20·log10(1 − r) and 20·log10(1 + r) of the larger
/// voltage. Exact for steady voltages of one frequency; farther down than up. Source: UKAS LAB 34 (2002), 3.4.3, for mismatch;
/// else common practice.
/// </remarks>
/// <param name="High">Both in phase: above 0 dB, at most 6.02 dB for r up to 1.</param>
/// <param name="Low">Against each other: below 0 dB for r up to 2; −∞ for two equal voltages, which may cancel.</param>
public readonly record struct VoltageSum(Decibels High, Decibels Low)
{
    /// <summary>
    /// Two voltages so many dB apart. Negative where the second is the larger: limits stay those of the sum over the first.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not a number.</exception>
    public static VoltageSum Apart(Decibels distance)
    {
        if (double.IsNaN(distance.Value))
        {
            throw new ArgumentOutOfRangeException(nameof(distance), distance.Value, "A distance in dB is a number.");
        }

        return OfRatio(Math.Pow(10, -distance.Value / 20));
    }

    /// <summary>
    /// A wave that goes back and forth between a source and a load that both reflect: r is the product of the two magnitudes.
    /// </summary>
    /// <param name="source">Magnitude of the source's reflection, 0 to 1.</param>
    /// <param name="load">Magnitude of the load's reflection, 0 to 1.</param>
    public static VoltageSum Mismatch(Reflection source, Reflection load) => OfRatio(source.Magnitude * load.Magnitude);

    private static VoltageSum OfRatio(double ratio) =>
        new(new Decibels(20 * Math.Log10(1 + ratio)), new Decibels(20 * Math.Log10(Math.Abs(1 - ratio))));
}
