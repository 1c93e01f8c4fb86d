using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Finds the data in a delimited file: the longest run of rows of numbers. What looks like a lost part of it is a fault.</summary>
internal sealed class DataBlock
{
    /// <summary>Most traces that are read from one file.</summary>
    public const int MostTraces = 10_000;

    private const int TableRows = 3;
    private const int LongestOddLine = 1000;

    private readonly TraceText _text;
    private readonly NumericRows _rows;
    private readonly Separator _separator;

    private DataBlock(TraceText text, NumericRows rows, NumericRun run, Separator separator) =>
        (_text, _rows, Run, _separator) = (text, rows, run, separator);

    public NumericRun Run { get; }

    /// <summary>Tables of the same shape over the same frequencies, elsewhere in the file.</summary>
    public List<NumericRun> Siblings { get; } = [];

    public int FirstLine => _rows.Line(Run, 0);

    public int LastLine => _rows.Line(Run, Run.Rows - 1);

    /// <summary>Finds the data; null, with the reason among the faults, where there is none or part of it is doubtful.</summary>
    public static DataBlock? Find(TraceText text, NumericRows rows, Separator separator, FaultList faults)
    {
        if (rows.HasTooManyRuns)
        {
            faults.Add(rows.Line(rows.Runs[^1], 0) + 1, "the rows change their number of columns again and again", "export the sweep again as one table with a row for each frequency");
            return null;
        }

        NumericRun? longest = rows.Runs.MaxBy(r => r.Rows);
        if (longest is null || (longest.Rows < 2 && rows.Runs.Count > 1))
        {
            // A bad second row leaves a first that stands alone: then the bad one is to be told of.
            if (longest is null || Around(text, rows, longest, separator, faults) is not null)
            {
                NoTable.Tell(text, longest is null ? null : rows.Line(longest, 0), faults);
            }

            return null;
        }

        if (longest.Columns > MostTraces)
        {
            faults.Add(rows.Line(longest, 0) + 1, FormattableString.Invariant($"the rows have {longest.Columns} columns; more than {MostTraces} are not read"), "put fewer traces into a file");
            return null;
        }

        if (Around(text, rows, longest, separator, faults) is not { } block)
        {
            return null;
        }

        block.CheckOtherRuns(faults);
        if (block.Siblings.Count >= MostTraces)
        {
            faults.Add(block.FirstLine + 1, FormattableString.Invariant($"the file holds more than {MostTraces} tables"), "put fewer traces into a file");
        }

        return faults.Any ? null : block;
    }

    /// <summary>Takes certain rows for the data; null, with the reason among the faults, where rows that touch them are bad.</summary>
    public static DataBlock? Around(TraceText text, NumericRows rows, NumericRun run, Separator separator, FaultList faults)
    {
        var block = new DataBlock(text, rows, run, separator);
        var bad = new BadRows(faults);
        block.CheckBeyond(block.LastLine, 1, bad);
        block.CheckBeyond(block.FirstLine, -1, bad);
        bad.Report();
        return faults.Any ? null : block;
    }

    /// <summary>Index of the next line in a direction that is neither blank nor a comment; null at the end of the file.</summary>
    public static int? NextLine(TraceText text, int from, int step)
    {
        for (int i = from + step; i >= 0 && i < text.LineCount; i += step)
        {
            if (!NumericRows.IsBlankOrComment(text.Line(i)))
            {
                return i;
            }
        }

        return null;
    }

    // From the data on as long as rows are bad, through good rows between them.
    private void CheckBeyond(int edge, int step, BadRows bad)
    {
        int? line = NextLine(_text, edge, step);
        bool found = false;
        while (line is { } index && !bad.IsFull)
        {
            bool isBad = CheckNeighbour(index, bad);
            if (!isBad && !(found && IsRow(index)))
            {
                return;
            }

            found = true;
            line = NextLine(_text, index, step);
        }
    }

