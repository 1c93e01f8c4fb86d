using System.Globalization;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>One S-parameter of a file.</summary>
/// <param name="Row">Port of the wave that leaves, from 1.</param>
/// <param name="Column">Port of the wave that enters, from 1.</param>
/// <param name="Place">
/// Which pair of a point holds it, from 0; two parameters share one where the matrix is given as symmetric.
/// </param>
internal readonly record struct TouchstoneParameter(int Row, int Column, int Place)
{
    /// <summary>Such as S21.</summary>
    public string Name => string.Create(CultureInfo.InvariantCulture, $"S{Row}{Column}");

    /// <summary>
    /// Which pair of a point holds the same path from its other end, S12 for S21; null for a reflection, and where the matrix is
    /// given as symmetric: the
    /// mirror image of a number is no second measurement.
    /// </summary>
    public int? ReversePlace { get; private init; }

    /// <summary>
    /// All parameters of a file, in its order; the mirror images of a symmetric matrix stand where a full one would have them.
    /// </summary>
    public static TouchstoneParameter[] All(TouchstoneHeader header)
    {
        int ports = header.Ports;
        var all = new TouchstoneParameter[ports * ports];
        for (int i = 0; i < all.Length; i++)
        {
            // Two-port files of version 1 list S11 S21 S12 S22, column by column; more ports have always run row by row.
            (int outer, int inner) = (i / ports, i % ports);
            (int row, int column) = header.ColumnByColumn ? (inner, outer) : (outer, inner);
            bool full = header.Matrix == TouchstoneMatrix.Full;
            all[i] = new TouchstoneParameter(row + 1, column + 1, full ? i : PlaceInHalf(header, row, column))
            {
                // The mirror image of a full matrix has its indices exchanged, whichever of them runs first.
                ReversePlace = full && row != column ? (inner * ports) + outer : null,
            };
        }

        return all;
    }

    /// <summary>Pairs that the file gives for each frequency.</summary>
    public static int Pairs(TouchstoneHeader header) =>
        header.Matrix == TouchstoneMatrix.Full ? header.Ports * header.Ports : header.Ports * (header.Ports + 1) / 2;

    // Row by row: the lower half has 1, 2, 3 ... elements in its rows, the upper half as many from the other end.
    private static int PlaceInHalf(TouchstoneHeader header, int row, int column)
    {
        (int low, int high) = (Math.Min(row, column), Math.Max(row, column));
        return header.Matrix == TouchstoneMatrix.Lower
            ? (high * (high + 1) / 2) + low
            : (low * header.Ports) - (low * (low - 1) / 2) + (high - low);
    }
}
