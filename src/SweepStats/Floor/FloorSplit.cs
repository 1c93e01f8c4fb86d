namespace SweepStats.Floor;

/// <summary>Floor sweeps split into noise and what transmits.</summary>
/// <param name="Scatter">What a frequency, a sweep and chance contribute to the readings.</param>
/// <param name="Ambient">Frequencies that hold more than noise.</param>
/// <param name="Noise">How the noise reads, by each way of averaging that has to be reckoned with.</param>
internal sealed record FloorSplit(FloorScatter Scatter, bool[] Ambient, ImmutableArray<DetectorNoise> Noise);
