namespace SweepStats.Report.Pages;

/// <summary>What is left of a stated field behind each specimen; nothing where none is stated.</summary>
internal sealed class FieldPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        if (content.Result.Plan.Field is not { } threat)
        {
            return;
        }

        html.Fold("field", Wording.FieldHeading).Paragraph(Wording.FieldCaution);
        html.Table(Wording.FieldCaption(content.Result, threat), Wording.FieldColumns, content.Result.Fields.Select(f => Wording.FieldRow(f, threat))).Close();
    }
}
