using SweepStats.Budgets;
using SweepStats.Doubts;
using SweepStats.Report.Pages;
using SweepStats.Report.Text;
using SweepStats.Statistics;

namespace SweepStats.Report.Budgets;

/// <summary>Where the uncertainty comes from: a table for each frequency of interest and for the mean over the band.</summary>
internal sealed class UncertaintyBudgetPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        AnalysisResult result = content.Result;
        html.Fold("uncertainty-budget", "Uncertainty budget");
        ImmutableArray<SpecimenBudgets> shown = ShownBudgets.OnPage(result);
        if (shown.IsEmpty)
        {
            html.Paragraph(BudgetWords.NoBudget).Close();
            return;
        }

        html.Paragraph(BudgetWords.BudgetMeans(result));
        html.Paragraph(BudgetWords.BudgetQuoted);
        html.Paragraph(BudgetWords.BudgetsShown(shown.Length, result.Budgets.Count(b => b.All.Any()), result.Budgets.Length));
        Dictionary<ShieldingBudget, string?> compared = Compared(shown, result.Plan);
        foreach (SpecimenBudgets specimen in shown)
        {
            html.Element("h3", PrintedNames.SpecimenLabel(specimen.Name));
            foreach (ShieldingBudget budget in specimen.All)
            {
                html.Table(BudgetWords.BudgetCaption(budget), BudgetWords.BudgetColumns, Rows(budget));
                html.Paragraph(BudgetAdviceWords.Dominates(budget));
                if (compared[budget] is { } words)
                {
                    html.Paragraph(words);
                }
            }
        }

        html.Close();
    }

    // Each has draws of its own from the same seed, so they may be drawn at the same time.
    private static Dictionary<ShieldingBudget, string?> Compared(ImmutableArray<SpecimenBudgets> shown, AnalysisPlan plan)
    {
        ShieldingBudget[] all = [.. shown.SelectMany(s => s.All)];
        string?[] words = SideBySide.Of(all.Length, plan.Threads, i => Compared(all[i], plan.Seed));
        var found = new Dictionary<ShieldingBudget, string?>(ReferenceEqualityComparer.Instance);
        for (int i = 0; i < all.Length; i++)
        {
            found.Add(all[i], words[i]);
        }

        return found;
    }

    private static string? Compared(ShieldingBudget budget, ulong seed) =>
        budget.Doubts != ReadingDoubts.None ? null : budget.At is null ? BudgetWords.MeanShift(budget)
            : BudgetWords.Compared(budget, budget.Propagate(seed));

    private static IEnumerable<IReadOnlyList<string>> Rows(ShieldingBudget budget)
    {
        foreach (UncertaintyLine line in budget.Lines)
        {
            yield return BudgetWords.BudgetRow(line, budget.ByPlacement);
        }

        if (budget.Linear is not null)
        {
            yield return BudgetWords.CombinedRow(budget);
            yield return BudgetWords.ExpandedRow(budget);
        }

        yield return BudgetWords.QuotedRow(budget);
    }
}
