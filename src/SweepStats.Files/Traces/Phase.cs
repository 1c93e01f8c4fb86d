namespace SweepStats.Files.Traces;

/// <summary>Phases in degrees.</summary>
internal static class Phase
{
    /// <summary>Degrees in a radian.</summary>
    public const double DegreesPerRadian = 180 / Math.PI;

    /// <summary>
    /// The phase of a complex number from its real and imaginary part, above −180 to 180 degrees; 0 for the number 0.
    /// </summary>
    public static double OfParts(double real, double imaginary) => Math.Atan2(imaginary, real) * DegreesPerRadian;
}
