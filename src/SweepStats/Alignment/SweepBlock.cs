using System.Collections.Immutable;
using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>Sweeps of one kind on one grid, columnar: one row of levels in dB a sweep. Immutable.</summary>
public sealed class SweepBlock
{
    private readonly double[] _levels;
    private readonly double[]? _phases;

    internal SweepBlock(ImmutableArray<Sweep> sweeps, int pointCount, double[] levels, double[]? phases = null)
    {
        Sweeps = sweeps;
        PointCount = pointCount;
        _levels = levels;
        _phases = phases;
    }

    /// <summary>Whether every sweep carries phases.</summary>
    public bool HasPhases => _phases is not null;

    /// <summary>Phases of a sweep in degrees; only where all sweeps carry them.</summary>
    public ReadOnlySpan<double> Phases(int sweep) => _phases.AsSpan(sweep * PointCount, PointCount);

    /// <summary>The sweeps, in campaign order; their own levels are on their own grids.</summary>
    public ImmutableArray<Sweep> Sweeps { get; }

    /// <summary>Number of sweeps, at least 1.</summary>
    public int SweepCount => Sweeps.Length;

    /// <summary>Number of frequencies.</summary>
    public int PointCount { get; }

    /// <summary>The placement of each sweep, numbered from 0 as they come; sweeps without a placement's name form one.</summary>
    internal int[] Placements()
    {
        List<string?> names = [];
        var numbers = new int[SweepCount];
        for (int j = 0; j < numbers.Length; j++)
        {
            numbers[j] = names.IndexOf(Sweeps[j].Placement);
            if (numbers[j] < 0)
            {
                numbers[j] = names.Count;
                names.Add(Sweeps[j].Placement);
            }
        }

        return numbers;
    }

    /// <summary>Levels of a sweep in dB.</summary>
    public ReadOnlySpan<double> this[int sweep] => _levels.AsSpan(sweep * PointCount, PointCount);
}
