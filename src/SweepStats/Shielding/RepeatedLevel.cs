using SweepStats.Statistics;

namespace SweepStats.Shielding;

/// <summary>The log mean of repeated readings at one frequency, with its standard error.</summary>
/// <param name="MeanDb">Mean of the readings on the dB scale.</param>
/// <param name="Error">Standard error of that mean in dB and its degrees of freedom.</param>
public readonly record struct RepeatedLevel(double MeanDb, Contribution Error)
{
    /// <summary>Standard error that neighbouring frequencies show, in dB; 0 where none is known.</summary>
    public double UsualErrorDb { get; init; }
}
