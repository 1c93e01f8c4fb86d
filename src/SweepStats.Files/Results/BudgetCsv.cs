using SweepStats.Budgets;
using SweepStats.Uncertainty;

namespace SweepStats.Files.Results;

/// <summary>
/// budget.csv: one row for each source of uncertainty, at the frequencies of interest and of the mean over the band.
/// </summary>
public static class BudgetCsv
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "budget.csv";

    /// <summary>
    /// First line. Frequency is empty for the mean over the band; kind is A for what repeats show and B for what is stated;
    /// sensitivity, contribution and share are empty where the covered level does not rise over the floor. The last row of each
    /// budget, of no kind, is what its sources come to together. There <c>dof_by</c> says where its degrees of freedom come from:
    /// <c>rows</c> by Welch–Satterthwaite (JCGM 100 G.4.1), or <c>usual-scatter</c>, fewer than those, where the repeats of this
    /// frequency happen to agree better than is usual around it.
    /// </summary>
    public const string Header =
        "lot,specimen,frequency_hz,source,kind,distribution,standard_uncertainty_db,sensitivity,contribution_db,dof,share,dof_by";

    private const string Combined = "combined";

    /// <summary>Writes the table.</summary>
    public static void Write(AnalysisResult result, Stream to)
    {
        ArgumentNullException.ThrowIfNull(result);
        using var rows = new CsvRows(to, Header);
        foreach (ShieldingBudget budget in result.Budgets.SelectMany(specimen => specimen.All))
        {
            foreach (UncertaintyLine line in budget.Lines)
            {
                Line(Start(rows, budget), line).End();
            }

            if (budget.Linear is { } combined)
            {
                Together(Start(rows, budget), combined).Cell(budget.ByUsualScatter ? "usual-scatter" : "rows").End();
            }
        }
    }

    private static CsvRows Start(CsvRows rows, ShieldingBudget budget) =>
        rows.Text(budget.Name.Lot).Text(budget.Name.Specimen).Exact(budget.At?.Value);

    private static CsvRows Line(CsvRows rows, UncertaintyLine line) =>
        rows.Text(line.Source).Cell(line.TypeB ? "B" : "A").Cell(Distribution(line))
            .Level(line.StandardUncertaintyDb).Level(line.Sensitivity).Level(line.ContributionDb)
            .DegreesOfFreedom(line.DegreesOfFreedom).Level(line.Share).Cell("");

    private static CsvRows Together(CsvRows rows, LinearBudget combined) =>
        rows.Text(Combined).Empty(2).Level(combined.StandardUncertainty).Cell("").Level(combined.StandardUncertainty)
            .DegreesOfFreedom(combined.DegreesOfFreedom).Cell("");

    private static string Distribution(UncertaintyLine line) => line.Part == BudgetPart.Leakage ? "arcsine"
        : line.Entry?.Distribution.ToString().ToLowerInvariant() ?? "student";
}
