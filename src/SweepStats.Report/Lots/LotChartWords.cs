using System.Globalization;
using SweepStats.Lots;
using SweepStats.Report.Findings;
using SweepStats.Report.Text;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;

namespace SweepStats.Report.Lots;

/// <summary>Titles, legends and descriptions of the charts of lots.</summary>
internal static class LotChartWords
{
    internal const string LotsChartTitle = "Lots at a glance";
    internal const string SpecimenLegend = "one specimen";
    internal const string PlainMeanLegend = "plain mean of all readings, noise and capped ones included";
    internal const string LotFrequencyTitle = "Lots over frequency";
    internal const string OtherLotsLegend = "the other lots";
    internal const string ScatterTitle = "Where the scatter comes from";
    internal const string SpecimenNoun = "specimen";
    internal const string LotNoun = "lot";
    internal const string MandelHSubtitle = "h: distance of the mean from the mean of all, over the scatter of the means";
    internal const string MandelKSubtitle = "k: scatter of the repeats, over that of all";
    internal const string StragglerLine = "5 % critical value";
    internal const string OutlierLine = "1 % critical value";
    internal const string WithinLegend = "consistent";
    internal const string StragglerLegend = "straggler: beyond 5 %";
    internal const string OutlierLegend = "outlier: beyond 1 %";
    internal const string CentreLegend = "centre";
    internal const string ControlLimitLegend = "control limits, three standard deviations";
    internal const string OutsideLegend = "outside the limits";

    internal static string LotsChartSubtitle(LotsShown band, int shown)
    {
        string part = band.ClearShare < 1 - 1e-9
            ? $"; means over the {Percent(band.ClearShare)} of it where every specimen is bounded from both sides" : string.Empty;
        return Band(band.Band) + part + FirstOf(shown, band.Lots.Length, "lot");
    }

    internal static string LotMeanLegend(LotQuestion question, bool cut, bool alone = false) =>
        $"mean of the lot with {Level(question.Confidence)} interval{(alone ? " " + AloneLegend : string.Empty)}"
            + $"{(cut ? " (cut at the frame)" : string.Empty)}";

    private const string AloneLegend = "by specimens alone, reference swept once";

    internal static string PromiseOutside(double limit) =>
        limit < 0 ? "promises nothing" : $"promises {LowTenths(limit)} dB, outside the picture";

    internal static string LotPromiseLegend(LotQuestion question, bool alone = false) =>
        $"{Share(question)} of its specimens have at least this mean{(alone ? ", " + AloneLegend : string.Empty)}";

    internal static string LotsChartDescription(ImmutableArray<LotSummary> lots) =>
        "Mean shielding of each lot and of its specimens. "
            + string.Join("; ", lots.Select(l => $"lot {PlainText.Of(l.Lot)}: {LotFigure(l)}")) + ".";

    internal static string LotFrequencySubtitle(int shown, int all, bool bounds)
    {
        string left = shown < all ? $"; the {Plain(shown)} of {Plain(all)} that deviate most" : string.Empty;
        return "mean of each lot less the mean of all"
            + (bounds ? "; thin: bounds among them; arrows: there or higher" : string.Empty) + left;
    }

    internal static string BoundOnlyLegend(string lot) => $"{lot} (known from below only)";

    internal static string LotsDifferLegend(LotQuestion question) =>
        $"lots differ ({Plain(Math.Round(question.FalseAlarm * 100, 3))} %, over all frequencies)";

    internal static string LotFrequencyDescription(LotComparison lots, int differing)
    {
        string where = differing == 0 ? "They differ at no frequency."
            : $"They differ at {Plain(differing)} of {Count(lots.Frequencies.Length, "frequency")}.";
        string most = lots.Stretches.FirstOrDefault() is { } first
            ? $" Most of all at {Band(first.Band)}" + (first.Lot is { } lot
                ? $", where lot {PlainText.Of(lot)} lies "
                    + $"{Ratio(Math.Abs(first.ApartDb))}{(first.AtLeast ? " or more" : string.Empty)} "
                    + $"{(first.ApartDb < 0 ? "below" : "above")} the others." : ".")
            : string.Empty;
        return $"Mean of each lot less the mean of all lots over frequency. {where}{most}";
    }

