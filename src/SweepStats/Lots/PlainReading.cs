using SweepStats.Shielding;

namespace SweepStats.Lots;

/// <summary>
/// What a plain mean takes for the shielding: reference less covered level, noise and capped readings as they come. In dB.
/// </summary>
internal static class PlainReading
{
    public static double Of(ShieldingReading reading) => reading.Evidence.ReferenceDb - reading.Evidence.CoveredDb;
}
