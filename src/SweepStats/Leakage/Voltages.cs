using System.Numerics;
using SweepStats.Alignment;

namespace SweepStats.Leakage;

/// <summary>Levels and phases as voltages, and back. Unit: that of 0 dB on the scale of the sweeps.</summary>
internal static class Voltages
{
    /// <summary>The voltages of one sweep of a block that carries phases.</summary>
    public static Complex[] Of(SweepBlock block, int sweep)
    {
        ReadOnlySpan<double> levels = block[sweep], phases = block.Phases(sweep);
        var voltages = new Complex[levels.Length];
        for (int f = 0; f < voltages.Length; f++)
        {
            voltages[f] = Of(levels[f], phases[f]);
        }

        return voltages;
    }

    /// <summary>The voltage of a level in dB and a phase in degrees.</summary>
    public static Complex Of(double levelDb, double degrees) =>
        Complex.FromPolarCoordinates(Math.Pow(10, levelDb / 20), degrees * Math.PI / 180);

    /// <summary>Level in dB; what is exactly nothing is taken as the lowest level a square keeps its digits for.</summary>
    public static double LevelDb(Complex voltage) => 20 * Math.Log10(Math.Max(voltage.Magnitude, 1e-150));

    /// <summary>Phase in degrees.</summary>
    public static double Degrees(Complex voltage) => voltage.Phase * 180 / Math.PI;
}
