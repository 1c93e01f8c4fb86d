namespace SweepStats.Files.Traces.Touchstone;

/// <summary>Which elements of its matrix a Touchstone file lists for each frequency.</summary>
internal enum TouchstoneMatrix
{
    /// <summary>Every element.</summary>
    Full,

    /// <summary>The diagonal and what is below it; the rest is the mirror image.</summary>
    Lower,

    /// <summary>The diagonal and what is above it; the rest is the mirror image.</summary>
    Upper,
}
