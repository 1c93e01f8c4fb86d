using System.Globalization;
using SweepStats.Budgets;
using SweepStats.Doubts;
using SweepStats.Report.Setup;
using SweepStats.Report.Specimens;
using SweepStats.Report.Text;
using SweepStats.Statistics;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Budgets;

/// <summary>Uncertainty budgets: tables and what they mean.</summary>
internal static class BudgetWords
{
    internal const string NoBudget =
        "There is no uncertainty budget: it starts from the scatter of repeats, and reference or covered sweeps are single. "
            + "Repeat them, and run again.";

    internal static readonly string[] BudgetColumns =
        ["Source", "Kind", "Distribution", "Standard uncertainty", "Sensitivity", "Contribution", "Degrees of freedom",
            "Share of the variance"];

    internal const string BudgetQuoted =
        "The interval to quote is the last row of each table. The linear budget above it adds squares and is what an "
        + "uncertainty statement lists; the quoted interval also follows the bend of "
        + "the noise correction and the true shape of stated errors, so it may be wider or lopsided. It is the one whose "
        + "coverage was measured in rehearsed campaigns.";

    internal static string BudgetMeans(AnalysisResult result)
    {
        string where = !result.Plan.BudgetFrequencies.IsEmpty ? Nearest(result)
            : result.Plan.Requirement is null ? "at the frequency where its claim is weakest"
            : "at the frequency where least is left over the requirement";
        string stated = result.Plan.Uncertainties.IsEmpty
            ? " No errors are stated in campaign.toml ([[uncertainty]]), so no budget holds any." : string.Empty;
        return $"Where the uncertainty of each specimen comes from, {where}, and for its mean over the band. Kind A is what "
            + "repeats show, kind B what they do not: stated errors, drift, leakage. "
            + "Contribution is sensitivity times standard uncertainty; contributions add up as squares. “Cancels” means the "
            + "same error in reference and covered." + stated;
    }

    // A frequency that was not measured is not passed off as one that was.
    private static string Nearest(AnalysisResult result)
    {
        string[] moved =
        [
            .. from asked in result.Plan.BudgetFrequencies
               let taken = result.Campaign.Grid[result.Campaign.Grid.NearestPoint(asked)]
               where taken != asked
               select $"{Frequency(taken)} for {Frequency(asked)}",
        ];
        return "at the frequencies named in campaign.toml"
            + (moved.Length == 0 ? string.Empty : $", or the nearest measured ({string.Join(", ", moved)})");
    }

    internal static string BudgetsShown(int shown, int known, int all)
    {
        string single = known == all ? string.Empty
            : $" {Count(all - known, "specimen")} without an interval {(all - known == 1 ? "has" : "have")} no budget.";
        return (shown == known
            ? "All lines are in budget.csv too."
            : $"Shown here: {(shown == 1 ? "the weakest specimen" : $"the {Plain(shown)} weakest specimens")} of "
                + $"{Plain(known)}, by their lower ends. All are in budget.csv.") + single;
    }

    /// <summary>Place of a budget: "433.9 MHz", or "mean over the band".</summary>
    internal static string BudgetPlace(ShieldingBudget budget) => budget.At is { } at ? Frequency(at) : "mean over the band";

    internal static string BudgetCaption(ShieldingBudget budget)
    {
        string estimate = budget.Doubts != ReadingDoubts.None ? $"no estimate, {Doubted(budget.Doubts)}"
            : budget.Linear is null ? "no estimate, a level does not rise over the floor"
            : budget.At is null && double.IsInfinity(budget.Reported.High)
            ? $"{Hundredths(budget.Linear.Estimate, Math.Floor)} dB with bounds standing in, reported as a bound"
            : double.IsInfinity(budget.Reported.High)
            ? $"estimate {Hundredths(budget.Linear.Estimate, Math.Round)} dB, reported as a bound"
            : $"{Hundredths(budget.Linear.Estimate, Math.Round)} dB";
        return $"{SpecimenLabel(budget.Name)}, {BudgetPlace(budget)}: {estimate}";
    }

    internal static IReadOnlyList<string> BudgetRow(UncertaintyLine line, bool byPlacement) =>
    [
        SourceName(line, byPlacement),
        line.TypeB ? "B" : "A",
        line.Entry is { } entry ? $"{SettingWords.Spread(entry)}, ±{Exact(Math.Round(entry.HalfWidthDb, 3), "dB")}"
            : line.Part == BudgetPart.Leakage ? "arcsine, any phase" : "Student’s t",
        Thousandths(line.StandardUncertaintyDb),
        line.Cancels ? "0, cancels"
            : line.Sensitivity is { } slope ? Sign(slope.ToString("F2", CultureInfo.InvariantCulture)) : Nothing,
        line.ContributionDb is { } part ? Thousandths(part) : Nothing,
        Freedom(line.DegreesOfFreedom),
        line.Share is { } share ? Percent(share) : Nothing,
    ];

    internal static IReadOnlyList<string> CombinedRow(ShieldingBudget budget) =>
        ["Combined", Nothing, Nothing, Thousandths(budget.Linear!.StandardUncertainty), Nothing,
            Thousandths(budget.Linear.StandardUncertainty), Freedom(budget.Linear.DegreesOfFreedom),
            budget.Linear.StandardUncertainty > 0 ? Percent(1) : Nothing];

