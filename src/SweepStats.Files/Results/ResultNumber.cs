using System.Globalization;

namespace SweepStats.Files.Results;

/// <summary>Numbers as the result files write them, the same in every culture.</summary>
internal static class ResultNumber
{
    /// <summary>A number as JSON can write it; null where there is none or it is not finite.</summary>
    public static double? Finite(double? value) => value is { } number && double.IsFinite(number) ? number : null;

    /// <summary>A frequency, to the last bit.</summary>
    public static string Exact(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>A level in dB to four decimals; empty where there is none or it is not finite.</summary>
    public static string Level(double? value)
    {
        if (value is not { } level || !double.IsFinite(level))
        {
            return "";
        }

        string text = level.ToString("F4", CultureInfo.InvariantCulture);
        // A tiny negative level rounds to a zero that must not keep its sign.
        return text == "-0.0000" ? "0.0000" : text;
    }

    /// <summary>A number of any size to nine significant digits; empty where there is none or it is not finite.</summary>
    public static string Significant(double? value) =>
        value is { } number && double.IsFinite(number) ? number.ToString("G9", CultureInfo.InvariantCulture) : "";

    /// <summary>A probability to six decimals; empty where there is none.</summary>
    public static string Probability(double? value) => value?.ToString("F6", CultureInfo.InvariantCulture) ?? "";

    /// <summary>Degrees of freedom to one decimal, or "inf".</summary>
    public static string DegreesOfFreedom(double? value) => value switch
    {
        null => "",
        double.PositiveInfinity => "inf",
        { } dof when double.IsFinite(dof) => dof.ToString("F1", CultureInfo.InvariantCulture),
        _ => "",
    };

    /// <summary>A count.</summary>
    public static string Count(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";
}
