using SweepStats.Quantities;

namespace SweepStats.Receivers;

/// <summary>The level at a receiver's input without the cover. Immutable.</summary>
/// <param name="Dbm">Level in dBm.</param>
/// <param name="UncertaintyDb">Its standard uncertainty in dB.</param>
/// <param name="Origin">Where it comes from.</param>
public readonly record struct ReceivedLevel(double Dbm, double UncertaintyDb, LevelOrigin Origin)
{
    /// <summary>Speed of light in m/s, exact. Source: SI Brochure, 9th edition 2019.</summary>
    public const double SpeedOfLight = 299792458;

    /// <summary>
    /// Least standard uncertainty of a level that is reckoned by distance, in dB: two paths over ground alone move it from +6 dB
    /// to a deep null (common practice, no source).
    /// </summary>
    public const double LeastFreeSpaceUncertaintyDb = 6;

    private const double Ohm = 50;

    /// <summary>From a field strength: E in dBµV/m less the antenna factor in dB/m is the voltage in dBµV at 50 Ω, 106.99 dB
    /// above the power in dBm.</summary>
    /// <remarks>Assumes a matched receiver of 50 Ω and no loss that the antenna factor does not hold. Exact. Source: definition
    /// of the antenna factor (CISPR 16-1-4, from memory).</remarks>
    /// <param name="microvoltsPerMetreDb">E in dBµV/m.</param>
    /// <param name="antennaFactorDb">AF in dB/m, cable included.</param>
    /// <param name="uncertaintyDb">Standard uncertainty of both together in dB.</param>
    public static ReceivedLevel FromField(double microvoltsPerMetreDb, double antennaFactorDb, double uncertaintyDb) =>
        new(microvoltsPerMetreDb - antennaFactorDb - (90 + (10 * Math.Log10(Ohm))), uncertaintyDb, LevelOrigin.Field);

    /// <summary>From power and distance in free space: P + G − 20·log10(4π·d·f/c).</summary>
    /// <remarks>
    /// Friis 1946: far field of both antennas, nothing in the way, antennas that face each other. Walls, ground and bodies mostly
    /// leave less, so that the level, the margin and a lower bound of shielding come out too high: state an uncertainty that
    /// holds that.
    /// </remarks>
    /// <param name="powerDbm">Power into the transmitting antenna in dBm.</param>
    /// <param name="gainDb">Gain of both antennas together over isotropic ones, in dB.</param>
    /// <param name="metres">Distance in m, at least a wavelength.</param>
    /// <param name="frequency">Frequency.</param>
    /// <param name="uncertaintyDb">Standard uncertainty in dB, at least <see cref="LeastFreeSpaceUncertaintyDb"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance is less than a wavelength, or the uncertainty less than the
    /// least.</exception>
    public static ReceivedLevel InFreeSpace(double powerDbm, double gainDb, double metres, Hertz frequency, double uncertaintyDb)
    {
        double wavelength = SpeedOfLight / frequency.Value;
        if (!(metres >= wavelength))
        {
            throw new ArgumentOutOfRangeException(nameof(metres), metres,
                "Nearer than a wavelength there is no free-space loss.");
        }

        return uncertaintyDb >= LeastFreeSpaceUncertaintyDb
            ? new(powerDbm + gainDb - (20 * Math.Log10(4 * Math.PI * metres / wavelength)), uncertaintyDb, LevelOrigin.FreeSpace)
            : throw new ArgumentOutOfRangeException(nameof(uncertaintyDb), uncertaintyDb,
                "A level reckoned by distance is not so sure.");
    }
}
