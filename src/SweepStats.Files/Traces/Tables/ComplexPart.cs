namespace SweepStats.Files.Traces.Tables;

/// <summary>Which part of a complex number a column holds, as far as its name tells.</summary>
internal enum ComplexPart
{
    /// <summary>None.</summary>
    None,

    /// <summary>The real part.</summary>
    Real,

    /// <summary>The imaginary part.</summary>
    Imaginary,

    /// <summary>The phase, beside a magnitude or a level.</summary>
    Phase,
}