    internal static IReadOnlyList<string> ExpandedRow(ShieldingBudget budget)
    {
        string factor = budget.Linear!.CoverageFactor(budget.Confidence).ToString("F2", CultureInfo.InvariantCulture);
        return [$"Expanded, {Level(budget.Confidence)}", Nothing, $"k = {factor}", Nothing, Nothing,
            Thousandths(budget.ExpandedUncertaintyDb!.Value), Nothing, Nothing];
    }

    /// <summary>What stands against a reading, in half a sentence.</summary>
    internal static string Doubted(ReadingDoubts doubts) =>
        BoundCauses.Of(doubts).Overload ? "the receiver was overloaded"
            : doubts.HasFlag(ReadingDoubts.CoveredAtBottom) ? "the covered level is at the bottom of what the receiver shows"
            : "the covered level may be noise";

    /// <summary>What the report claims, beside the linear budget.</summary>
    internal static IReadOnlyList<string> QuotedRow(ShieldingBudget budget) =>
        [$"To quote, {Level(budget.Confidence)}", Nothing, Ends(budget.Reported), Nothing, Nothing, Half(budget.Reported),
            Nothing, Nothing];

    private static string Half(Interval interval) =>
        double.IsFinite(interval.Width) ? $"± {Thousandths(interval.Width / 2)}" : Nothing;

    internal static string SourceName(UncertaintyLine line, bool byPlacement) => line.Part switch
    {
        BudgetPart.Reference => "Reference repeats",
        BudgetPart.Covered => byPlacement ? "Covered placements" : "Covered sweeps",
        BudgetPart.Floor => "Floor",
        BudgetPart.Leakage => "Leakage",
        _ => PlainText.Of(line.Source),
    };

    /// <summary>What is added to the mean's interval as it is; null where nothing is.</summary>
    internal static string? MeanShift(ShieldingBudget budget) => budget.AveragingShiftDb > 0
        ? "What no repeat shows (how the receiver averages, where the floor lies, leakage) moves the mean by up to "
            + $"{Thousandths(budget.AveragingShiftDb)} either way, which is added to the interval as it is." : null;

    /// <summary>The three intervals side by side, and whether the linear budget holds.</summary>
    internal static string Compared(ShieldingBudget budget, BudgetComparison compared)
    {
        string linear = compared.Linear is { } own ? $"Linear budget: {Ends(own)}. " : string.Empty;
        string trials =
            compared.Propagated.Trials.ToString("N0", CultureInfo.InvariantCulture).Replace(",", " ", StringComparison.Ordinal);
        string several = budget.LargestOfSeveral
            ? " Several ways of averaging, or places of the floor, are possible: the budget is for the one with the largest "
                + "uncertainty, the interval to quote holds for all." : string.Empty;
        return $"{linear}Whole distributions, {trials} random trials (JCGM 101): {Ends(compared.Propagated.Symmetric)}. "
            + $"{Validity(compared)}{several}";
    }

    /// <summary>An interval to the nearest hundredths outwards; an open end is named.</summary>
    internal static string Ends(Interval interval) => (double.IsFinite(interval.Low), double.IsFinite(interval.High)) switch
    {
        (true, true) => $"{Hundredths(interval.Low, Math.Floor)} to {Hundredths(interval.High, Math.Ceiling)} dB",
        (true, false) => $"{Hundredths(interval.Low, Math.Floor)} dB or more, open above",
        _ => "open on both sides",
    };

    /// <summary>A small figure in dB to three decimals.</summary>
    internal static string Thousandths(double decibels) => decibels.ToString("F3", CultureInfo.InvariantCulture) + " dB";

    private static string Validity(BudgetComparison compared) => compared.Validity switch
    {
        BudgetValidity.Holds =>
            $"The linear budget holds: both ends agree to {Exact(compared.ToleranceDb, "dB")} (JCGM 101, clause 8).",
        BudgetValidity.Open when compared.Propagated.OpenShare > 0 =>
            $"{NotLinear} In {Percent(compared.Propagated.OpenShare)} of the trials the covered level does not rise over the "
                + "floor, so the upper end is open.",
        BudgetValidity.Open => $"{NotLinear} In too many trials the reference does not rise over the floor.",
        BudgetValidity.Bent => $"{NotLinear} Near the floor the noise correction bends, and the interval is lopsided; the "
            + "interval to quote follows the bend.",
        _ => $"The two differ by more than {Exact(compared.ToleranceDb, "dB")}, as they do with few repeats or where a stated "
            + "error rules that is not normal; both are even on either side.",
    };

    private const string NotLinear = "The linear budget is not valid here.";

    private static string Freedom(double degrees) => degrees switch
    {
        < 100 => Sign(degrees.ToString("F1", CultureInfo.InvariantCulture)),
        < 1000 => Plain(Math.Round(degrees)),
        < double.PositiveInfinity => "over 1000",
        _ => "taken as known",
    };

    internal static string Hundredths(double value, Func<double, double> round)
    {
        double scaled = value * 100;
        double nearest = Math.Round(scaled);
        double rounded = Math.Abs(scaled - nearest) < 1e-6 ? nearest : round(scaled);
        return Sign((rounded / 100).ToString("F2", CultureInfo.InvariantCulture));
    }
}
