using System.Text;

namespace SweepStats.Files.Results;

/// <summary>Writes rows of comma-separated text: UTF-8 without mark, line feeds, quotes where needed. Flushes, but leaves the stream open, when disposed.</summary>
internal sealed class CsvRows : IDisposable
{
    private readonly StreamWriter _to;
    private bool _started;

    /// <param name="to">Where to; stays open.</param>
    /// <param name="header">Columns of this program's own.</param>
    /// <param name="others">Further columns, with names from elsewhere.</param>
    public CsvRows(Stream to, string header, params IEnumerable<string> others)
    {
        _to = new StreamWriter(to, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), 1 << 16, leaveOpen: true) { NewLine = "\n" };
        Cell(header);
        foreach (string other in others)
        {
            Text(other);
        }

        End();
    }

    /// <summary>A cell that this program formed: a number or a word of its own.</summary>
    public CsvRows Cell(string own)
    {
        Part();
        _to.Write(own);
        return this;
    }

    /// <summary>
    /// A cell of text from elsewhere. A spreadsheet takes a cell that starts with one of = + - @ for a formula, so such text gets an apostrophe before it.
    /// </summary>
    public CsvRows Text(string? text)
    {
        Part();
        string clean = Clean(text ?? "");
        bool quoted = clean.AsSpan().IndexOfAny(",\"") >= 0 || clean.Contains(';');
        _to.Write(quoted ? $"\"{clean.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : clean);
        return this;
    }

    /// <summary>Ends the row.</summary>
    public void End()
    {
        _to.WriteLine();
        _started = false;
    }

    public void Dispose() => _to.Dispose();

    private static string Clean(string text)
    {
        string oneLine = string.Concat(text.Select(c => char.IsControl(c) || c is '\u2028' or '\u2029' ? ' ' : c)).Trim();
        return oneLine.Length > 0 && "=+-@".Contains(oneLine[0]) ? "'" + oneLine : oneLine;
    }

    private void Part()
    {
        if (_started)
        {
            _to.Write(',');
        }

        _started = true;
    }
}
