using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Looks at the lines next to the data for rows that were lost: those that are bad, or of another width.</summary>
internal sealed class TouchingRows(TraceText text, Separator separator, DataBlock block)
{
    private const int LongestOddLine = 1000;
    private const string Remedy = "correct the row or export the sweep again";

    private readonly int _columns = block.Run.Columns;

    /// <summary>Looks from an edge of the data on as long as rows are bad, through good rows between them.</summary>
    public void CheckBeyond(int edge, int step, BadRows bad)
    {
        int? line = DataBlock.NextLine(text, edge, step);
        bool found = false;
        while (line is { } index && !bad.IsFull)
        {
            bool isBad = CheckNeighbour(index, bad);
            if (!isBad && !(found && IsRow(index)))
            {
                return;
            }

            found = true;
            line = DataBlock.NextLine(text, index, step);
        }
    }

    // A row that touches the data and starts with a number is part of it: to stop there in silence would drop what follows.
    private bool CheckNeighbour(int index, BadRows bad)
    {
        List<string> fields = FieldReader.Texts(text.Line(index), separator);
        if (fields.Count == 0)
        {
            return false;
        }

        string line = text.Line(index).Length <= LongestOddLine ? text.LineText(index) : "";
        if (OddNumber.HasStrayQuote(line))
        {
            bad.Add(index + 1, "a quote is opened and not closed", Remedy);
            return true;
        }

        return MayBeRow(fields) && CheckFields(fields, index, bad);
    }

    private bool MayBeRow(List<string> fields) => IsNumber(fields[0])
        || (fields.Count == _columns && OddNumber.Oddity(fields[0], separator.DecimalMark) is not null);

    private bool CheckFields(List<string> fields, int index, BadRows bad)
    {
        int wrong = fields.FindIndex(f => !IsNumber(f));
        bool above = index < block.FirstLine, gap = above && IsGap(text.Line(index), separator, _columns);
        if (wrong < 0 && (fields.Count == _columns || (fields.Count == 1 && above && !gap)))
        {
            return false;
        }

        if (gap)
        {
            bad.Add(index + 1, "a field of the row is empty", "leave the row out, or complete it");
            return true;
        }

        if (wrong < 0 || (fields.Count != _columns && index > block.FirstLine))
        {
            TellWidth(index + 1, fields.Count, bad);
            return true;
        }

        bool isBad = index > block.FirstLine || fields.Count == _columns;
        if (isBad)
        {
            bad.Add(index + 1, $"'{Shortened(fields[wrong])}' "
                + $"{OddNumber.Oddity(fields[wrong], separator.DecimalMark) ?? "is not a finite number"}", Remedy);
        }

        return isBad;
    }

    private void TellWidth(int line, int fields, BadRows bad)
    {
        string what = fields > _columns ? "take out what the row has too many" : "complete the row";
        string points = separator is { Mark: (byte)',' } && fields > _columns
            ? "; a decimal comma would split a number, so use decimal points"
            : "";
        bad.Add(line, FormattableString.Invariant($"the number of columns is {fields} here and {_columns} in the rows beside it"),
            what + " or export the sweep again" + points);
    }

    /// <summary>
    /// Whether a line such as <c>30,</c> is a row of numbers whose other fields are empty; a count of points stands without
    /// separators.
    /// </summary>
    public static bool IsGap(ReadOnlySpan<byte> line, Separator separator, int columns) =>
        separator.Mark != (byte)' ' && line.Count(separator.Mark) == columns - 1
            && FieldReader.Texts(line, separator) is [var only]
        && StrictNumber.TryParse(System.Text.Encoding.UTF8.GetBytes(only), separator.DecimalMark, 0, out _);

    private bool IsRow(int index)
    {
        List<string> fields = FieldReader.Texts(text.Line(index), separator);
        return fields.Count == _columns && fields.TrueForAll(IsNumber);
    }

    // A number may carry its unit.
    private bool IsNumber(string field)
    {
        ReadOnlySpan<byte> bytes = System.Text.Encoding.UTF8.GetBytes(field);
        return StrictNumber.TryParse(bytes, separator.DecimalMark, 0, out _)
            || UnitWord.TryParseNumber(bytes, separator.DecimalMark, out _, out _, out _);
    }

    private static string Shortened(string text) => text.Length <= 40 ? text : text[..40] + "…";
}
