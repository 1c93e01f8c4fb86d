namespace SweepStats.Quantities;

/// <summary>What the levels of a sweep are measured against. Levels of different scales may not be subtracted.</summary>
public enum LevelScale
{
    /// <summary>Power in dB relative to 1 mW; V, µV and W are brought to it by the readers.</summary>
    DecibelMilliwatts,

    /// <summary>A plain ratio in dB, such as |S21|.</summary>
    DecibelRatio,

    /// <summary>
    /// Field strength in dB relative to 1 µV/m. The antenna factor cancels in a difference, so shielding needs none.
    /// </summary>
    DecibelMicrovoltsPerMeter,
}
