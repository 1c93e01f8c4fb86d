using SweepStats.Report.Pages;
using SweepStats.Report.Setup;
using SweepStats.Verdicts;

namespace SweepStats.Report.Answer;

/// <summary>The rule of the verdict, what it was applied to, and what a verdict within limits is limited by.</summary>
internal static class VerdictRule
{
    /// <summary>Writes it: the rule of trust always, decisions, sweeps left out and limits where there are any.</summary>
    public static void Write(HtmlWriter html, AnalysisResult result)
    {
        html.Element("h3", RuleWords.RuleHeading).Paragraph(RuleWords.TrustRule).List(RuleWords.Tally(result));
        if (DecisionWords.DecisionRule(result) is { } rule)
        {
            html.Paragraph(rule);
            html.Table(VerdictWords.FaceValue(result) + DecisionWords.DecisionsCaption, DecisionWords.DecisionColumns,
                DecisionWords.Decisions(result));
        }

        if (SweepWords.SomeLeftOut(result.Campaign) is { } leftOut)
        {
            html.Paragraph(leftOut);
        }

        if (result.Verdict.Trust == Trust.Limited && RuleWords.Limits(result).ToList() is { Count: > 0 } limits)
        {
            html.Table(RuleWords.LimitsCaption, RuleWords.LimitColumns, limits);
        }
    }
}
