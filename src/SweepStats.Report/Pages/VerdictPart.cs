using SweepStats.Bands;

namespace SweepStats.Report.Pages;

/// <summary>Title, verdict in one sentence, and the claim for each specimen.</summary>
internal sealed class VerdictPart : IPagePart
{
    public void Write(HtmlWriter html, PageContent content)
    {
        AnalysisResult result = content.Result;
        html.Open("header").Element("p", Wording.Kind, ("class", "kind")).Element("h1", result.Title);
        html.Element("p", Wording.Scope(result), ("class", "scope")).Close();
        html.Section("verdict", "Verdict").Element("p", Wording.Headline(result), ("class", "headline"));
        html.Open("p").Text(Wording.TrustReason(result));
        if (Wording.OutcomeReason(result) is { } reason)
        {
            html.Text(" " + reason);
        }

        html.Close();
        if (result.Trend is { } trend)
        {
            html.Open("p").Text(string.Join(" ", Wording.TrendAnswer(result, trend)) + " ").Element("a", "More on the trend", ("href", "#trend")).Close();
        }

        if (result.Lots.Lots.Length > 1)
        {
            html.Open("p").Text(string.Join(" ", Wording.LotsAnswer(result)) + " ").Element("a", "More on lots", ("href", "#lots")).Close();
        }

        if (result.Choice?.Bands[0] is { } ranking)
        {
            html.Open("p").Text(string.Join(" ", Wording.ChoiceAnswer(result, ranking)) + " ").Element("a", "More on the choice", ("href", "#choice")).Close();
        }

        if (result.Floor is null)
        {
            html.Paragraph(Wording.NoFloorMeans);
        }

        html.Table(Wording.ClaimsCaption(result), Wording.ClaimsOf(result), result.Bands.Select(b => Row(b, result)));
        VerdictRule.Write(html, result);
        html.Close();
    }

    private static IReadOnlyList<string> Row(BandStatement band, AnalysisResult result) =>
    [
        Wording.SpecimenLabel(band.Name),
        band.AtLeast is { } claim ? "SE " + Wording.Bound(claim) : "no claim",
        band.AtLeast is not null && band.WeakestAt is { } at ? Wording.Frequency(at) : Wording.Nothing,
        Wording.Figure(band.MeanDb),
        Wording.CappedOf(band, result.Floor is not null),
        .. result.Verdict.Specimens.IsDefaultOrEmpty ? Array.Empty<string>() : [Wording.Stands(result, band.Name) ?? Wording.Nothing],
    ];
}
