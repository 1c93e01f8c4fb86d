using SweepStats.Files.Traces;

namespace SweepStats.Files.Proposals;

/// <summary>One number for how high a sweep lies.</summary>
internal static class SweepLevel
{
    /// <summary>Median over frequency in dB on the scale of the unit, which no transmitter and no notch moves; null where no
    /// level is finite.</summary>
    /// <param name="trace">The trace; without unit its levels are taken as they are.</param>
    /// <param name="impedanceOhm">Impedance that voltages are taken across.</param>
    public static double? Median(Trace trace, double impedanceOhm)
    {
        double[] levels = [.. trace.Levels.Select(l => trace.Unit?.ToDecibels(l, impedanceOhm) ?? l).Where(double.IsFinite)];
        Array.Sort(levels);
        return levels.Length == 0 ? null : (levels[(levels.Length - 1) / 2] + levels[levels.Length / 2]) / 2;
    }
}
