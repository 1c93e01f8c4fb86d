namespace SweepStats.Statistics;

/// <summary>Interpolation in a table of equal steps.</summary>
public static class Lagrange
{
    /// <summary>Value of the fifth-degree polynomial through six neighbours.</summary>
    /// <param name="values">Table entries at places 0 to 5.</param>
    /// <param name="place">Where to read, best between 2 and 3.</param>
    /// <exception cref="ArgumentException">Not six values.</exception>
    public static double SixPoint(ReadOnlySpan<double> values, double place)
    {
        if (values.Length != 6)
        {
            throw new ArgumentException("Six neighbours are needed.", nameof(values));
        }

        double a = place, b = place - 1, c = place - 2, d = place - 3, e = place - 4, f = place - 5;
        double ab = a * b, ef = e * f, cd = c * d;
        return (-values[0] * b * cd * ef / 120) + (values[1] * a * cd * ef / 24) - (values[2] * ab * d * ef / 12)
            + (values[3] * ab * c * ef / 12) - (values[4] * ab * cd * f / 24) + (values[5] * ab * cd * e / 120);
    }
}
