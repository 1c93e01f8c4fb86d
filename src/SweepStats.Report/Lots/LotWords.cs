using SweepStats.Lots;
using SweepStats.Report.Answer;
using SweepStats.Report.Text;
using SweepStats.Statistics;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Lots;

/// <summary>Whether lots are alike.</summary>
public static class LotWords
{
    internal const int MostPairsNamed = 10;

    /// <summary>How lots compare, on the console: the answer, then the figures of each band.</summary>
    /// <param name="result">What the analysis found.</param>
    /// <param name="name">What to call the campaign; its title unless given.</param>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> LotsText(AnalysisResult result, string? name = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        LotComparison lots = result.Lots;
        List<string> lines =
        [
            $"{PlainText.Of(name ?? result.Title)}: {Count(lots.Lots.Length, "lot")}, "
                + $"{Count(lots.Whole.Specimens.Length, "specimen")}", VerdictWords.HeadlineWithReason(result),
            .. LotAnswerWords.LotsAnswer(result),
        ];
        foreach (LotBand band in lots.Bands)
        {
            lines.Add(string.Empty);
            lines.Add(LotBandHeading(band));
            lines.Add(ClearPart(band));
            lines.AddRange(TextTable.Of(LotColumns(lots.Question, band), band.Lots.Select(l => LotRow(l, band))));
            lines.AddRange(LotRemarkWords.LotRemarks(result, band).Select(remark => "  " + remark));
        }

        return lines;
    }

    internal static string LotBandHeading(LotBand band) =>
        band.Name is { } name ? $"{PlainText.Of(name)}, {Band(band.Band)}" : $"Whole band, {Band(band.Band)}";

    internal static string ClearPart(LotBand band) => band.ClearShare switch
    {
        0 => "At every measured frequency some specimen is known from below only, so no figure of the band can be had.",
        >= 1 - 1e-9 => "Every specimen is bounded from both sides at every measured frequency.",
        var share => $"Figures are of the {Percent(share)} of this band where every specimen is bounded from both sides.",
    };

    /// <summary>Columns of lots, with the interval for comparing lots where it differs from that with everything in it.</summary>
    internal static string[] LotColumns(LotQuestion question, LotBand? band = null) =>
    [
        "Lot", "Specimens", "Mean", $"{Level(question.Confidence)} interval of the mean",
        .. ShowsAlone(band) ? [AloneColumn] : Array.Empty<string>(), $"{LotChartWords.Share(question)} of its specimens reach",
        "Plain mean of readings",
    ];

    internal static IReadOnlyList<string> LotRow(LotSummary lot, LotBand? band = null) =>
    [
        PlainText.Short(lot.Lot, LongestSpecimen), Plain(lot.Specimens),
        double.IsFinite(lot.MeanDb) ? Ratio(lot.MeanDb) : Nothing,
        lot.SharedUnknown ? ReferenceUnknown : MeanInterval(lot.MeanIntervalDb),
        .. ShowsAlone(band) ? [MeanInterval(lot.BetweenLotsIntervalDb)] : Array.Empty<string>(),
        lot.ToleranceLimitDb is { } limit ? Promise(limit) : lot.SharedUnknown ? ReferenceUnknown : Nothing,
        Ratio(lot.PlainMeanDb),
    ];

    internal const string AloneColumn = "for comparing lots";
    private const string ReferenceUnknown = "unknown: reference swept once";

    internal static bool ShowsAlone(LotBand? band) =>
        band is not null
            && band.Lots.Any(l => l.SharedUnknown || MeanInterval(l.MeanIntervalDb) != MeanInterval(l.BetweenLotsIntervalDb));

    private static string MeanInterval(Interval? interval) => interval is { } mean ? Interval(mean.Low, mean.High) : Nothing;

    /// <summary>What the figures of lots mean, for the page.</summary>
    internal static string LotsMean(LotQuestion question) =>
        "Lots are compared by how their specimens scatter; the errors of reference and floor are those of all specimens and "
        + "drop out. They are part of what is said of a lot by itself: "
        + $"the interval of its mean, and \"{LotChartWords.Share(question)} of its specimens reach\". That is a lower tolerance "
        + $"limit ({Level(question.Confidence)} confidence): of the specimens of a lot, "
        + "measured or not, at least that share has this mean shielding, where specimens scatter normally. "
        + "Lots need not scatter alike: each is judged by its own scatter. Two or three specimens hardly show theirs, so beside "
        + "larger lots such a lot has to lie farther off to be called different. "
        + "Plain means of readings take noise and capped readings for shielding; they stand here to show what they hide. Out of "
        + "line are a mean (Mandel's h, Grubbs) or a scatter (Mandel's k, Cochran) past what chance gives at 1 % or 5 %. "
        + "Frequency by frequency: lots-by-frequency.csv.";

    private static string Promise(double limit) => limit > 0 ? LowTenths(limit) + " dB" : "nothing";
}