    internal static string LotPromiseTitle(LotQuestion question) =>
        $"What each lot promises: {Share(question)} of its specimens shield at least this much";

    internal static string LotPromiseSubtitle(LotComparison lots, int shown, int told)
    {
        string left = shown < told ? $"; the {Plain(shown)} of {Count(told, "lot")} that promise least" : string.Empty;
        string untold = told < lots.Lots.Length ? $"; {Count(lots.Lots.Length - told, "lot")} without a promise" : string.Empty;
        string of = lots.Frequencies.Any(f => f.Lots.Any(l => l.PromisedDb is null && l.BetweenLotsPromisedDb is not null))
            ? AloneLegend : "by the scatter of its specimens and what all specimens share";
        return $"with {Level(lots.Question.Confidence)} confidence, {of}{left}{untold}";
    }

    internal static string LotPromiseDescription(LotComparison lots, IEnumerable<int> shown) =>
        "Lower tolerance limit of each lot over frequency. Least anywhere: "
        + string.Join("; ",
            shown.Select(l => $"lot {PlainText.Of(lots.Lots[l])} "
                + $"{LowTenths(lots.Frequencies.Min(f => f.Lots[l].AtMostPromisedDb) ?? double.NaN)} dB")) + ".";

    internal static string ScatterSubtitle(bool gaps) =>
        "what each level adds to the standard deviation of a single sweep"
            + (gaps ? "; gaps: some specimen is known from below only" : string.Empty);

    internal static string ScatterLegend(VarianceLevel level) => $"from {LevelNoun(level)} to {LevelNoun(level)}";

