using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;

namespace SweepStats.Report;

/// <content>The console summary and findings.</content>
public static partial class Wording
{
    private const int MostBandsNamed = 4;

    /// <summary>The result on the console: verdict, one claim a specimen, findings that limit or forbid a claim with what to do next.</summary>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> Summary(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        List<string> lines = [PlainText.Of(result.Title), Headline(result), TrustReason(result)];
        if (OutcomeReason(result) is { } reason)
        {
            lines.Add(reason);
        }

        int widest = Math.Min(30, result.Bands.Max(b => Piece(b.Name).Length));
        foreach (BandStatement band in result.Bands)
        {
            string capped = band.CappedCount > 0 ? ". " + Capped(band.CappedCount, band.PointCount).TrimEnd('.') : string.Empty;
            lines.Add($"  {Piece(band.Name).PadRight(widest)}  {Claim(band)}{capped}");
        }

        foreach (Finding finding in result.Findings.Where(f => f.Severity != Severity.Note))
        {
            lines.Add($"{Weight(finding.Severity)} ({PlainText.Of(finding.Code)}): {PlainText.Of(finding.Message)}");
            lines.Add($"  Next: {PlainText.Of(finding.NextStep)}");
        }

        return lines;
    }

    /// <summary>How much a finding weighs, in a word.</summary>
    public static string Weight(Severity severity) => severity switch
    {
        Severity.Fault => "Fault",
        Severity.Warning => "Warning",
        _ => "Note",
    };

    /// <summary>What a finding concerns: specimen, role, frequencies, size; empty where it concerns everything.</summary>
    public static string Concerns(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        List<string> parts = [];
        if (finding.Specimen is { } specimen)
        {
            parts.Add(Piece(specimen));
        }

        if (finding.Role is { } role)
        {
            parts.Add(role.ToString().ToLowerInvariant() + " sweeps");
        }

        if (!finding.Where.IsDefaultOrEmpty)
        {
            parts.Add(Bands(finding.Where));
        }

        if (finding.Size is { } size)
        {
            parts.Add(Ratio(size.Value));
        }

        return string.Join("; ", parts);
    }

    private static string Bands(ImmutableArray<FrequencyBand> bands)
    {
        string named = string.Join(", ", bands.Take(MostBandsNamed).Select(Band));
        return bands.Length > MostBandsNamed ? $"{named} and {Plain(bands.Length - MostBandsNamed)} more" : named;
    }
}
