using SweepStats.Report.Pages;

namespace SweepStats.Report.Setup;

/// <summary>What is known of the noise floor.</summary>
internal sealed class FloorPart : IPagePart
{
    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        html.Fold("floor", "The noise floor");
        if (content.Result.Floor is { } floor)
        {
            html.Table("Figures of the floor", ["Figure", "Value", "Meaning"], SettingWords.FloorFigures(floor, content.Result));
            html.Paragraph(SettingWords.Ambient(floor, content.Result.Campaign.Grid));
        }
        else
        {
            html.Paragraph(PageWords.NoFloorMeans);
        }

        html.Close();
    }
}
