using SweepStats.Report.Answer;
using SweepStats.Report.Budgets;
using SweepStats.Report.Choice;
using SweepStats.Report.Fields;
using SweepStats.Report.Findings;
using SweepStats.Report.Lots;
using SweepStats.Report.Pages;
using SweepStats.Report.Setup;
using SweepStats.Report.Specimens;
using SweepStats.Report.Trends;

namespace SweepStats.Report.Sheets;

/// <summary>What stands behind the two sheets: contents, then one folded section a subject, as far as it applies.</summary>
internal sealed class Annex : IPagePart
{
    // In the order in which a reader asks.
    private static readonly IPagePart[] Parts =
    [
        new VerdictPart(), new NextStepsPart(), new FieldPart(), new SpecimensPart(), new TrendPart(), new LotsPart(),
        new ChoicePart(), new UncertaintyBudgetPart(), new ChecksPart(), new ChartsPart(), new NotesPart(), new SetupPart(),
        new FloorPart(), new SweepsPart(), new ReadingGuidePart(), new CautionsPart(), new SourcesPart(), new GlossaryPart(),
    ];

    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        var parts = new HtmlWriter();
        foreach (IPagePart part in Parts)
        {
            part.Write(parts, content);
        }

        html.Open("article", new Attr("class", "annex"), new Attr("aria-labelledby", "annex"));
        html.Element("h2", SheetWords.AnnexHeading, new Attr("id", "annex"));
        html.Paragraph(SheetWords.AnnexMeans).Open("ul", new Attr("class", "contents"));
        foreach (FoldedSection section in parts.Folded)
        {
            html.Open("li").Element("a", section.Heading, new Attr("href", "#" + section.Id)).Close();
        }

        html.Close().Drawing(parts.ToArray()).Close();
    }
}
