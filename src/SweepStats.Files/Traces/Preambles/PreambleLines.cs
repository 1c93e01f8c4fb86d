using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>Reads the lines above the data: as rows of settings, statements, remarks, or prose about units.</summary>
internal sealed class PreambleLines(TraceText text, StatedSettings stated)
{
    private const int LongestLine = 400;
    private const int MostLines = 5000;

    private readonly TraceHeading _heading = new();
    private int _valuesAt = -1;

    /// <summary>Reads the lines from one to before another.</summary>
    public StatedSettings Read(int from, int to)
    {
        int header = HeaderLine(from, to);
        for (int i = Math.Max(from, to - MostLines); i < to; i++)
        {
            if (text.Line(i).Length <= LongestLine)
            {
                Read(i, to, isHeader: i == header);
            }
        }

        return stated;
    }

    private void Read(int i, int to, bool isHeader)
    {
        string line = text.LineText(i);
        stated.Begin(line, i);
        _heading.Pass(line);
        if (!TakeRows(line, i, to) && i != _valuesAt)
        {
            Take(line, i + 1);
        }

        if (!isHeader || UnitProse.IsPlural(line))
        {
            foreach (Statement statement in UnitProse.Read(line))
            {
                stated.Take(statement);
            }
        }

        stated.End(line);
    }

    // Names in this line, and their values in the next.
    private bool TakeRows(string line, int i, int to)
    {
        List<Statement> both = i + 1 < to && text.Line(i + 1).Length <= LongestLine
            ? SettingRows.Read(line, text.LineText(i + 1)) : [];
        foreach (Statement statement in both)
        {
            stated.Take(statement with { Line = i + 2 });
        }

        _valuesAt = both.Count > 0 ? i + 1 : _valuesAt;
        return both.Count > 0;
    }

    private void Take(string line, int number)
    {
        if (!HasWords(line))
        {
            return;
        }

        bool any = false;
        List<Statement> unplain = [];
        foreach (Statement statement in StatementReader.Read(line)
            .Select(s => s with { Line = number, Number = s.Number ?? _heading.Trace }))
        {
            if (IsUnplain(statement))
            {
                unplain.Add(statement);
            }
            else
            {
                any |= stated.Take(statement);
            }
        }

        // "RBW: 9 kHz VBW: 30 kHz", and sentences that speak of a setting.
        Statement[] remarks = any && unplain.Count == 0 ? [] : [.. RemarkReader.Read(line)];
        foreach (Statement remark in remarks.Length > 0
            ? remarks.Select(r => r with { Line = number, Number = _heading.Trace }) : unplain)
        {
            stated.Take(remark);
        }
    }

    // A row of numbers has no letter but the E of its exponents.
    private static bool HasWords(string line) => line.Any(c => char.IsLetter(c) && c is not ('e' or 'E'));

    private static bool IsUnplain(Statement statement) =>
        SettingKeys.Find(statement.Key) is { Setting: var setting } && StatedNumbers.Holds(setting)
            && StatedNumbers.IsUnplain(statement);

    // What heads the columns states the unit of one column each, and not that of the file.
    private int HeaderLine(int from, int to)
    {
        int last = to - 1;
        while (last >= from && text.Line(last).Trim(" \t,;"u8).IsEmpty)
        {
            last--;
        }

        return last >= from && text.Line(last).IndexOfAny(",;\t"u8) >= 0
            && text.Line(last).TrimStart(" \t"u8)[0] is not ((byte)'!' or (byte)'#' or (byte)'%') ? last : -1;
    }
}
