using System.Globalization;
using System.Text;
using SweepStats.Files.Campaigns;

namespace SweepStats.Files.Proposals;

/// <summary>sweeps.csv as it is proposed: above each row, as a remark, the reasons of its cells. Immutable.</summary>
public sealed class ProposedManifest
{
    /// <summary>Begins the remark above a row that a person has to fill in.</summary>
    public const string FillIn = "FILL IN";

    private const string NotRead = "NOT READ";

    private readonly StringBuilder _text = new();
    private readonly Dictionary<ProposedSweep, int> _lines = new(ReferenceEqualityComparer.Instance);
    private int _line = 1;

    /// <summary>Writes the proposal.</summary>
    /// <param name="proposal">The proposal.</param>
    public ProposedManifest(FolderProposal proposal)
    {
        ArgumentNullException.ThrowIfNull(proposal);
        Line(string.Join(',', ManifestColumns.Known));
        Line("# Guessed by sweepstats init from names and levels. Lines that start with '#' are remarks; above each row stand "
            + "its reasons.");
        Line($"# Where it says {FillIn} a cell of the row below is empty because names do not settle it. Correct whatever is wrong.");
        foreach (ProposedSweep row in proposal.Rows)
        {
            Write(row);
        }
    }

    /// <summary>The text of the file.</summary>
    public string Text => _text.ToString();

    /// <summary>The line from 1 of a row.</summary>
    /// <param name="row">A row of the proposal.</param>
    public int LineOf(ProposedSweep row) => _lines[row];

    private void Write(ProposedSweep row)
    {
        bool isRead = row.Faults.IsEmpty;
        foreach (ReadFault fault in row.Faults)
        {
            Line("# " + OneLine($"{NotRead} {fault}. Then take the '#' before its row away."));
        }

        string[] open = [.. row.ToFillIn.Select(f => $"{FillIn} {f}")];
        Line("# " + OneLine(string.Join("; ", [.. open, .. row.Reasons])));
        _lines[row] = _line;
        Line((isRead ? "" : "# ") + OneLine(Cells(row)));
    }

    private static string Cells(ProposedSweep row) => string.Join(',', new[]
    {
        Quoted(ManifestName.Cell(row.File)), row.Role?.Name() ?? "", Safe(row.Lot), Safe(row.Specimen), Safe(row.Placement),
        Quoted(row.Column ?? ""), row.TakenAt is { } at
            ? at.ToString(at.Offset == TimeSpan.Zero ? "yyyy-MM-ddTHH:mm:ss.FFFFFFF" : "yyyy-MM-ddTHH:mm:ss.FFFFFFFK",
                CultureInfo.InvariantCulture) : "",
        "", "",
    });

    // A spreadsheet takes such a cell for a formula.
    private static string Safe(string? text) =>
        Quoted(text is { Length: > 0 } && "=+-@".Contains(text[0]) ? "'" + text : text ?? "");

    private static string Quoted(string text) =>
        text.AsSpan().IndexOfAny(",;\"#") >= 0 ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;

    private static string OneLine(string text) =>
        string.Concat(text.Select(c => char.IsControl(c) || c is '\u2028' or '\u2029' ? ' ' : c));

    private void Line(string text)
    {
        _text.Append(text).Append('\n');
        _line++;
    }
}
