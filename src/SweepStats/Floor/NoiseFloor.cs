namespace SweepStats.Floor;

/// <summary>Where the floor comes from.</summary>
public enum FloorSource
{
    /// <summary>Floor sweeps.</summary>
    Measured,

    /// <summary>Stated in the campaign.</summary>
    Declared,
}

/// <summary>The noise floor over frequency. Immutable.</summary>
public sealed record NoiseFloor
{
    /// <summary>Where it comes from.</summary>
    public required FloorSource Source { get; init; }

    /// <summary>Floor sweeps behind it; 0 where declared.</summary>
    public required int SweepCount { get; init; }

    /// <summary>
    /// How the noise reads, one for each way of averaging that has to be reckoned with: one where stated, power and log where
    /// not.
    /// </summary>
    public required ImmutableArray<DetectorNoise> Noise { get; init; }

    /// <summary>Which of its looks the detector keeps in a reading.</summary>
    public KeptLook Kept => Noise[0].Kept;

    /// <summary>
    /// How far the true floor may lie from <see cref="LevelDb"/> as a whole in dB, to either side, beyond its error.
    /// </summary>
    public double HalfWidthDb { get; init; }

    /// <summary>Scatter of one noise reading in dB, sweep offsets taken out; 0 where declared.</summary>
    public required double ReadingDeviationDb { get; init; }

    /// <summary>
    /// Offset that floor sweeps share over frequency: its standard deviation between sweeps in dB; null with one sweep.
    /// </summary>
    public required double? SweepOffsetDeviationDb { get; init; }

    /// <summary>Log mean of the floor readings at each frequency in dB, pooled over neighbours that agree.</summary>
    public required ImmutableArray<double> LevelDb { get; init; }

    /// <summary>Standard error of <see cref="LevelDb"/> in dB.</summary>
    public required ImmutableArray<double> StandardErrorDb { get; init; }

    /// <summary>Degrees of freedom of <see cref="StandardErrorDb"/>; infinity where known.</summary>
    public required ImmutableArray<double> DegreesOfFreedom { get; init; }

    /// <summary>
    /// Frequencies whose own floor stands above its neighbourhood by more than noise explains: something transmits there.
    /// </summary>
    public required ImmutableArray<bool> Ambient { get; init; }

    /// <summary>
    /// What was added to the floor in dB because its sweeps were taken with another resolution bandwidth than the covered ones; 0
    /// where they agree or one of them is not stated. <see cref="LevelDb"/> has it in.
    /// </summary>
    public double BandwidthShiftDb { get; init; }
}
