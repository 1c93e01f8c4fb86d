using SweepStats.Report.Lots;
using SweepStats.Report.Pages;
using SweepStats.Report.Specimens;

namespace SweepStats.Report.Fields;

/// <summary>What is left of a stated field and of a pulse behind each specimen; nothing where neither is stated.</summary>
internal sealed class FieldPart : IPagePart
{
    private const int MostRows = 42;

    /// <inheritdoc/>
    public void Write(HtmlWriter html, PageContent content)
    {
        if (!PulseWords.AsksForField(content.Result))
        {
            Layers(html, content.Result);
            return;
        }

        html.Fold("field", FieldWords.FieldHeading);
        if (content.Result.Plan.Field is { } threat)
        {
            html.Paragraph(FieldWords.FieldCaution);
            Table(html, FieldWords.FieldCaption(content.Result, threat), FieldWords.FieldColumns,
                [.. content.Result.Fields.Select(f => FieldWords.FieldRow(f, threat))]);
        }

        html.Element("h3", PulseWords.PulseHeading).Paragraph(PulseWords.PulseInFront(content.Result))
            .Paragraph(PulseWords.PulseCaution);
        Table(html, PulseWords.PulseColumnsCaption, PulseWords.PulseColumns, [.. PulseWords.PulseRows(content.Result)]);
        html.List([PulseWords.OutsideTaken(content.Result.Plan.Pulse.Outside), .. PulseWords.PulseRemarks(content.Result)])
            .Close();
        Layers(html, content.Result);
    }

    private static void Table(HtmlWriter html, string caption, IReadOnlyList<string> columns,
        IReadOnlyList<IReadOnlyList<string>> rows)
    {
        html.Table(caption, columns, rows.Take(MostRows));
        if (rows.Count > MostRows)
        {
            html.Paragraph(SpecimenWords.RestInFile(rows.Count - MostRows, "field.csv"));
        }
    }

    private static void Layers(HtmlWriter html, AnalysisResult result)
    {
        if (!result.Layers.IsEmpty)
        {
            html.Fold("layers", LayerWords.LayersHeading).List([.. LayerWords.LayersText(result)]).Close();
        }
    }
}
