using SweepStats.Quantities;

namespace SweepStats.Uncertainty;

/// <summary>Two reflections between which a wave goes back and forth, as an error of the level in dB.</summary>
/// <remarks>
/// The error lies between 20·log10(1 − r) and 20·log10(1 + r), r the product of the magnitudes, and its phase is not known:
/// arcsine (U-shaped). The lower side reaches farther; the wider of the two is taken on both, so that the interval is never too
/// short. Assumes magnitudes that are known and phases that are not. Source: UKAS LAB 34 (2002), 3.4.3.
/// </remarks>
/// <param name="Source">Reflection of the side that sends.</param>
/// <param name="Load">Reflection of the side that receives.</param>
public sealed record Mismatch(Reflection Source, Reflection Load)
{
    /// <summary>Half-width in dB; infinite where both reflect everything.</summary>
    public double HalfWidthDb => -VoltageSum.Mismatch(Source, Load).Low.Value;
}
