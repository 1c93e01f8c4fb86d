namespace SweepStats.Trends;

/// <summary>What is known of each specimen at one frequency: its shielding, or a bound that it lies above. Unit: dB.</summary>
/// <param name="values">Shielding or bound of each specimen; a bound at the level of the intervals.</param>
/// <param name="bounds">Which are bounds.</param>
/// <param name="limit">Lower limit of a specimen at a one-sided level; asked of bounds alone.</param>
internal sealed class SpecimenLevels(double[] values, bool[] bounds, Func<int, double, double> limit)
{
    /// <summary>Whether the specimen is known from below only.</summary>
    public bool IsBound(int specimen) => bounds[specimen];

    /// <summary>Shielding of a specimen, or what it lies above at a level.</summary>
    /// <remarks>
    /// A level below that of the intervals moves no bound up: at one half noise below its own mean has an endless bound, and
    /// would meet anything (as in the verdict).
    /// </remarks>
    public double LowestAt(int specimen, double level) =>
        bounds[specimen] ? Math.Min(values[specimen], limit(specimen, level)) : values[specimen];
}
