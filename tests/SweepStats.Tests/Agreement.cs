using System.Globalization;
using Xunit;

namespace SweepStats.Tests;

/// <summary>Comparisons that name the row which failed.</summary>
internal static class Agreement
{
    public static void Within(double tolerance, double expected, double actual, params double[] row) =>
        Check(Math.Abs(actual - expected) <= tolerance, expected, actual, tolerance, row);

    public static void Relative(double tolerance, double expected, double actual, params double[] row) =>
        Check(Math.Abs(actual - expected) <= tolerance * Math.Abs(expected), expected, actual, tolerance, row);

    /// <summary>Correct significant digits: −log10 of the relative error, 15 at most.</summary>
    public static double Digits(double expected, double actual) =>
        actual == expected ? 15 : Math.Min(15, -Math.Log10(Math.Abs((actual - expected) / (expected == 0 ? 1 : expected))));

    private static void Check(bool agrees, double expected, double actual, double tolerance, double[] row) =>
        Assert.True(agrees, string.Create(CultureInfo.InvariantCulture,
            $"Expected {expected:R}, got {actual:R} (tolerance {tolerance}) at "
                + $"{string.Join(", ", row.Select(v => v.ToString("R", CultureInfo.InvariantCulture)))}."));
}
