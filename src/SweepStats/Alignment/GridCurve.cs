using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>The mean of sweeps of one kind on one grid.</summary>
internal sealed class GridCurve
{
    private readonly FrequencyGrid _grid;
    private readonly double[] _meanDb;

    /// <param name="sweeps">The sweeps, one at least.</param>
    public GridCurve(Sweep[] sweeps)
    {
        (_grid, Role, SweepCount) = (sweeps[0].Grid, sweeps[0].Role, sweeps.Length);
        _meanDb = new double[_grid.Count];
        foreach (Sweep sweep in sweeps)
        {
            for (int i = 0; i < _meanDb.Length; i++)
            {
                _meanDb[i] += sweep.Levels[i] / sweeps.Length;
            }
        }
    }

    /// <summary>What the sweeps were taken for; the first tells it of all.</summary>
    public SweepRole Role { get; }

    /// <summary>How many sweeps the mean is of.</summary>
    public int SweepCount { get; }

    /// <summary>Whether the sweeps have no reading at a frequency.</summary>
    public bool IsBetween(double hertz) => Place(hertz) is { IsMeasured: false };

    /// <summary>How far the nearest reading lies from a frequency, in Hz.</summary>
    public double AwayFrom(double hertz) => Math.Abs(_grid[_grid.NearestPoint(new Hertz(hertz))].Value - hertz);

    /// <summary>How far a level in dB interpolated at a frequency may be off; null where the sweeps do not reach it.</summary>
    public double? BoundDb(double hertz) => Place(hertz) is { } place ? Bend.BoundDb(_grid, _meanDb, place) : null;

    private GridPlace? Place(double hertz) => GridPlaces.Of(_grid, hertz, Role == SweepRole.Floor);
}
