using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Looks at the rows of numbers elsewhere in a file: further tables over the same frequencies, lists of markers, or a part of the
/// data that something parts from it.
/// </summary>
internal sealed class OtherTables(TraceText text, NumericRows rows, DataBlock block, FaultList faults)
{
    private const int TableRows = 3;

    private readonly MarkerTables _lists = new(text, rows, block.Run);

    /// <summary>Takes tables of the same shape into the block, and tells of the others.</summary>
    public void Check(Separator separator)
    {
        if (rows.Runs.FirstOrDefault(r => r.Columns == block.Run.Columns && !RowUnits.Same(r.Units, block.Run.Units)
            && _lists.Title(r) is null) is { } mixed)
        {
            faults.Add(rows.Line(mixed, 0) + 1, "the units of this row differ from those of the other rows, or are missing",
                "export all rows with the same units");
            return;
        }

        foreach (NumericRun other in rows.Runs.Where(r => r != block.Run))
        {
            if (TableBlocks.AreSiblings(rows, block.Run, other))
            {
                block.Siblings.Add(other);
            }
            else if (_lists.Title(other) is { } title)
            {
                faults.Assume($"the short table in {Lines(other)}, under '{title}', is no trace and was not read");
            }
            else
            {
                Check(other, separator);
            }
        }
    }

    private string Lines(NumericRun run) =>
        FormattableString.Invariant($"lines {rows.Line(run, 0) + 1} to {rows.Line(run, run.Rows - 1) + 1}");

    private void Check(NumericRun other, Separator separator)
    {
        int first = rows.Line(other, 0);
        bool after = first > block.LastLine;
        int? between = DataBlock.NextLine(text, after ? block.LastLine : rows.Line(other, other.Rows - 1), 1);
        int? beyond = between is { } gap ? DataBlock.NextLine(text, gap, 1) : null;
        bool same = other.Columns == block.Run.Columns;
        if (same && beyond == (after ? first : block.FirstLine) && (after || other.Rows > 1))
        {
            Interrupted(between!.Value, separator);
        }
        else if (same && (other.Rows >= TableRows || after))
        {
            faults.Add(first + 1, $"a second table of numbers starts here beside that of {Lines(block.Run)}",
                "keep one table a file");
        }
        else if (other.Rows >= TableRows)
        {
            faults.Assume(FormattableString.Invariant(
                $"{Lines(other)} hold another table of {other.Columns} columns, which was not read"));
        }
    }

    // A second header may bring another unit: without it the rows below would be read in that of the first.
    private void Interrupted(int line, Separator separator)
    {
        if (TouchingRows.IsGap(text.Line(line), separator, block.Run.Columns))
        {
            faults.Add(line + 1, "a field of the row is empty", "complete the row or export the sweep again");
        }
        else if (FieldReader.Texts(text.Line(line), separator) is { } fields && fields.Count == block.Run.Columns
            && fields.Exists(HasLetters))
        {
            faults.Add(line + 1, "a second table starts here", "keep one table a file");
        }
        else if (HasLetters(text.LineText(line)))
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