    // A row that touches the data and starts with a number is part of it: to stop there in silence would drop what follows.
    private bool CheckNeighbour(int index, BadRows bad)
    {
        const string Remedy = "correct the row or export the sweep again";
        List<string> fields = FieldReader.Texts(_text.Line(index), _separator);
        if (fields.Count == 0)
        {
            return false;
        }

        string text = _text.Line(index).Length <= LongestOddLine ? _text.LineText(index) : "";
        if (OddNumber.HasStrayQuote(text))
        {
            bad.Add(index + 1, "a quote is opened and not closed", Remedy);
            return true;
        }

        if (!IsNumber(fields[0]) && (fields.Count != Run.Columns || OddNumber.Oddity(fields[0], _separator.DecimalMark) is null))
        {
            return false;
        }

        int wrong = fields.FindIndex(f => !IsNumber(f));
        if (wrong < 0 && (fields.Count == Run.Columns || (fields.Count == 1 && index < FirstLine)))
        {
            return false;
        }

        if (wrong < 0 || (fields.Count != Run.Columns && index > FirstLine))
        {
            string points = _separator is { Mark: (byte)',' } && fields.Count > Run.Columns ? "; a decimal comma would split a number, so use decimal points" : "";
            bad.Add(index + 1, FormattableString.Invariant($"the number of columns is {fields.Count} here and {Run.Columns} in the rows beside it"), "complete the row or export the sweep again" + points);
            return true;
        }

        if (index > FirstLine || fields.Count == Run.Columns)
        {
            bad.Add(index + 1, $"'{Shortened(fields[wrong])}' {OddNumber.Oddity(fields[wrong], _separator.DecimalMark) ?? "is not a finite number"}", Remedy);
            return true;
        }

        return false;
    }

    private bool IsRow(int index)
    {
        List<string> fields = FieldReader.Texts(_text.Line(index), _separator);
        return fields.Count == Run.Columns && fields.TrueForAll(IsNumber);
    }

    private void CheckOtherRuns(FaultList faults)
    {
        if (_rows.Runs.FirstOrDefault(r => r.Columns == Run.Columns && !RowUnits.Same(r.Units, Run.Units)) is { } mixed)
        {
            faults.Add(_rows.Line(mixed, 0) + 1, "the units of this row differ from those of the other rows, or are missing", "export all rows with the same units");
            return;
        }

        foreach (NumericRun other in _rows.Runs.Where(r => r != Run))
        {
            if (TableBlocks.AreSiblings(_rows, Run, other))
            {
                Siblings.Add(other);
                continue;
            }

            int first = _rows.Line(other, 0);
            int last = _rows.Line(other, other.Rows - 1);
            bool after = first > LastLine;
            int? between = after ? NextLine(_text, LastLine, 1) : NextLine(_text, last, 1);
            int? beyond = between is { } gap ? NextLine(_text, gap, 1) : null;
            bool same = other.Columns == Run.Columns;
            if (same && beyond == (after ? first : FirstLine) && (after || other.Rows > 1))
            {
                faults.Add(between + 1, "the line interrupts the rows of numbers", "remove the line or export the sweep again");
            }
            else if (same && (other.Rows >= TableRows || after))
            {
                faults.Add(
                    first + 1,
                    FormattableString.Invariant($"a second table of numbers starts here beside that of lines {FirstLine + 1} to {LastLine + 1}"),
                    "keep one table a file, or put its traces side by side as columns");
            }
            else if (other.Rows >= TableRows)
            {
                faults.Assume(FormattableString.Invariant(
                    $"lines {first + 1} to {last + 1} hold another table of {other.Columns} columns, which was not read"));
            }
        }
    }

    private bool IsNumber(string field) => StrictNumber.TryParse(System.Text.Encoding.UTF8.GetBytes(field), _separator.DecimalMark, 0, out _);

    private static string Shortened(string text) => text.Length <= 40 ? text : text[..40] + "…";
}
