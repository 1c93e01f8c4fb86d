using SweepStats.Report.Pages;
using SweepStats.Report.Text;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

namespace SweepStats.Report.Setup;

/// <summary>The measurement set-up and every choice behind the figures.</summary>
internal sealed class SetupPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        AnalysisResult result = content.Result;
        html.Fold("setup", "Set-up and choices");
        html.Table("Choices of this analysis", ["Choice", "Set to", "Why, or what it does"], SettingWords.Choices(result));
        html.Table("Receiver settings by role", PageWords.SettingColumns, Settings(result));
        if (!result.Plan.Uncertainties.IsDefaultOrEmpty)
        {
            html.Table("Uncertainties that repeats do not show, as stated", PageWords.UncertaintyColumns,
                result.Plan.Uncertainties.Select(Row));
        }

        if (!content.Options.Assumptions.IsDefaultOrEmpty)
        {
            html.Element("h3", "Assumed while reading the files").List(content.Options.Assumptions);
        }

        html.Close();
    }

    private static IEnumerable<IReadOnlyList<string>> Settings(AnalysisResult result)
    {
        if (result.Campaign.Floor is { } floor)
        {
            yield return ["Floor", .. SettingWords.Settings(floor.Sweeps, result.Plan.Setup)];
        }

        yield return ["Reference", .. SettingWords.Settings(result.Campaign.Reference.Sweeps, result.Plan.Setup)];
        IEnumerable<Sweep> covered = result.Campaign.Covered.SelectMany(c => c.Block.Sweeps);
        yield return ["Covered", .. SettingWords.Settings(covered, result.Plan.Setup)];
    }

    private static IReadOnlyList<string> Row(UncertaintyEntry entry) =>
    [
        entry.Name, "± " + Printed.Exact(Math.Round(entry.HalfWidthDb, 3), "dB"), SettingWords.Spread(entry),
        Printed.Exact(Math.Round(entry.StandardUncertaintyDb, 3), "dB"), SettingWords.ActsOn(entry),
    ];
}
