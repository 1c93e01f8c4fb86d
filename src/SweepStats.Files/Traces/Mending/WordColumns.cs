using System.Text;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>
/// The columns of a table that hold words: a polarisation, a comment, a date. Where columns are named they keep their places,
/// filled with 0, so that the others keep their numbers.
/// </summary>
internal sealed class WordColumns
{
    // What instruments write where they read nothing: a column of it is one of levels that were not read, not one of words.
    private static readonly HashSet<string> NoReadings =
        ["nan", "inf", "infinity", "-inf", "+inf", "-infinity", "---", "--", "-", "n/a", "na", "#n/a", "ovl", "overload", "ovld",
            "invalid", "err", "error", "*****", "****", "***"];

    private static readonly string[] UnitWords = ["unit", "einheit", "unité", "unidad", "unità", "dim"];

    // Words by which instruments mark a reading as none.
    private static readonly HashSet<string> Flags =
        ["ovl", "ovld", "overload", "overloaded", "overrange", "over range", "uncal", "uncalibrated", "invalid", "err", "error",
            "clip", "clipped", "saturated", "übersteuert", "ungültig", "surcharge"];

    // The beginnings of such words, wherever they stand: "ADC overload", "OVR", "UNCAL!".
    private static readonly string[] FlagStems =
        ["overl", "over range", "overrange", "ovr", "ovl", "uncal", "unlock", "unlevel", "invalid", "not valid", "do not use",
            "übersteuer", "uebersteuer", "ungültig", "below noise", "saturat", "clipp"];

    private static readonly HashSet<string> FlagWords = ["ol", "o/l", "over", "bad", "<", ">", "err", "error", "ovf"];

    private static readonly HashSet<string> Verdicts = ["pass", "fail", "ok", "nok", "yes", "no", "ja", "nein", "oui", "non",
        "si", "sí", "in", "out", "passed", "failed", "bestanden"];

    private const int MostKinds = 8;
    private const int LinesAbove = 6;

    private const string Word = " (text)";

    private readonly TraceText _text;
    private readonly RowPattern _pattern;
    private readonly List<ColumnTally> _tallies = [];

    // The columns of numbers of rows that have more of them.
    private ulong _others;

    private WordColumns(TraceText text, RowPattern pattern) => (_text, _pattern) = (text, pattern);

    /// <summary>Number of rows.</summary>
    public int Rows { get; private set; }

    /// <summary>Index of the first row's line.</summary>
    public int FirstRow { get; private set; } = -1;

    /// <summary>Number of columns.</summary>
    public int Columns => _tallies.Count;

    /// <summary>Index of the line that names the columns; null where none does.</summary>
    public int? Header { get; private set; }

    /// <summary>Looks at all rows; null where a column of numbers has gaps, or holds words in some of its rows.</summary>
    public static WordColumns? Of(TraceText text, RowPattern pattern)
    {
        var columns = new WordColumns(text, pattern);
        columns.Count();
        columns.Header = columns.FindHeader();
        columns.Trim();
        columns.Header ??= columns.FindHeader();
        return columns.Rows > 1 && Enumerable.Range(0, columns.Columns).All(c => pattern.IsNumber(c) || columns.AreWords(c))
            ? columns : null;
    }

    /// <summary>Whether any column holds words or nothing.</summary>
    public bool Any => Enumerable.Range(0, Columns).Any(IsFilled);

    /// <summary>The first row that a word marks as no reading, and the column of the word; null where none is.</summary>
    public (int Line, int Column)? Flagged()
    {
        int[] flagged = [.. Enumerable.Range(0, Columns).Where(c => IsFilled(c) && _tallies[c].Values.Any(IsFlag))];
        for (int i = FirstRow; flagged.Length > 0 && i < _text.LineCount; i++)
        {
            int at = IsRow(i) ? Array.FindIndex(flagged, c => IsFlag(Value(i, c))) : -1;
            if (at >= 0)
            {
                return (i, flagged[at]);
            }
        }

        return null;
    }

    // "Err 3", "OVR": a word of the list, or one that begins as one does.
    private static bool IsFlag(string value)
    {
        string word = value.ToLowerInvariant().Trim('!', '*', ' ');
        return Flags.Contains(word) || FlagWords.Contains(word)
            || Array.Exists(FlagStems, s => word.Contains(s, StringComparison.Ordinal))
            || Array.Exists(word.Split(' '), w => w is "err" or "error" or "ovr" or "bad");
    }

