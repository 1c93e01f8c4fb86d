using SweepStats.Budgets;

namespace SweepStats.Report.Budgets;

/// <summary>
/// Specimens whose uncertainty budgets are shown: the weakest, in the order of the report. All are in budget.csv.
/// </summary>
internal static class ShownBudgets
{
    private const int MostSpecimens = 5;
    private const int MostOnPage = 2;
    private const int MostTables = 30;

    /// <summary>The specimens; none where repeats are missing everywhere.</summary>
    public static ImmutableArray<SpecimenBudgets> Of(AnalysisResult result) => Of(result, MostSpecimens);

    /// <summary>Those whose tables are on the page.</summary>
    public static ImmutableArray<SpecimenBudgets> OnPage(AnalysisResult result) => Of(result, MostOnPage);

    private static ImmutableArray<SpecimenBudgets> Of(AnalysisResult result, int specimens)
    {
        SpecimenBudgets[] known = [.. result.Budgets.Where(b => b.All.Any())];
        if (known.Length == 0)
        {
            return [];
        }

        int most = Math.Clamp(MostTables / known.Max(b => b.All.Count()), 1, specimens);
        HashSet<SpecimenBudgets> weakest = [.. known.OrderBy(b => b.All.Min(one => Room(one, result))).Take(most)];
        return [.. known.Where(weakest.Contains)];
    }

    /// <summary>
    /// How far the reported lower end lies over what is asked for there, or over nothing, in dB. Of two frequencies the one with
    /// less is weaker.
    /// </summary>
    public static double Room(ShieldingBudget budget, AnalysisResult result) =>
        budget.Reported.Low - (budget.At is { } at ? result.Plan.Requirement?.At(at)?.Value ?? 0 : 0);
}
