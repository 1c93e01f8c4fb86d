using SweepStats.Verdicts;

namespace SweepStats.Report.Pages;

/// <summary>The rule of the verdict, what it was applied to, and what a verdict within limits is limited by.</summary>
internal static class VerdictRule
{
    public static void Write(HtmlWriter html, AnalysisResult result)
    {
        html.Element("h3", Wording.RuleHeading).Paragraph(Wording.TrustRule).List(Wording.Tally(result));
        if (Wording.DecisionRule(result) is { } rule)
        {
            html.Paragraph(rule);
            html.Table(Wording.FaceValue(result) + Wording.DecisionsCaption, Wording.DecisionColumns, Wording.Decisions(result));
        }

        if (Wording.SomeLeftOut(result.Campaign) is { } leftOut)
        {
            html.Paragraph(leftOut);
        }

        if (result.Verdict.Trust == Trust.Limited && Wording.Limits(result).ToList() is { Count: > 0 } limits)
        {
            html.Table(Wording.LimitsCaption, Wording.LimitColumns, limits);
        }
    }
}
