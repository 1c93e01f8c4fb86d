using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Every row of two or more numbers in a file, and how they lie together.</summary>
internal sealed class NumericRows : IDisposable
{
    private readonly PooledList<double> _values;
    private readonly PooledList<int> _lines;
    private readonly Separator _separator;

    public NumericRows(TraceText text, Separator separator)
    {
        _separator = separator;
        _values = new PooledList<double>(text.LineCount * 2);
        _lines = new PooledList<int>(text.LineCount);
        NumericRun? current = null;
        for (int i = 0; i < text.LineCount; i++)
        {
            int columns = Row(text.Line(i));
            if (columns >= 2)
            {
                current = Extend(current, columns);
                _lines.Add(i);
            }
            else if (!IsBlankOrComment(text.Line(i)))
            {
                current = null;
            }
        }
    }

    /// <summary>The runs, in the order of the file.</summary>
    public List<NumericRun> Runs { get; } = [];

    /// <summary>A number of a run.</summary>
    public double Value(NumericRun run, int row, int column) => _values[run.FirstValue + (row * run.Columns) + column];

    /// <summary>Index of the line that a row of a run stands on.</summary>
    public int Line(NumericRun run, int row) => _lines[run.FirstRow + row];

    /// <summary>Whether a line holds nothing that could be data.</summary>
    public static bool IsBlankOrComment(ReadOnlySpan<byte> line)
    {
        ReadOnlySpan<byte> bare = line.Trim(" \t"u8);
        return bare.IsEmpty || bare[0] is (byte)'!' or (byte)'#' or (byte)'%' || bare.IndexOfAnyExcept(",; \t"u8) < 0;
    }

    public void Dispose()
    {
        _values.Dispose();
        _lines.Dispose();
    }

    private NumericRun Extend(NumericRun? current, int columns)
    {
        if (current?.Columns == columns)
        {
            current.Rows++;
            return current;
        }

        var started = new NumericRun(columns, _lines.Count, _values.Count - columns);
        Runs.Add(started);
        return started;
    }

    // Number of columns, its numbers added; 0 and nothing added where the line is no row.
    private int Row(ReadOnlySpan<byte> line)
    {
        int before = _values.Count;
        var reader = new FieldReader(line, _separator);
        while (reader.Next(out ReadOnlySpan<byte> field))
        {
            if (StrictNumber.TryParse(field, _separator.DecimalMark, 0, out double value))
            {
                _values.Add(value);
                continue;
            }

            if (field.IsEmpty && reader.AtEnd)
            {
                break;
            }

            _values.CutAt(before);
            return 0;
        }

        int columns = _values.Count - before;
        if (columns == 1)
        {
            _values.CutAt(before);
        }

        return columns < 2 ? 0 : columns;
    }
}
