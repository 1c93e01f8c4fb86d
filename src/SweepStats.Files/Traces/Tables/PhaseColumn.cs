namespace SweepStats.Files.Traces.Tables;

/// <summary>Where the phase of a level stands: in a column of its own, or in the two parts of a complex number.</summary>
/// <param name="Index">Place of the phase, or of the real part, from 0.</param>
/// <param name="Imaginary">Place of the imaginary part from 0; null where the column is the phase itself.</param>
/// <param name="DegreesPerUnit">Degrees in a unit of the column.</param>
internal sealed record PhaseColumn(int Index, int? Imaginary, double DegreesPerUnit)
{
    /// <summary>The columns it takes.</summary>
    public IEnumerable<int> Places => Imaginary is { } second ? [Index, second] : [Index];

    /// <summary>The phase in degrees.</summary>
    /// <param name="first">The phase in the unit of its column, or the real part.</param>
    /// <param name="second">The imaginary part; of no meaning where there is none.</param>
    public double Degrees(double first, double second) =>
        Imaginary is null ? first * DegreesPerUnit : Phase.OfParts(first, second);
}
