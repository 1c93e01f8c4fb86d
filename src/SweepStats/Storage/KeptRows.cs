namespace SweepStats.Storage;

/// <summary>Rows of numbers of one length, kept by a <see cref="RowStore"/>. Immutable.</summary>
/// <remarks>Rows that lie in the file are held as long as somebody uses them, and until the collector comes by.</remarks>
internal sealed class KeptRows
{
    private readonly double[][]? _rows;
    private readonly ScratchFile? _file;
    private readonly WeakReference<double[][]>? _read;
    private readonly long _at;
    private readonly int _count;

    /// <summary>Rows in memory.</summary>
    public KeptRows(double[][] rows)
    {
        (_rows, RowLength) = (rows, rows[0].Length);
    }

    /// <summary>Rows in a file, which they are written to.</summary>
    public KeptRows(double[][] rows, ScratchFile file)
    {
        (_file, _count, RowLength) = (file, rows.Length, rows[0].Length);
        _read = new WeakReference<double[][]>(null!);
        _at = file.Add(rows);
    }

    /// <summary>Numbers in a row.</summary>
    public int RowLength { get; }

    /// <summary>The rows; read once more where nobody has used them for a while.</summary>
    public double[][] Rows => _rows ?? Read();

    /// <summary>Numbers of a row side by side, without the rest of it.</summary>
    /// <param name="row">Which row.</param>
    /// <param name="first">The first of them.</param>
    /// <param name="values">Room for them.</param>
    public void Read(int row, int first, Span<double> values)
    {
        if (_rows is { } rows || _read!.TryGetTarget(out rows))
        {
            rows[row].AsSpan(first, values.Length).CopyTo(values);
            return;
        }

        _file!.Read(_at + (((row * (long)RowLength) + first) * sizeof(double)), values);
    }

    private double[][] Read()
    {
        if (_read!.TryGetTarget(out double[][]? rows))
        {
            return rows;
        }

        rows = new double[_count][];
        for (int i = 0; i < rows.Length; i++)
        {
            rows[i] = GC.AllocateUninitializedArray<double>(RowLength);
            _file!.Read(_at + (i * (long)RowLength * sizeof(double)), rows[i]);
        }

        _read.SetTarget(rows);
        return rows;
    }
}
