using SweepStats.Quantities;
using SweepStats.Report.Drawing;
using SweepStats.Trends;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;

namespace SweepStats.Report.Trends;

/// <summary>Titles, legends and descriptions of the charts of a trend.</summary>
internal static class TrendChartWords
{
    internal const string TrendLineLegend = "line through the specimens";
    internal const string SlopeLegend = "change for each unit";
    internal const string NoChangeLegend = "no change";

    internal static string TrendMeanTitle(FactorTrend trend) => $"Mean shielding over {PlotName(trend)}";

    internal static string TrendMeanSubtitle(FactorTrend trend)
    {
        string part = trend.Whole.ClearShare >= 1 - 1e-9 ? string.Empty
            : $", the {Percent(trend.Whole.ClearShare)} of it where every specimen is bounded from both sides";
        string line = trend.Whole.Line is null ? "; too little for a line"
            : !trend.Whole.IsStraight ? "; no straight line holds"
            : trend.Whole.WithinLots is null ? string.Empty : "; no line: lots lie apart";
        return Band(trend.Whole.Band) + part + line;
    }

    internal static string TrendBandLegend(FactorTrend trend) =>
        $"{Level(trend.Confidence)} interval of the line, without what all specimens share";

    internal static string TrendMeanDescription(FactorTrend trend) =>
        $"Mean shielding of each specimen over {FactorWords.Factor(trend)}, {FactorWords.ValueRange(trend)}. "
            + $"{SlopeWords.SlopeOf(trend, trend.Whole)}";

    internal static string TrendAtTitle(FactorTrend trend, Hertz at) =>
        $"Shielding at {Frequency(at)} over {PlotName(trend)}, and the requirement";

    internal static string TrendAtSubtitle(FactorTrend trend, TrendRequirement asked, bool decides) =>
        asked.Frequencies == 1 ? "what is held against the requirement: the line and its limits"
        : decides ? "the frequency that decides; what is held against the requirement is the line and its limits"
        : "the frequency with least to spare among those with a line";

    internal static string TrendLimitsLegend(TrendRequirement asked) =>
        $"one-sided {Level(asked.Rule.Level)} limits of the line, reference and floor included";

    internal static string TrendRequiredLegend(Decibels required) => $"required: {Exact(required.Value, "dB")}";

    internal static string MetUpToLegend(FactorTrend trend, double value) =>
        $"met up to {Plain(FactorWords.Down(trend, value))}, all frequencies";

    internal static string NotMetFromLegend(FactorTrend trend, double value) =>
        $"not met from {Plain(FactorWords.Up(trend, value))} on, at some frequency";

    internal static string TrendAtDescription(FactorTrend trend, TrendRequirement asked, Hertz at) =>
        $"Shielding of each specimen at {Frequency(at)} over {FactorWords.Factor(trend)}, with the line, its limits and the "
        + "requirement. "
        + string.Join(" ", TrendRequirementWords.MetAlong(trend, asked, TrendRequirementWords.ScopeOf(asked)));

    internal static string TrendSlopeTitle(FactorTrend trend) => $"Change of the shielding for each unit of {PlotName(trend)}";

    internal static string TrendSlopeSubtitle(FactorTrend trend, bool gaps) =>
        $"{Count(trend.Specimens.Length, "specimen")}; each frequency by "
            + $"itself{(gaps ? "; gaps: no slope there, bounds or no straight line" : string.Empty)}";

    internal static string TrendSlopeAxis(FactorTrend trend) => $"dB for each unit of {PlotName(trend)}";

    internal static string TrendSlopeDescription(FactorTrend trend)
    {
        TrendFrequency[] lined = [.. trend.Frequencies.Where(f => f.Line is not null)];
        TrendFrequency steepest = lined.MaxBy(f => Math.Abs(f.Line!.SlopeDb))!;
        int digits = SlopeWords.SlopeDigits(steepest.Line!.SlopeIntervalDb);
        return $"Slope over frequency with its interval. Steepest at {Frequency(steepest.At)}: "
            + $"{SlopeWords.Fixed(steepest.Line.SlopeDb, digits)} dB {FactorWords.Each(trend)}. "
            + $"The interval lies wholly below 0 at {Plain(lined.Count(f => f.Line!.SlopeIntervalDb.High < 0))} of "
            + $"{Count(lined.Length, "frequency")}.";
    }

    private static string PlotName(FactorTrend trend) => Frame.Literal(FactorWords.Factor(trend));
}
