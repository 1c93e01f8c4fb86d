using SweepStats.Alignment;
using SweepStats.Report.Pages;

namespace SweepStats.Report.Setup;

/// <summary>Which sweeps the figures rest on, and every one that is not among them.</summary>
internal sealed class SweepsPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        AlignedCampaign campaign = content.Result.Campaign;
        html.Fold("sweeps", SweepWords.SweepsHeading);
        html.Table("Sweeps behind the figures", ["Role", "Sweeps", "Names"], SweepWords.UsedSweeps(campaign));
        List<IReadOnlyList<string>> unused = [.. SweepWords.UnusedSweeps(content.Result)];
        List<IReadOnlyList<string>> beside = [.. SweepWords.SweepsBeside(content.Result)];
        if (beside.Count > 0)
        {
            html.Table("Sweeps beside the shielding", SweepWords.BesideColumns, beside);
        }

        if (unused.Count > 0)
        {
            html.Table("Sweeps that do not count", SweepWords.UnusedColumns, unused);
        }
        else
        {
            html.Paragraph("Every sweep that was read counts.");
        }

        if (!campaign.GridDifferences.IsDefaultOrEmpty)
        {
            html.Table("Sweeps on other frequencies", ["Sweep", "Points left out"], SweepWords.OtherFrequencies(campaign));
        }

        if (!content.Options.LeftOut.IsDefaultOrEmpty)
        {
            html.Element("h3", "Could not be read and was left out").List(content.Options.LeftOut);
        }

        html.Close();
    }
}
