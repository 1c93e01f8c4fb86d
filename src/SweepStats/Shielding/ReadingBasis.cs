namespace SweepStats.Shielding;

/// <summary>What the limits of a reading need at every confidence, so that it is computed once for all of them.</summary>
/// <param name="Levels">The levels.</param>
/// <param name="Rise">Rise of the covered mean over the floor in dB, as the law takes it.</param>
/// <param name="CoverageFreedom">Degrees of freedom of the factor that reference and covered share.</param>
/// <param name="Skewness">Skewness of the covered mean; 0 where readings are not skewed.</param>
/// <param name="ReferenceSignal">Level of the signal behind the reference in dB.</param>
/// <param name="CoveredSignal">Level of the signal behind the covered reading in dB.</param>
/// <param name="StandardUncertainty">Combined standard uncertainty in dB, to first order.</param>
/// <param name="DegreesOfFreedom">Its effective degrees of freedom.</param>
internal readonly record struct ReadingBasis(
    ReadingLevels Levels, double Rise, double CoverageFreedom, double Skewness, double ReferenceSignal, double CoveredSignal,
    double StandardUncertainty, double DegreesOfFreedom)
{
    /// <summary>Reference reading over the log mean of the floor as a ratio of amplitudes; for kept looks only.</summary>
    public double ReferenceAmplitude { get; init; }

    /// <summary>The same of the covered reading.</summary>
    public double CoveredAmplitude { get; init; }
}