    /// <summary>
    /// A column of words that may tell what each row is of, such as its role or its detector; null where there is none.
    /// </summary>
    /// <remarks>A word in every row, few of them, each in several rows, and no verdicts of a limit.</remarks>
    public int? Meaning()
    {
        int found = Enumerable.Range(0, Columns).FirstOrDefault(c => IsFilled(c) && MayMean(_tallies[c]), -1);
        return found < 0 ? null : found;
    }

    private bool MayMean(ColumnTally tally) =>
        tally.Values.Count is > 1 and <= MostKinds && tally.Values.Count * 2 <= Rows && tally.Values.All(v => v.Length > 0)
        && !tally.Values.All(v => Verdicts.Contains(v.ToLowerInvariant()));

    /// <summary>What tells the values of a column apart.</summary>
    public ColumnTally Tally(int column) => _tallies[column];

    /// <summary>The name of a column; empty where it has none.</summary>
    public string Name(int column)
    {
        if (Header is not { } header)
        {
            return "";
        }

        List<Range> fields = [];
        HeaderFields(_text.Line(header), fields);
        return column < fields.Count
            ? Encoding.UTF8.GetString(FieldRanges.Bare(_text.Line(header)[fields[column]].TrimStart("#!% "u8))) : "";
    }

    /// <summary>The field of a column in the row on a line.</summary>
    public string Value(int line, int column)
    {
        ReadOnlySpan<byte> row = _text.Line(line);
        return _pattern.IsRow(row) && column < _pattern.Fields.Count
            ? Encoding.UTF8.GetString(FieldRanges.Bare(row[_pattern.Fields[column]])) : "";
    }

    /// <summary>Whether a line is a row.</summary>
    public bool IsRow(int line) => _pattern.IsRow(_text.Line(line));

