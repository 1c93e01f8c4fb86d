using System.Buffers;
using System.Collections;
using SweepStats.Alignment;
using SweepStats.Statistics;
using SweepStats.Storage;

namespace SweepStats.Repeats;

/// <summary>
/// What is left of a sweep without its group's middle and its own offset, in dB: one value for each of the group's points.
/// Immutable.
/// </summary>
/// <remarks>Worked out from the levels when asked for: kept, it would take as much memory as the sweeps themselves.</remarks>
public sealed class SweepRests : IReadOnlyList<double>
{
    private readonly SweepBlock _block;
    private readonly int _row;
    private readonly ImmutableArray<int> _points;
    private readonly KeptRows _middle;
    private readonly double _residueDb;

    /// <param name="block">The sweeps.</param>
    /// <param name="row">Place of the sweep in the block.</param>
    /// <param name="points">Points of the grid at which the group is compared.</param>
    /// <param name="middle">Middle of the group at each of them, shared by its sweeps: one row.</param>
    internal SweepRests(SweepBlock block, int row, ImmutableArray<int> points, KeptRows middle)
    {
        (_block, _row, _points, _middle) = (block, row, points, middle);
        double[] room = ArrayPool<double>.Shared.Rent(points.Length);
        Span<double> rests = room.AsSpan(0, points.Length);
        Fill(rests);
        OffsetDb = Sample.Mean(rests);
        Deviations.Less(OffsetDb, rests);

        // A few units in the last place at most, all alike: with them the mean of the rests is exact.
        _residueDb = Sample.Mean(rests);
        Deviations.Less(_residueDb, rests);
        ShapeDb = Math.Sqrt(Deviations.Product(rests, rests) / rests.Length);
        ArrayPool<double>.Shared.Return(room);
    }

    /// <inheritdoc/>
    public int Count => _points.Length;

    /// <summary>What the sweep lies above the middle as a whole.</summary>
    internal double OffsetDb { get; }

    /// <summary>Root mean square of the rests.</summary>
    internal double ShapeDb { get; }

    /// <inheritdoc/>
    public double this[int place] => _block[_row][_points[place]] - _middle.Rows[0][place] - OffsetDb - _residueDb;

    /// <summary>Writes all of them into room for as many.</summary>
    public void CopyTo(Span<double> rests)
    {
        Fill(rests);
        Deviations.Less(OffsetDb, rests);
        Deviations.Less(_residueDb, rests);
    }

    /// <summary>The largest of them, whatever its sign, in dB.</summary>
    public double FarthestDb()
    {
        double farthest = 0;
        ReadOnlySpan<double> levels = _block[_row], middle = _middle.Rows[0];
        for (int place = 0; place < middle.Length; place++)
        {
            farthest = Math.Max(farthest, Math.Abs(levels[_points[place]] - middle[place] - OffsetDb - _residueDb));
        }

        return farthest;
    }

    /// <inheritdoc/>
    public IEnumerator<double> GetEnumerator()
    {
        for (int place = 0; place < Count; place++)
        {
            yield return this[place];
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private void Fill(Span<double> away)
    {
        ReadOnlySpan<double> levels = _block[_row], middle = _middle.Rows[0];
        for (int p = 0; p < away.Length; p++)
        {
            away[p] = levels[_points[p]] - middle[p];
        }
    }
}
