namespace SweepStats.Report.Pages;

/// <summary>What is known of the noise floor.</summary>
internal sealed class FloorPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        html.Fold("floor", "The noise floor");
        if (content.Result.Floor is { } floor)
        {
            html.Table("Figures of the floor", ["Figure", "Value", "Meaning"], Wording.FloorFigures(floor, content.Result));
            html.Paragraph(Wording.Ambient(floor, content.Result.Campaign.Grid));
        }
        else
        {
            html.Paragraph(Wording.NoFloorMeans);
        }

        html.Close();
    }
}
