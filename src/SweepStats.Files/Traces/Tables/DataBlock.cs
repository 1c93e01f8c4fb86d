using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Finds the data in a delimited file: the longest run of rows of numbers. What looks like a lost part of it is a fault.
/// </summary>
internal sealed class DataBlock
{
    /// <summary>Most traces that are read from one file.</summary>
    public const int MostTraces = 10_000;

    private const int LongestOddLine = 1000;

    private readonly TraceText _text;
    private readonly NumericRows _rows;

    private DataBlock(TraceText text, NumericRows rows, NumericRun run) => (_text, _rows, Run) = (text, rows, run);

    /// <summary>The rows that are the data.</summary>
    public NumericRun Run { get; }

    /// <summary>Tables of the same shape over the same frequencies, elsewhere in the file.</summary>
    public List<NumericRun> Siblings { get; } = [];

    /// <summary>Index of the line of the first row, from 0.</summary>
    public int FirstLine => _rows.Line(Run, 0);

    /// <summary>Index of the line of the last row, from 0.</summary>
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

        DataBlock? block = Around(text, rows, longest, separator, faults);
        block?.CheckRest(separator, faults);
        return faults.Any ? null : block;
    }

    private void CheckRest(Separator separator, FaultList faults)
    {
        new OtherTables(_text, _rows, this, faults).Check(separator);
        if (separator.Mark == (byte)' ' && _text.Line(LastLine).Length <= LongestOddLine
            && OddNumber.GroupedByBlanks(_text.LineText(LastLine)) is { } number)
        {
            faults.Add(LastLine + 1, $"'{number}' has thousands separators", "export without thousands separators");
        }

        if (Siblings.Count >= MostTraces)
        {
            faults.Add(FirstLine + 1, FormattableString.Invariant($"the file holds more than {MostTraces} tables"),
                "put fewer traces into a file");
        }
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
}
