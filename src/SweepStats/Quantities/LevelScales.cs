namespace SweepStats.Quantities;

/// <summary>How the scales are written.</summary>
public static class LevelScales
{
    /// <summary>The unit of levels on a scale.</summary>
    public static string Symbol(this LevelScale scale) => scale switch
    {
        LevelScale.DecibelMilliwatts => "dBm",
        LevelScale.DecibelMicrovoltsPerMeter => "dBµV/m",
        _ => "dB",
    };
}
