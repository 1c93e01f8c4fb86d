using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace SweepStats.Statistics;

/// <summary>As many neighbouring columns of a row as a register holds; zeros behind the last one.</summary>
internal static class Lanes
{
    /// <summary>The columns from one on.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<double> At(ReadOnlySpan<double> row, int column) => column + Vector<double>.Count <= row.Length
        ? Vector.LoadUnsafe(in MemoryMarshal.GetReference(row), (nuint)column) : Last(row[column..]);

    /// <summary>Puts them in their places in a row, as far as it has them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Put(Vector<double> values, Span<double> row, int column)
    {
        if (column + Vector<double>.Count <= row.Length)
        {
            values.StoreUnsafe(ref MemoryMarshal.GetReference(row), (nuint)column);
        }
        else
        {
            PutLast(values, row[column..]);
        }
    }

    // Apart from the full ones, since a method that asks for room on the stack is called for each register.
    private static Vector<double> Last(ReadOnlySpan<double> columns)
    {
        Span<double> part = stackalloc double[Vector<double>.Count];
        part.Clear();
        columns.CopyTo(part);
        return new Vector<double>(part);
    }

    private static void PutLast(Vector<double> values, Span<double> columns)
    {
        for (int f = 0; f < columns.Length; f++)
        {
            columns[f] = values[f];
        }
    }
}
