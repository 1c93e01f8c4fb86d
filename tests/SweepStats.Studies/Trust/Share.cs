using System.Globalization;

namespace SweepStats.Studies.Trust;

/// <summary>A share of campaigns with its 95 % limits.</summary>
/// <remarks>
/// Limits by Wilson's score (1927, from memory): (p + z²/2n ± z·√(p(1 − p)/n + z²/4n²))/(1 + z²/n), z = 1.96. They stay between 0
/// and 1, and are not nil where nothing was seen.
/// </remarks>
internal readonly record struct Share(int Count, int Of)
{
    private const double Z = 1.959964;

    public double Value => (double)Count / Of;

    public (double Low, double High) Limits
    {
        get
        {
            double square = Z * Z / Of;
            double middle = Value + (square / 2);
            double reach = Math.Sqrt((Value * (1 - Value) * square) + (square * square / 4));
            return (Math.Max(0, (middle - reach) / (1 + square)), Math.Min(1, (middle + reach) / (1 + square)));
        }
    }

    public string Percent => string.Create(CultureInfo.InvariantCulture, $"{100 * Value:0.0} %");

    public string WithLimits =>
        string.Create(CultureInfo.InvariantCulture, $"{100 * Value:0.0} % ({100 * Limits.Low:0.0} to {100 * Limits.High:0.0})");
}