    /// <summary>The text with 0 in place of words.</summary>
    /// <param name="also">A column of numbers that is filled too, as one that counts the sweeps; null for none.</param>
    public MendedText Filled(IReadOnlyCollection<int> also)
    {
        var buffer = new LineBuffer(_text, _text.LineCount * 24);
        List<Range> fields = [];
        for (int i = 0; i < _text.LineCount; i++)
        {
            ReadOnlySpan<byte> line = _text.Line(i);
            if (i == Header)
            {
                HeaderFields(line, fields);
                WriteHeader(buffer, line, fields, also);
            }
            else if (_pattern.IsRow(line))
            {
                WriteRow(buffer, line, also);
            }
            else
            {
                buffer.Write(line);
            }

            buffer.EndLine();
        }

        // Where columns are named, what is not read is told by its name later on.
        return new MendedText(buffer.Finish(true), Header is not null ? ""
            : "columns of words were taken out before the rest was numbered: "
                + $"{string.Join(", ",
                    Enumerable.Range(0, Columns).Where(c => IsTaken(c, also)).Select(c => ColumnList.Number(c)))}");
    }

    private bool IsTaken(int column, IReadOnlyCollection<int> also) => IsFilled(column) || also.Contains(column);

    private bool IsFilled(int column) => !_pattern.IsNumber(column) && !(_tallies[column].AreUnits && MayBeUnits(column));

    // A column of V under "Polarisation" is no column of volts.
    private bool MayBeUnits(int column) =>
        Name(column) is not { Length: > 0 } name || ColumnName.Of(name).IsBareUnit
        || Array.Exists(UnitWords, w => name.Contains(w, StringComparison.OrdinalIgnoreCase));

    private bool AreWords(int column)
    {
        ColumnTally tally = _tallies[column];
        bool unread = !tally.IsEmpty && tally.Values.All(v => NoReadings.Contains(v.ToLowerInvariant()));
        return tally.Numbers == 0 && !unread && ((_others >> column & 1) == 0 || RemarkLine.IsRemarkName(Name(column)))
            && (tally.AreUnits || ColumnName.Of(Name(column)) is { FrequencyUnit: null, LevelUnit: null });
    }

    private void Count()
    {
        for (int i = 0; i < _text.LineCount; i++)
        {
            ReadOnlySpan<byte> line = _text.Line(i);
            if (!_pattern.IsRow(line))
            {
                _others |= (_pattern.LastNumbers & _pattern.Numbers) == _pattern.Numbers ? _pattern.LastNumbers : 0;
                continue;
            }

            FirstRow = FirstRow < 0 ? i : FirstRow;
            while (_tallies.Count < _pattern.Fields.Count)
            {
                _tallies.Add(new ColumnTally(Rows));
            }

            for (int c = 0; c < _tallies.Count; c++)
            {
                _tallies[c].Add(c < _pattern.Fields.Count ? FieldRanges.Bare(line[_pattern.Fields[c]]) : default);
            }

            Rows++;
        }
    }

    // Separators at the end of every row part nothing, unless a name stands over what they part.
    private void Trim()
    {
        while (_tallies.Count > 0 && _tallies[^1].IsEmpty && !_pattern.IsNumber(_tallies.Count - 1)
            && Name(_tallies.Count - 1).Length == 0)
        {
            _tallies.RemoveAt(_tallies.Count - 1);
        }
    }

    private int? FindHeader()
    {
        List<Range> fields = [];
        int looked = 0;
        for (int i = FirstRow - 1; i >= 0 && looked < LinesAbove; i--)
        {
            ReadOnlySpan<byte> line = _text.Line(i);
            HeaderFields(line, fields);
            looked += fields.Count > 0 ? 1 : 0;
            int named = fields.Count >= Columns ? Named(line, fields) : 0;
            if (named > 1)
            {
                return i;
            }
        }

        return null;
    }

    // Between blanks a unit in brackets belongs to the word before it, as it does where the names are read.
    private void HeaderFields(ReadOnlySpan<byte> line, List<Range> fields)
    {
        FieldRanges.Of(line, _pattern.Mark, fields);
        for (int i = fields.Count - 1; i > 0 && _pattern.Mark == (byte)' '; i--)
        {
            if (line[fields[i].Start.Value] is (byte)'(' or (byte)'[' && line[fields[i - 1].End.Value - 1] != (byte)')')
            {
                fields[i - 1] = fields[i - 1].Start..fields[i].End;
                fields.RemoveAt(i);
            }
        }
    }

    // Words that are no units: a row of units stands below the names.
    private static int Named(ReadOnlySpan<byte> line, List<Range> fields)
    {
        int named = 0;
        foreach (Range field in fields)
        {
            string word = Encoding.UTF8.GetString(FieldRanges.Bare(line[field]));
            named += word.Length is > 0 and <= ColumnName.Longest && word.Any(char.IsLetter)
                && !ColumnName.Of(word).IsBareUnit ? 1 : 0;
        }

        return named;
    }

    private void WriteHeader(LineBuffer buffer, ReadOnlySpan<byte> line, List<Range> fields, IReadOnlyCollection<int> also)
    {
        for (int c = 0; c < fields.Count; c++)
        {
            Part(buffer, c);
            ReadOnlySpan<byte> field = line[fields[c]];
            if (c >= Columns || !IsTaken(c, also))
            {
                buffer.Write(field);
                continue;
            }

            bool quoted = field.Trim((byte)' ') is [(byte)'"', .., (byte)'"'];
            buffer.Write(quoted ? field.TrimEnd("\" "u8) : field.TrimEnd((byte)' '));
            buffer.Write(Encoding.UTF8.GetBytes(_pattern.Mark == (byte)' ' ? "(text)" : Word));
            buffer.Write(quoted ? "\""u8 : default);
        }
    }

    // Without names nothing would tell later on that the 0 are none.
    private void WriteRow(LineBuffer buffer, ReadOnlySpan<byte> line, IReadOnlyCollection<int> also)
    {
        int written = 0;
        for (int c = 0; c < Columns; c++)
        {
            bool taken = IsTaken(c, also);
            if (taken && Header is null)
            {
                continue;
            }

            Part(buffer, written++);
            buffer.Write(taken ? "0"u8 : line[_pattern.Fields[c]]);
        }
    }

    private void Part(LineBuffer buffer, int column)
    {
        if (column > 0)
        {
            buffer.Write([_pattern.Mark]);
        }
    }
}