    internal static string ScatterDescription(LotBand band, IReadOnlyList<VarianceLevel> levels)
    {
        string lines = $"Standard deviation over frequency, one line a level: {string.Join(", ", levels.Select(ScatterLegend))}.";
        return band.Scatter.IsEmpty ? lines
            : $"{lines} Of the mean over the band: "
                + $"{string.Join(", ",
                    band.Scatter.Select(s => $"{ScatterLegend(s.Level)} {FindingChartWords.Hundredths(s.DeviationDb)}"))}.";
    }

    internal static string MandelHTitle(string noun) => $"Consistency: the mean of each {noun} (Mandel's h)";

    internal static string MandelKTitle(string noun) => $"Consistency: the scatter within each {noun} (Mandel's k)";

    internal static string SideBySideOf(string noun, int shown, int all) =>
        shown < all ? $"The {Plain(shown)} most outlying of {Count(all, noun)}" : $"{Count(all, noun)} side by side";

    internal static string MandelDescription(string title, IReadOnlyList<ConsistencyBar> bars)
    {
        string Critical(Func<ConsistencyBar, double> of)
        {
            double[] limits = [.. bars.Select(of).Where(double.IsFinite)];
            (string least, string most) = (Hundredth(limits.Min()), Hundredth(limits.Max()));
            return least == most ? least : $"{least} to {most}";
        }

        string[] beyond = [.. bars.Where(b => b.IsStraggler)
            .Select(b => $"{PlainText.Of(b.Name)} at {Hundredth(b.Value)}{(b.IsOutlier ? " (beyond 1 %)" : string.Empty)}")];
        return $"{title}. Critical values {Critical(b => b.Critical.Straggler)} (5 %) and {Critical(b => b.Critical.Outlier)} "
            + $"(1 %){(ConsistencyBar.HaveOneLimit(bars) ? string.Empty : ", by the number of repeats")}. "
            + (beyond.Length == 0 ? "None lies beyond." : $"Beyond: {string.Join(", ", beyond)}.");
    }

    internal static string OverTimeFile(ControlFigure figure) => figure switch
    {
        ControlFigure.LotMean => "lot-mean",
        ControlFigure.LotDeviation => "lot-deviation",
        ControlFigure.Specimen => "specimen",
        _ => "moving-range",
    };

    internal static string OverTimeTitle(ControlChart chart) =>
        $"{(IsTimed(chart) ? "Over time" : "In the order listed")}: {OverTimeOf(chart.Figure)}";

    private static string OverTimeOf(ControlFigure figure) => figure switch
    {
        ControlFigure.LotMean => "mean of each lot",
        ControlFigure.LotDeviation => "scatter within each lot",
        ControlFigure.Specimen => "each specimen",
        _ => "step from each specimen to the next",
    };

    internal static string OverTimeFigure(ControlFigure figure) => figure switch
    {
        ControlFigure.LotMean or ControlFigure.Specimen => "Mean shielding (dB)",
        ControlFigure.LotDeviation => "Standard deviation (dB)",
        _ => "Step (dB)",
    };

    internal static string OverTimeLegend(ControlFigure figure) => figure switch
    {
        ControlFigure.LotMean => "mean of a lot",
        ControlFigure.LotDeviation => "standard deviation of the specimens of a lot",
        ControlFigure.Specimen => "a specimen",
        _ => "a specimen less the one before",
    };

    internal static string OverTimeAxis(ControlChart chart)
    {
        string noun = chart.Figure is ControlFigure.LotMean or ControlFigure.LotDeviation ? "Lots" : "Specimens";
        return $"{noun} in the order {(IsTimed(chart) ? "of time" : "of the campaign")}";
    }

    internal static string OverTimeSubtitle(ControlChart chart)
    {
        string when = IsTimed(chart) ? Times(chart.Points.Min(p => p.TakenAt)!.Value, chart.Points.Max(p => p.TakenAt)!.Value)
            : "not every time is noted";
        return $"{Plain(chart.Points.Count(p => p.Outside))} of {Plain(chart.Points.Length)} outside the limits; {when}";
    }

    internal static string OverTimeDescription(ControlChart chart)
    {
        string[] outside = [.. chart.Points.Where(p => p.Outside)
            .Select(p => $"{PlainText.Of(p.Label)} at {FindingChartWords.Hundredths(p.Value)}")];
        return $"{OverTimeTitle(chart)}, {Plain(chart.Points.Length)} points in order. Centre "
            + $"{FindingChartWords.Hundredths(chart.CentreDb)}. "
            + (outside.Length == 0 ? "None lies outside the control limits."
                : $"Outside the control limits: {string.Join(", ", outside)}.");
    }

    internal static string Share(LotQuestion question) => Plain(Math.Round(question.Share * 100, 3)) + " %";

    internal static string FirstOf(int shown, int all, string noun) =>
        shown < all ? $"; the first {Plain(shown)} of {Count(all, noun)}" : string.Empty;

    private static string LotFigure(LotSummary lot)
    {
        string pieces = Count(lot.Specimens, "specimen");
        string mean = !double.IsFinite(lot.MeanDb) ? string.Empty
            : $", mean {Ratio(lot.MeanDb)}"
                + ((lot.MeanIntervalDb ?? lot.BetweenLotsIntervalDb) is { } i ? $" ({Interval(i.Low, i.High)})" : string.Empty);
        return pieces + mean + ((lot.ToleranceLimitDb ?? lot.BetweenLotsLimitDb) is { } limit
            ? $", promised {LowTenths(limit)} dB" : string.Empty) + (lot.SharedUnknown ? " " + AloneLegend : string.Empty);
    }

    private static string LevelNoun(VarianceLevel level) => level.ToString().ToLowerInvariant();

    private static string Hundredth(double value) => Sign(value.ToString("F2", CultureInfo.InvariantCulture));

    internal static bool IsTimed(ControlChart chart) => chart.Points.All(p => p.TakenAt is not null);

    private static string Times(DateTimeOffset first, DateTimeOffset last)
    {
        const string Full = "d MMMM yyyy HH:mm";
        DateTimeOffset until = last.ToOffset(first.Offset);
        return $"first sweeps {first.ToString(Full, CultureInfo.InvariantCulture)} to "
            + $"{until.ToString(until.Date == first.Date ? "HH:mm" : Full, CultureInfo.InvariantCulture)}";
    }
}
