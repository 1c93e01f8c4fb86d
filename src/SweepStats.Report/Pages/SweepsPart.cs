using SweepStats.Alignment;

namespace SweepStats.Report.Pages;

/// <summary>Which sweeps the figures rest on, and every one that is not among them.</summary>
internal sealed class SweepsPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        AlignedCampaign campaign = content.Result.Campaign;
        html.Fold("sweeps", Wording.SweepsHeading);
        html.Table("Sweeps behind the figures", ["Role", "Sweeps", "Names"], Wording.UsedSweeps(campaign));
        List<IReadOnlyList<string>> unused = [.. Wording.UnusedSweeps(content.Result)];
        List<IReadOnlyList<string>> beside = [.. Wording.SweepsBeside(content.Result)];
        if (beside.Count > 0)
        {
            html.Table("Sweeps beside the shielding", Wording.BesideColumns, beside);
        }

        if (unused.Count > 0)
        {
            html.Table("Sweeps that do not count", Wording.UnusedColumns, unused);
        }
        else
        {
            html.Paragraph("Every sweep that was read counts.");
        }

        if (!campaign.GridDifferences.IsDefaultOrEmpty)
        {
            html.Table("Sweeps on other frequencies", ["Sweep", "Points left out"], Wording.OtherFrequencies(campaign));
        }

        if (!content.Options.LeftOut.IsDefaultOrEmpty)
        {
            html.Element("h3", "Could not be read and was left out").List(content.Options.LeftOut);
        }

        html.Close();
    }
}
