using SweepStats.Report.Findings;
using SweepStats.Report.Lots;
using SweepStats.Report.Text;
using SweepStats.Statistics;
using SweepStats.Trends;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedNames;
using static SweepStats.Report.Trends.FactorWords;

namespace SweepStats.Report.Trends;

/// <summary>How the shielding changes along an ordered factor, in sentences and rows.</summary>
internal static class SlopeWords
{
    internal static readonly string[] TrendBandColumns = ["Band", "Clear part", "dB for each unit", "Interval", "Straight line"];

    internal static IReadOnlyList<string> TrendBandRow(FactorTrend trend, TrendBand band)
    {
        string name = band.Name is { } own ? $"{PlainText.Short(own, LongestSpecimen)}, {Band(band.Band)}"
            : $"whole, {Band(band.Band)}";
        if (band.Line is not { } line)
        {
            return [name, Percent(band.ClearShare), Nothing, Nothing, Nothing];
        }

        (double slope, Interval interval) = Slope(band, line);
        int digits = SlopeDigits(interval);
        string straight = line.StraightProbability is not { } p ? "cannot be told"
            : $"{(band.IsStraight ? "fits" : "does not fit")} ({LotAnswerWords.Chance(p)})";
        return
        [
            name, Percent(band.ClearShare), band.IsStraight ? Fixed(slope, digits) : Nothing,
            band.IsStraight ? $"{Low(interval.Low, digits)} to {High(interval.High, digits)} ({Level(trend.Confidence)})"
                : Nothing, straight,
        ];
    }

    internal static string SlopeOf(FactorTrend trend, TrendBand band)
    {
        if (band.Line is not { } line)
        {
            return "No mean over the band can be followed: at every frequency some specimen is known from below only.";
        }

        if (!band.IsStraight)
        {
            return "The mean shielding does not follow a straight line "
                + $"({LotAnswerWords.Chance(line.StraightProbability ?? 0)}): "
                + "no slope is stated, and only measured values are named.";
        }

        return Slope(band, line).Interval.Contains(0) ? NoSlope(trend, band, line) : SlopeTold(trend, band, line);
    }

    private static string Where(TrendBand band) =>
        (band.WithinLots is null ? string.Empty : "within lots, ") + (band.ClearShare >= 1 - 1e-9 ? "over the band"
            : $"over the {Percent(band.ClearShare)} of the band where every specimen is bounded from both sides");

    private static string NoSlope(FactorTrend trend, TrendBand band, TrendLine line)
    {
        (double slope, Interval interval) = Slope(band, line);
        int digits = SlopeDigits(interval);
        return $"No change of the mean shielding with {Factor(trend)} shows {Where(band)}: {Fixed(slope, digits)} dB "
            + $"{Each(trend)} ({Level(trend.Confidence)}: {Low(interval.Low, digits)} to {High(interval.High, digits)} dB).";
    }

    private static string SlopeTold(FactorTrend trend, TrendBand band, TrendLine line)
    {
        (double slope, Interval interval) = Slope(band, line);
        int digits = SlopeDigits(interval);
        bool falls = slope < 0;
        string limits = falls ? $"{Low(-interval.High, digits)} to {High(-interval.Low, digits)}"
            : $"{Low(interval.Low, digits)} to {High(interval.High, digits)}";
        return $"The mean shielding {(falls ? "falls" : "rises")} by {Fixed(Math.Abs(slope), digits)} dB {Each(trend)} "
            + $"({Level(trend.Confidence)}: {limits} dB), {Where(band)}.";
    }

    internal static string[] StraightOf(FactorTrend trend) => trend.Whole is not { IsStraight: true, Line: { } line } ? []
        :
        [
            (line.StraightProbability is { } p ? $"A straight line fits ({LotAnswerWords.Chance(p)}). "
                : "Whether a straight line fits cannot be told: it takes specimens at the same value, or at four values. ")
                + $"Single specimens scatter about it by {FindingChartWords.Hundredths(line.ResidualDb)} (one standard "
                + "deviation).",
        ];

    private static (double Value, Interval Interval) Slope(TrendBand band, TrendLine line) =>
        band.WithinLots is { } within ? (within.SlopeDb, within.IntervalDb) : (line.SlopeDb, line.SlopeIntervalDb);

    // As many decimals as show two digits of the half-width, two at least.
    internal static int SlopeDigits(Interval interval) =>
        interval.Width > 0 && double.IsFinite(interval.Width)
            ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(interval.Width / 2)), 2, 9) : 2;

    internal static string Fixed(double value, int digits) =>
        Sign(value.ToString("F" + Plain(digits), System.Globalization.CultureInfo.InvariantCulture));

    private static string Low(double value, int digits) =>
        Fixed(Math.Floor((value * Math.Pow(10, digits)) + 1e-6) / Math.Pow(10, digits), digits);

    private static string High(double value, int digits) =>
        Fixed(Math.Ceiling((value * Math.Pow(10, digits)) - 1e-6) / Math.Pow(10, digits), digits);
}
