using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Finds the data in a delimited file: the longest run of rows of numbers. What looks like a lost part of it is a fault.
/// </summary>
internal sealed class DataBlock
{
    /// <summary>Most traces that are read from one file.</summary>
    public const int MostTraces = 10_000;

    private const int TableRows = 3;
    private const int LongestOddLine = 1000;

    private readonly TraceText _text;
    private readonly NumericRows _rows;

    private DataBlock(TraceText text, NumericRows rows, NumericRun run) =>
        (_text, _rows, Run) = (text, rows, run);

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
            faults.Add(rows.Line(rows.Runs[^1], 0) + 1, "the rows change their number of columns again and again",
                "export the sweep again as one table with a row for each frequency");
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
            faults.Add(rows.Line(longest, 0) + 1,
                FormattableString.Invariant($"the rows have {longest.Columns} columns; more than {MostTraces} are not read"),
                "put fewer traces into a file");
            return null;
        }

        if (Around(text, rows, longest, separator, faults) is not { } block)
        {
            return null;
        }

        block.CheckOtherRuns(separator, faults);
        if (separator.Mark == (byte)' ' && text.Line(block.LastLine).Length <= LongestOddLine
            && OddNumber.GroupedByBlanks(text.LineText(block.LastLine)) is { } number)
        {
            faults.Add(block.LastLine + 1, $"'{number}' has thousands separators", "export without thousands separators");
        }

        if (block.Siblings.Count >= MostTraces)
        {
            faults.Add(block.FirstLine + 1, FormattableString.Invariant($"the file holds more than {MostTraces} tables"),
                "put fewer traces into a file");
        }

        return faults.Any ? null : block;
    }

    /// <summary>
    /// Takes certain rows for the data; null, with the reason among the faults, where rows that touch them are bad.
    /// </summary>
    public static DataBlock? Around(TraceText text, NumericRows rows, NumericRun run, Separator separator, FaultList faults)
    {
        var block = new DataBlock(text, rows, run);
        var bad = new BadRows(faults);
        var touching = new TouchingRows(text, separator, block);
        touching.CheckBeyond(block.LastLine, 1, bad);
        touching.CheckBeyond(block.FirstLine, -1, bad);
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

    private void CheckOtherRuns(Separator separator, FaultList faults)
    {
        var lists = new MarkerTables(_text, _rows, Run);
        if (_rows.Runs.FirstOrDefault(
            r => r.Columns == Run.Columns && !RowUnits.Same(r.Units, Run.Units) && lists.Title(r) is null) is { } mixed)
        {
            faults.Add(_rows.Line(mixed, 0) + 1, "the units of this row differ from those of the other rows, or are missing",
                "export all rows with the same units");
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
            if (lists.Title(other) is { } title)
            {
                faults.Assume(FormattableString.Invariant(
                    $"the short table in lines {first + 1} to {last + 1}, under '{title}', is no trace and was not read"));
                continue;
            }

            bool after = first > LastLine;
            int? between = after ? NextLine(_text, LastLine, 1) : NextLine(_text, last, 1);
            int? beyond = between is { } gap ? NextLine(_text, gap, 1) : null;
            bool same = other.Columns == Run.Columns;
            if (same && beyond == (after ? first : FirstLine) && (after || other.Rows > 1))
            {
                Interrupted(between!.Value, separator, faults);
            }
            else if (same && (other.Rows >= TableRows || after))
            {
                faults.Add(
                    first + 1,
                    FormattableString.Invariant(
                        $"a second table of numbers starts here beside that of lines {FirstLine + 1} to {LastLine + 1}"),
                    "keep one table a file");
            }
            else if (other.Rows >= TableRows)
            {
                faults.Assume(FormattableString.Invariant(
                    $"lines {first + 1} to {last + 1} hold another table of {other.Columns} columns, which was not read"));
            }
        }
    }

    // A second header may bring another unit: without it the rows below would be read in that of the first.
    private void Interrupted(int line, Separator separator, FaultList faults)
    {
        if (TouchingRows.IsGap(_text.Line(line), separator, Run.Columns))
        {
            faults.Add(line + 1, "a field of the row is empty", "complete the row or export the sweep again");
        }
        else if (FieldReader.Texts(_text.Line(line), separator) is { } fields && fields.Count == Run.Columns
            && fields.Exists(HasLetters))
        {
            faults.Add(line + 1, "a second table starts here", "keep one table a file");
        }
        else if (HasLetters(_text.LineText(line)))
        {
            faults.Add(line + 1, "the line interrupts the rows of numbers",
                "if a second table starts here, keep one table a file; remove the line only if it is a remark");
        }
        else
        {
            faults.Add(line + 1, "the line interrupts the rows of numbers", "remove the line or export the sweep again");
        }
    }

    private static bool HasLetters(string text) => text.Any(char.IsLetter);
}
