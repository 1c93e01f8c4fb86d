namespace SweepStats.Quantities;

/// <summary>The noise that every matched source gives off: no analyser floor lies below it.</summary>
public static class ThermalNoise
{
    /// <summary>Boltzmann constant in J/K, exact. Source: SI Brochure, 9th edition 2019, section 2.2.</summary>
    public const double BoltzmannConstant = 1.380649e-23;

    /// <summary>
    /// The temperature that noise figures refer to, in K. Source: IEEE definition of noise factor (from memory).
    /// </summary>
    public const double StandardTemperature = 290;

    /// <summary>Available noise power in 1 Hz, in dBm: 10·log10(k·T/1 mW); −173.975 dBm at 290 K.</summary>
    /// <remarks>
    /// Assumes a matched source and a frequency far below k·T/h (6 THz at 290 K), where the classical form holds: it is 0.001 dB
    /// too high at 3 GHz and 0.007 dB at 20 GHz.
    /// </remarks>
    /// <param name="kelvin">Temperature of the source in K, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is not a positive number.</exception>
    public static double DbmPerHertz(double kelvin = StandardTemperature)
    {
        if (!(kelvin > 0) || double.IsPositiveInfinity(kelvin))
        {
            throw new ArgumentOutOfRangeException(nameof(kelvin), kelvin, "A temperature is a positive number of kelvin.");
        }

        return 10 * Math.Log10(BoltzmannConstant * kelvin * 1000);
    }
}
