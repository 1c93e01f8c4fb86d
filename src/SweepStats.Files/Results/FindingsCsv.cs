using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Files.Results;

/// <summary>findings.csv: one row for each stretch of frequencies that a finding concerns, or one for all.</summary>
public static class FindingsCsv
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "findings.csv";

    /// <summary>First line.</summary>
    public const string Header = "severity,code,role,lot,specimen,start_hz,stop_hz,size_db,message,next_step,basis";

    /// <summary>Writes the table. Cells for role, specimen and frequencies are empty where a finding concerns all.</summary>
    public static void Write(AnalysisResult result, Stream to)
    {
        ArgumentNullException.ThrowIfNull(result);
        using var rows = new CsvRows(to, Header);
        foreach (Finding finding in result.Findings)
        {
            IEnumerable<FrequencyBand?> stretches = finding.Where.IsDefaultOrEmpty ? [null]
                : finding.Where.Select(b => (FrequencyBand?)b);
            foreach (FrequencyBand? stretch in stretches)
            {
                Row(rows, finding, stretch);
            }
        }
    }

    /// <summary>How a role is written.</summary>
    internal static string RoleName(SweepRole role) => role.ToString().ToLowerInvariant();

    /// <summary>How a severity is written.</summary>
    internal static string SeverityName(Severity severity) => severity.ToString().ToLowerInvariant();

    // Other programs read numbers with the minus sign of the keyboard only.
    private static string Plain(string sentence) => sentence.Replace('−', '-');

    private static void Row(CsvRows rows, Finding finding, FrequencyBand? stretch)
    {
        rows.Cell(SeverityName(finding.Severity)).Text(finding.Code);
        rows.Cell(finding.Role is { } role ? RoleName(role) : "");
        rows.Text(finding.Specimen?.Lot ?? finding.Lot).Text(finding.Specimen?.Specimen);
        rows.Band(stretch).Level(finding.Size?.Value);
        rows.Text(Plain(finding.Message)).Text(Plain(finding.NextStep)).Text(Plain(finding.Basis)).End();
    }
}
