using SweepStats.Lots;

namespace SweepStats.Report;

/// <content>Whether lots are alike.</content>
public static partial class Wording
{
    private const int MostStretches = 3;
    private const int MostPairsNamed = 10;

    /// <summary>How lots compare, on the console: the answer, then the figures of each band.</summary>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> LotsText(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        LotComparison lots = result.Lots;
        List<string> lines = [$"{PlainText.Of(result.Title)}: {Count(lots.Lots.Length, "lot")}, {Count(result.Curves.Length, "specimen")}", Headline(result), .. LotsAnswer(lots)];
        foreach (LotBand band in lots.Bands)
        {
            lines.Add(string.Empty);
            lines.Add(LotBandHeading(band));
            lines.Add(ClearPart(band));
            lines.AddRange(TextTable.Of(LotColumns(lots.Question), band.Lots.Select(LotRow)));
            lines.AddRange(LotRemarks(lots, band).Select(remark => "  " + remark));
        }

        return lines;
    }

    /// <summary>One sentence and what belongs to it: do lots differ, which, where, and what plain means would say.</summary>
    internal static IEnumerable<string> LotsAnswer(LotComparison lots)
    {
        yield return LotsHeadline(lots, lots.Whole);
        // Where the floor hides which lot it is, a stretch says little beside one that tells.
        LotStretch[] told = [.. lots.Stretches.Where(s => s.Lot is not null)];
        foreach (LotStretch stretch in (told.Length > 0 ? told : [.. lots.Stretches]).Take(MostStretches))
        {
            yield return StandsOut(stretch);
        }

        if (lots.Stretches.Length > MostStretches)
        {
            yield return "They differ at more frequencies: lots-by-frequency.csv, column p_adjusted.";
        }

        if (HiddenByPlainMeans(lots) is { } hidden)
        {
            yield return hidden;
        }
    }

    internal static string LotBandHeading(LotBand band) => band.Name is { } name ? $"{PlainText.Of(name)}, {Band(band.Band)}" : $"Whole band, {Band(band.Band)}";

    internal static string ClearPart(LotBand band) => band.ClearShare switch
    {
        0 => "No part of this band is clear: at every measured frequency some specimen is known from below only, so no figure of the band can be had.",
        >= 1 - 1e-9 => "Every specimen is bounded from both sides at every measured frequency.",
        var share => $"Figures are of the {Percent(share)} of this band where every specimen is bounded from both sides.",
    };

    internal static string[] LotColumns(LotQuestion question) =>
        ["Lot", "Specimens", "Mean", $"{Level(question.Confidence)} interval of the mean", $"{Share(question)} of its pieces reach", "Plain mean of readings"];

    internal static IReadOnlyList<string> LotRow(LotSummary lot) =>
    [
        PlainText.Short(lot.Lot, LongestPiece), Plain(lot.Specimens), double.IsFinite(lot.MeanDb) ? Ratio(lot.MeanDb) : Nothing,
        lot.MeanIntervalDb is { } mean ? Interval(mean.Low, mean.High) : Nothing,
        lot.ToleranceLimitDb is { } limit ? Promise(limit) : Nothing, Ratio(lot.PlainMeanDb),
    ];

    internal static string LotsHeadline(LotComparison lots, LotBand band)
    {
        if (band.Probability is not { } p)
        {
            return lots.Lots.Length < 2 ? "One lot only: there is nothing to compare it with."
                : lots.Whole.Lots.All(l => l.Specimens < 2) ? "Whether the lots differ cannot be told: no lot has two specimens, so nothing shows how much pieces of one lot differ."
                : "Whether the lots differ cannot be told: too few specimens are bounded from both sides.";
        }

        return p > lots.Question.FalseAlarm
            ? $"No difference between the lots shows ({Chance(p)}). That does not prove them alike."
            : $"The lots differ ({Chance(p)}).{(lots.Stretches.IsEmpty && Farthest(band) is { } farthest ? " " + farthest : string.Empty)}";
    }

    /// <summary>What the figures of lots mean, for the page.</summary>
    internal static string LotsMean(LotQuestion question) =>
        $"Lots are compared by how their specimens scatter; the errors of reference and floor are those of all specimens and drop out. \"{Share(question)} of its pieces reach\" "
        + $"is a lower tolerance limit ({Level(question.Confidence)} confidence): of the pieces of a lot, measured or not, at least that share has this mean shielding, where pieces scatter normally. "
        + "Plain means of readings take noise and capped readings for shielding; they stand here to show what they hide. Frequency by frequency: lots-by-frequency.csv.";

    /// <summary>A p-value with two digits: "p = 0.031", "p &lt; 0.0001".</summary>
    internal static string Chance(double p) => p < 1e-4 ? "p < 0.0001" : $"p = {Plain(Math.Min(1, double.Parse(p.ToString("E1", System.Globalization.CultureInfo.InvariantCulture), System.Globalization.CultureInfo.InvariantCulture)))}";

    private static string Promise(double limit) => limit > 0 ? LowTenths(limit) + " dB" : "nothing";

    private static string StandsOut(LotStretch stretch)
    {
        string where = stretch.Band.Start == stretch.Band.Stop ? $"at {Frequency(stretch.Band.Start)}" : $"from {Band(stretch.Band)}";
        return stretch.Lot is { } lot
            ? $"Lot {PlainText.Of(lot)} shields {(stretch.AtLeast ? "at least " : string.Empty)}{Apart(stretch.ApartDb, stretch.AtLeast)} than the others {where}."
            : $"They differ {where}; the floor hides by how much.";
    }

    private static string Apart(double decibels, bool atLeast) =>
        $"{(atLeast ? LowTenths(Math.Abs(decibels)) : Tenths(Math.Abs(decibels), Math.Round))} dB {(decibels < 0 ? "less" : "more")}";

    private static string? Farthest(LotBand band)
    {
        if (band.ClearShare == 0 || band.Lots.Length < 2)
        {
            return null;
        }

        (LotSummary lot, double apart) = band.Lots.Select(l => (l, l.MeanDb - band.Lots.Where(o => o != l).Average(o => o.MeanDb))).MaxBy(l => Math.Abs(l.Item2));
        return $"Lot {PlainText.Of(lot.Lot)} lies farthest from the others: on average it shields {Apart(apart, false)}.";
    }

    private static string? HiddenByPlainMeans(LotComparison lots)
    {
        double[] plain = [.. lots.Whole.Lots.Select(l => l.PlainMeanDb)];
        LotStretch? strongest = lots.Stretches.FirstOrDefault(s => s.Lot is not null);
        return strongest is null || plain.Max() - plain.Min() >= Math.Abs(strongest.ApartDb) / 2 || lots.Lots.Length > MostPiecesNamed ? null
            : $"Plain means of all readings hide it: {string.Join(", ", lots.Whole.Lots.Select(l => $"{PlainText.Of(l.Lot)} {Ratio(l.PlainMeanDb)}"))}.";
    }
}
