namespace SweepStats.Report.Pages;

/// <summary>What is left of a stated field and of a pulse behind each specimen; nothing where neither is stated.</summary>
internal sealed class FieldPart : IPagePart
{
    private const int MostRows = 42;

    public void Write(HtmlWriter html, PageContent content)
    {
        if (!Wording.AsksForField(content.Result))
        {
            Layers(html, content.Result);
            return;
        }

        html.Fold("field", Wording.FieldHeading);
        if (content.Result.Plan.Field is { } threat)
        {
            html.Paragraph(Wording.FieldCaution);
            Table(html, Wording.FieldCaption(content.Result, threat), Wording.FieldColumns, [.. content.Result.Fields.Select(f => Wording.FieldRow(f, threat))]);
        }

        html.Element("h3", Wording.PulseHeading).Paragraph(Wording.PulseInFront(content.Result)).Paragraph(Wording.PulseCaution);
        Table(html, Wording.PulseColumnsCaption, Wording.PulseColumns, [.. Wording.PulseRows(content.Result)]);
        html.List([Wording.OutsideTaken(content.Result.Plan.Pulse.Outside), .. Wording.PulseRemarks(content.Result)]).Close();
        Layers(html, content.Result);
    }

    private static void Table(HtmlWriter html, string caption, IReadOnlyList<string> columns, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        html.Table(caption, columns, rows.Take(MostRows));
        if (rows.Count > MostRows)
        {
            html.Paragraph(Wording.RestInFile(rows.Count - MostRows, "field.csv"));
        }
    }

    private static void Layers(HtmlWriter html, AnalysisResult result)
    {
        if (!result.Layers.IsEmpty)
        {
            html.Fold("layers", Wording.LayersHeading).List([.. Wording.LayersText(result)]).Close();
        }
    }
}
