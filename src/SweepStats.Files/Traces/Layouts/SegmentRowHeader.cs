using System.Text;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>Where start, stop, step and levels stand in rows that are segments of sweeps.</summary>
/// <param name="Line">Index of the line that names them; −1 where none does.</param>
/// <param name="Separator">How fields are parted.</param>
/// <param name="Start">Place of the start from 0.</param>
/// <param name="Stop">Place of the stop.</param>
/// <param name="Step">Place of the step; null where the number of levels tells it.</param>
/// <param name="FirstLevel">Place of the first level.</param>
internal sealed record SegmentRowHeader(int Line, Separator Separator, int Start, int Stop, int? Step, int FirstLevel)
{
    private const int LinesSearched = 100;
    private const int LongestLine = 2000;

    private static readonly string[] StepWords = ["step", "schritt", "schrittweite", "pas", "paso", "passo"];
    private static readonly string[] WhenWords = ["date", "datum", "time", "zeit", "uhrzeit"];
    private static readonly string[] LeadWords =
        ["n", "points", "point", "count", "punkte", "anzahl", "puntos", "punti", "nombre", "number", "date", "datum", "fecha",
            "data", "time", "zeit", "uhrzeit", "heure", "hora", "ora", "segment", "rbw", "vbw"];

    /// <summary>Columns that tell when a segment was taken.</summary>
    public ImmutableArray<int> When { get; init; } = [0, 1];

    /// <summary>Unit of start, stop and step; null where nothing says it.</summary>
    public FrequencyUnit? FrequencyUnit { get; init; }

    /// <summary>Unit of the levels; null where the header does not say it.</summary>
    public LevelUnit? LevelUnit { get; init; }

    /// <summary>Rows of date, time, start, stop and step in Hz, a count, and levels, without a header.</summary>
    public static SegmentRowHeader Usual { get; } =
        new(-1, new Separator((byte)',', (byte)'.'), 2, 3, 4, 6) { FrequencyUnit = Traces.FrequencyUnit.Hertz };

    /// <summary>The header of a text; null where no line is one.</summary>
    public static SegmentRowHeader? Find(TraceText text)
    {
        for (int i = 0; i + 1 < Math.Min(text.LineCount, LinesSearched); i++)
        {
            ReadOnlySpan<byte> line = text.Line(i).TrimStart(" \t#!%\""u8);
            if (!line.IsEmpty && char.IsAsciiDigit((char)line[0]))
            {
                return null;
            }

            if (line.Length is > 10 and < LongestLine
                && line.Count((byte)',') + line.Count((byte)';') + line.Count((byte)'\t') > 2 && Of(text, i, line) is { } header)
            {
                return header;
            }
        }

        return null;
    }

    private static SegmentRowHeader? Of(TraceText text, int index, ReadOnlySpan<byte> line)
    {
        if (!Encoding.UTF8.GetString(line).Contains("sto", StringComparison.OrdinalIgnoreCase)
            || DataBlock.NextLine(text, index, 1) is not { } row)
        {
            return null;
        }

        foreach (byte mark in ";\t,"u8)
        {
            byte decimalMark = mark != (byte)',' && text.Line(row).Contains((byte)',') ? (byte)',' : (byte)'.';
            var separator = new Separator(mark, decimalMark);
            string[] fields = [.. FieldReader.Texts(line, separator)];
            if (fields.Length > 3 && Of(index, separator, fields) is { } header && header.Fits(text.Line(row)))
            {
                return header;
            }
        }

        return null;
    }

    private static SegmentRowHeader? Of(int index, Separator separator, string[] fields)
    {
        int Place(params string[] words) => Array.FindIndex(fields, f => IsCalled(f, words));
        (int start, int stop, int step) = (Place("start"), Place("stop", "stopp"), Place(StepWords));
        bool IsLead(int i) => i == start || i == stop || i == step || IsCalled(fields[i], LeadWords);
        int first = 1 + Array.FindLastIndex([.. Enumerable.Range(0, fields.Length)], IsLead);
        return start < 0 || stop < 0 ? null : new SegmentRowHeader(index, separator, start, stop, step < 0 ? null : step, first)
        {
            When = [.. Enumerable.Range(0, first).Where(i => IsCalled(ColumnName.Of(fields[i]).Text, WhenWords))],
            FrequencyUnit = ColumnName.Of(fields[start]).FrequencyUnit,
            LevelUnit = UnitIn(fields[first..]),
        };
    }

    private static LevelUnit? UnitIn(string[] names) =>
        names.SelectMany(f => f.Split([' ', '(', ')', '[', ']', '_'])).Select(LevelUnits.Parse)
            .FirstOrDefault(u => u is not null);

    private static bool IsCalled(string field, string[] words) => words.Any(w => IsCalled(field, w));

    // "start Hz", "Start frequency (MHz)", "Startfrequenz".
    private static bool IsCalled(string field, string word) =>
        field.TrimStart().StartsWith(word, StringComparison.OrdinalIgnoreCase)
        && (word.Length > 3 || field.Trim().Length == word.Length || !char.IsLetter(field.Trim()[word.Length]));

    // An ordinary table may have columns called start and stop: there one level follows, and here as many as there are steps.
    private bool Fits(ReadOnlySpan<byte> row)
    {
        List<string> fields = FieldReader.Texts(row, Separator);
        return fields.Count > FirstLevel + 1 && IsNumber(fields[Start]) && IsNumber(fields[Stop])
            && fields.Skip(FirstLevel).All(IsNumber);
    }

    private bool IsNumber(string field) => StrictNumber.TryParse(Encoding.UTF8.GetBytes(field), Separator.DecimalMark, 0, out _);
}
