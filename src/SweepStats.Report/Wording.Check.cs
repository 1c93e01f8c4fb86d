using SweepStats.Checks;

namespace SweepStats.Report;

/// <content>Findings on the console.</content>
public static partial class Wording
{
    /// <summary>The verdict and every finding, notes too, each with what it concerns and what to do next.</summary>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> Check(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        List<string> lines = [PlainText.Of(result.Title), Headline(result), TrustReason(result)];
        foreach (Finding finding in result.Findings)
        {
            string concerns = Concerns(finding);
            lines.Add($"{Weight(finding.Severity)} ({PlainText.Of(finding.Code)}): {PlainText.Of(finding.Message)}");
            if (concerns.Length > 0)
            {
                lines.Add($"  Where: {concerns}");
            }

            lines.Add($"  Next: {PlainText.Of(finding.NextStep)}");
        }

        return lines;
    }
}
