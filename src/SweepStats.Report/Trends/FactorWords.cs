using SweepStats.Report.Text;
using SweepStats.Trends;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Trends;

/// <summary>An ordered factor and its values in words.</summary>
internal static class FactorWords
{
    private static readonly string[] HissingEnds = ["shes", "ches", "xes", "sses"];

    internal static string Factor(FactorTrend trend) => PlainText.Short(trend.Factor.Replace('_', ' '), LongestSpecimen);

    /// <summary>The unit of a slope: a column of counts is named in the plural, and a single letter is no word.</summary>
    internal static string Each(FactorTrend trend) =>
        Factor(trend) is { Length: > 3 } name && trend.IsCount && IsPlural(name) ? $"for each {Singular(name)}"
            : $"for each unit of {Factor(trend)}";

    private static bool IsPlural(string name) => name.EndsWith('s') && !name.EndsWith("ss", StringComparison.Ordinal);

    // "washes" and "boxes", beside "cycles" and "creases".
    private static string Singular(string name) =>
        Array.Exists(HissingEnds, end => name.EndsWith(end, StringComparison.Ordinal)) ? name[..^2] : name[..^1];

    internal static string Along(FactorTrend trend, double value) => $"{Plain(value)} {Factor(trend)}";

    internal static string ValueRange(FactorTrend trend) =>
        trend.Groups.Length == 1 ? Plain(trend.Groups[0].Value)
            : $"{Plain(trend.Groups[0].Value)} to {Plain(trend.Groups[^1].Value)}";

    /// <summary>
    /// A value up to which something is claimed, no larger: whole where all values are, else to a hundredth of the range's size.
    /// </summary>
    internal static double Down(FactorTrend trend, double value) => Rounded(trend, value, Math.Floor);

    /// <summary>A value from which on something is claimed, no smaller.</summary>
    internal static double Up(FactorTrend trend, double value) => Rounded(trend, value, Math.Ceiling);

    private static double Rounded(FactorTrend trend, double value, Func<double, double> round)
    {
        if (trend.Groups.Any(g => g.Value == value))
        {
            return value;
        }

        double step = trend.IsCount ? 1
            : Math.Pow(10, Math.Floor(Math.Log10(trend.Groups[^1].Value - trend.Groups[0].Value)) - 2);
        double steps = value / step;
        double whole = Math.Abs(steps - Math.Round(steps)) < 1e-6 ? Math.Round(steps) : round(steps);
        return Math.Clamp(Math.Round(whole * step, 12), trend.Groups[0].Value, trend.Groups[^1].Value);
    }
}
