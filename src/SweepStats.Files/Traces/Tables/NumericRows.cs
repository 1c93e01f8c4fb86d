using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Every row of numbers in a file, usually of two or more, and how they lie together.</summary>
internal sealed class NumericRows : IDisposable
{
    private const int MostRuns = 50_000;

    private readonly PooledList<double> _values;
    private readonly PooledList<int> _lines;
    private readonly NumericRow _row;

    /// <param name="text">The file.</param>
    /// <param name="separator">How fields are parted.</param>
    /// <param name="fewest">Numbers that a row has at least.</param>
    public NumericRows(TraceText text, Separator separator, int fewest = 2)
    {
        _row = new NumericRow(separator, fewest);
        _values = new PooledList<double>(text.LineCount * 2);
        _lines = new PooledList<int>(text.LineCount);
        NumericRun? current = null;
        for (int i = 0; i < text.LineCount && !HasTooManyRuns; i++)
        {
            int columns = _row.Read(text.Line(i), _values);
            if (columns >= fewest)
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

    /// <summary>Whether the rows change their shape so often that the file is no table; the rest was not looked at.</summary>
    public bool HasTooManyRuns => Runs.Count > MostRuns;

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

    /// <summary>Gives the working memory back; no number may be asked for afterwards.</summary>
    public void Dispose()
    {
        _values.Dispose();
        _lines.Dispose();
    }

    // Rows that state their units belong together only where these agree.
    private NumericRun Extend(NumericRun? current, int columns)
    {
        RowUnits? units = _row.Units;
        if (current?.Columns == columns && RowUnits.Same(current.Units, units))
        {
            current.Rows++;
            return current;
        }

        var started = new NumericRun(columns, _lines.Count, _values.Count - columns) { Units = units };
        Runs.Add(started);
        return started;
    }
}
