using SweepStats.Budgets;
using SweepStats.Doubts;
using SweepStats.Report.Drawing;
using SweepStats.Report.Specimens;
using SweepStats.Report.Text;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Budgets;

/// <summary>What rules an uncertainty budget, and whether more sweeps help.</summary>
internal static class BudgetAdviceWords
{
    // Below that the noise correction changes what sweeps show by less than a reader would act on.
    private const double MagnifiedFrom = 1.2;

    internal const string BudgetTitle = "Where the uncertainty comes from";
    internal const string RepeatsLegend = "what repeats show (A)";
    internal const string StatedLegend = "what is stated (B)";
    internal const string CombinedLegend = "combined standard uncertainty";
    internal const string SmallerSources = "smaller ones together";
    internal const string Combined = "combined";

    internal static string BudgetHeading(ShieldingBudget budget) =>
        $"{PlainText.Short(budget.Name.ToString(), Frame.LongestName)}, {BudgetWords.BudgetPlace(budget)}";

    internal static string BudgetSubtitle(int shown, int all) => shown == all
        ? "standard uncertainty that each source contributes; they add up as squares"
        : $"standard uncertainty that each source contributes; {Plain(shown)} of {Plain(all)} budgets, all are in budget.csv";

    internal static string BudgetChartDescription(IEnumerable<ShieldingBudget> budgets) =>
        string.Join(" ",
            budgets.Select(b => $"{SpecimenLabel(b.Name)}, {BudgetWords.BudgetPlace(b)}: "
                + $"{BudgetWords.Thousandths(b.Linear!.StandardUncertainty)} combined."));

    /// <summary>A contribution in a chart, to two decimals.</summary>
    internal static string Contribution(double decibels) =>
        decibels < 0.005 ? Small(decibels) : $"{BudgetWords.Hundredths(decibels, Math.Round)} dB";

    /// <summary>A source as the label of a bar: a long name is cut, the level that it acts on is not.</summary>
    internal static string SourceLabel(UncertaintyLine line, bool byPlacement)
    {
        string level = line.Entry is { TimesInDifference: 2 } ? line.Source[line.Entry.Name.Length..] : string.Empty;
        return PlainText.Short(line.Entry?.Name ?? BudgetWords.SourceName(line, byPlacement),
            Frame.LongestName - level.Length) + level;
    }

    /// <summary>What most of the uncertainty comes from, and what lessens it.</summary>
    internal static string Dominates(ShieldingBudget budget)
    {
        if (budget.Doubts != ReadingDoubts.None)
        {
            bool overload = BoundCauses.Of(budget.Doubts).Overload;
            return $"Here {BudgetWords.Doubted(budget.Doubts)}: only a bound is known at best, and a budget has nothing to add "
                + $"up. {Lessens(overload, budget.Doubts)}; more sweeps do not.";
        }

        if (budget.Linear is not { } linear)
        {
            return "A level does not rise over the floor here: only a bound is known, and a budget has nothing to add up. More "
                + "range helps; more sweeps hardly do.";
        }

        if (linear.StandardUncertainty == 0)
        {
            return "All repeats are alike and no error is stated: the budget is empty. Export more digits, and look for "
                + "copied sweeps.";
        }

        double stated = budget.Lines.Where(l => l.TypeB).Sum(l => l.Share ?? 0);
        UncertaintyLine most = budget.Lines.Where(l => l.TypeB == stated >= 0.5).MaxBy(l => l.Share ?? 0)!;
        return stated >= 0.5
            ? $"Most of the uncertainty ({Percent(stated)} of the variance) comes from what no repeat shows, above all "
                + $"{Smaller(most, budget)}"
            : $"Most of the uncertainty ({Percent(1 - stated)} of the variance) comes from what repeats show, above all "
                + $"{Helps(most, budget)}.{Magnified(budget)}";
    }

    private static string Smaller(UncertaintyLine most, ShieldingBudget budget) =>
        most.Part == BudgetPart.Leakage && budget.LeakageBehindPlate
        ? "a leakage that the noise of the plate sweeps may hide: more plate sweeps make that smaller; more of the others "
            + "hardly help."
        : $"{BudgetWords.SourceName(most, budget.ByPlacement)}: make that smaller; more sweeps hardly help.";

    private static string Lessens(bool overload, ReadingDoubts doubts) => overload ? "Less level at the receiver helps"
        : doubts.HasFlag(ReadingDoubts.CoveredAtBottom) ? "A lower bottom of the display helps"
        : "New floor sweeps, or more range, help";

    private static string Helps(UncertaintyLine line, ShieldingBudget budget) => line.Part switch
    {
        BudgetPart.Reference => "the reference: more reference sweeps help",
        BudgetPart.Covered when budget.ByPlacement =>
            "the placements of the specimen: more placements help, more sweeps of the same placement do not",
        BudgetPart.Covered => "the covered sweeps: more covered sweeps help",
        _ => "the floor: more floor sweeps help",
    };

    private static string Magnified(ShieldingBudget budget)
    {
        double slope = Math.Abs(budget.Lines.First(l => l.Part == BudgetPart.Covered).Sensitivity ?? 0);
        return budget.At is not null && slope >= MagnifiedFrom
            ? $" Near the floor the noise correction makes the covered error {Tenths(slope, Math.Round)} times as large: more "
                + "range helps too." : string.Empty;
    }
}
