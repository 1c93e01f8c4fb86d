using SweepStats.Checks;

namespace SweepStats.Report;

/// <content>Findings on the console.</content>
public static partial class Wording
{
    /// <summary>The verdict and every finding, notes too; what several specimens share is said once, with a line for each.</summary>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> Check(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        List<string> lines = [PlainText.Of(result.Title), Headline(result), TrustReason(result)];
        foreach (var alike in result.Findings.GroupBy(f => (f.Severity, f.Code, f.NextStep)))
        {
            lines.Add(string.Empty);
            lines.Add($"{Weight(alike.Key.Severity)} ({PlainText.Of(alike.Key.Code)})");
            foreach (Finding finding in alike)
            {
                string piece = finding.Specimen is { } name ? Piece(name) + ": " : string.Empty;
                string where = finding.Where.IsDefaultOrEmpty ? string.Empty : $" [{Bands(finding.Where)}]";
                lines.Add($"  {piece}{PlainText.Of(finding.Message)}{where}");
            }

            lines.Add($"  Next: {PlainText.Of(alike.Key.NextStep)}");
        }

        return lines;
    }
}
