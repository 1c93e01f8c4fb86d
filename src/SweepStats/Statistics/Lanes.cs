using System.Numerics;
using System.Runtime.InteropServices;

namespace SweepStats.Statistics;

/// <summary>As many neighbouring columns of a row as a register holds; zeros behind the last one.</summary>
internal static class Lanes
{
    /// <summary>The columns from one on.</summary>
    public static Vector<double> At(ReadOnlySpan<double> row, int column)
    {
        if (column + Vector<double>.Count <= row.Length)
        {
            return Vector.LoadUnsafe(in MemoryMarshal.GetReference(row), (nuint)column);
        }

        Span<double> part = stackalloc double[Vector<double>.Count];
        part.Clear();
        row[column..].CopyTo(part);
        return new Vector<double>(part);
    }

    /// <summary>Puts them in their places in a row, as far as it has them.</summary>
    public static void Put(Vector<double> values, Span<double> row, int column)
    {
        if (!values.TryCopyTo(row[column..]))
        {
            for (int f = column; f < row.Length; f++)
            {
                row[f] = values[f - column];
            }
        }
    }
}
