namespace SweepStats.Shielding;

/// <summary>
/// An interval for the shielding from reference, covered and floor log means, by one way of taking the noise out.
/// </summary>
internal interface IReadingInterval
{
    /// <summary>What limits of any confidence need of a reading.</summary>
    ReadingBasis Basis(in ReadingLevels levels);

    /// <summary>Estimate and limits, in dB.</summary>
    ShieldingLimits For(in ReadingBasis basis);

    /// <summary>The same without the upper end, which is left open.</summary>
    ShieldingLimits Lower(in ReadingBasis basis);

    /// <summary>The same without the lower end.</summary>
    ShieldingLimits Upper(in ReadingBasis basis);

    /// <summary>Rise of the covered mean over the floor in dB, as the law takes it.</summary>
    double Rise(in ReadingLevels levels);
}
