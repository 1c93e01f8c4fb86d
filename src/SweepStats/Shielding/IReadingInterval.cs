namespace SweepStats.Shielding;

/// <summary>
/// An interval for the shielding from reference, covered and floor log means, by one way of taking the noise out.
/// </summary>
internal interface IReadingInterval
{
    /// <summary>Estimate and limits, in dB.</summary>
    ShieldingLimits For(ReadingLevels levels);

    /// <summary>Rise of the covered mean over the floor in dB, as the law takes it.</summary>
    double Rise(ReadingLevels levels);
}
