using SweepStats.Budgets;

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
                rows.Text(budget.Name.Lot).Text(budget.Name.Specimen)
                    .Cell(budget.At is { } at ? ResultNumber.Exact(at.Value) : "");
                rows.Text(line.Source).Cell(line.TypeB ? "B" : "A").Cell(Distribution(line));
                rows.Cell(ResultNumber.Level(line.StandardUncertaintyDb)).Cell(ResultNumber.Level(line.Sensitivity))
                    .Cell(ResultNumber.Level(line.ContributionDb));
                rows.Cell(ResultNumber.DegreesOfFreedom(line.DegreesOfFreedom)).Cell(ResultNumber.Level(line.Share)).Cell("");
                rows.End();
            }

            if (budget.Linear is { } combined)
            {
                rows.Text(budget.Name.Lot).Text(budget.Name.Specimen)
                    .Cell(budget.At is { } place ? ResultNumber.Exact(place.Value) : "");
                rows.Text(Combined).Cell("").Cell("").Cell(ResultNumber.Level(combined.StandardUncertainty)).Cell("")
                    .Cell(ResultNumber.Level(combined.StandardUncertainty));
                rows.Cell(ResultNumber.DegreesOfFreedom(combined.DegreesOfFreedom)).Cell("")
                    .Cell(budget.ByUsualScatter ? "usual-scatter" : "rows");
                rows.End();
            }
        }
    }

    private static string Distribution(UncertaintyLine line) => line.Part == BudgetPart.Leakage ? "arcsine"
        : line.Entry?.Distribution.ToString().ToLowerInvariant() ?? "student";
}
