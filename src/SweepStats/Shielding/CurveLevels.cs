using SweepStats.Floor;
using SweepStats.Leakage;
using SweepStats.Statistics;
using SweepStats.Storage;
using SweepStats.Uncertainty;

namespace SweepStats.Shielding;

/// <summary>The levels behind a curve, kept so that limits of another confidence can be had later.</summary>
internal sealed class CurveLevels(RepeatedLevels reference, RepeatedLevels covered, NoiseFloor? floor, SystematicError typeB,
    LeakageLevels leakage)
{
    private readonly double _noiseDb = floor is null ? 0 : floor.Noise.Max(n => n.LogStandardDeviation);

    // The smaller of what reference and covered show where they stand far above the floor: taking out too much would claim too
    // much.
    private readonly Lazy<double> _signalDeviation =
        new(() => Math.Min(Scatter(reference, floor, 30) ?? 0, Scatter(covered, floor, 15) ?? double.PositiveInfinity));

    // Without a floor the readings are taken as they are: a floor far below, without error.
    public ReadingLevels this[int f] => new(
        Level(reference, f),
        WithRemainder(Level(covered, f), f),
        floor is null
            ? new RepeatedLevel(double.NegativeInfinity, Contribution.None)
            : new RepeatedLevel(floor.LevelDb[f], new Contribution(floor.StandardErrorDb[f], floor.DegreesOfFreedom[f])),
        typeB)
    {
        Leakage = leakage.Beside.IsEmpty ? LeakageLevel.None : leakage.Beside[f],
    };

    /// <summary>Where rows found from these are kept.</summary>
    public RowStore Store => covered.Store;

    /// <summary>Independent reference and covered repeats: sweeps, or placements where those are named.</summary>
    public (int Reference, int Covered) Units => (reference.UnitCount, covered.UnitCount);

    /// <summary>Whether the independent covered repeats are placements.</summary>
    public bool ByPlacement => covered.PlacementCount > 1;

    /// <summary>Whether reference and covered levels both repeat, so that there is an interval.</summary>
    public bool Repeated => reference.Repeated && covered.Repeated;

    /// <summary>Whether a floor was measured or declared.</summary>
    public bool FloorKnown => floor is not null;

    /// <summary>Floor sweeps; 0 where the floor is declared or not known.</summary>
    public int FloorSweeps => floor?.SweepCount ?? 0;

    /// <summary>
    /// One estimator for each way of averaging that has to be reckoned with, and each end of where a declared floor may lie.
    /// </summary>
    public ImmutableArray<ReadingEstimator> Estimators(Confidence confidence)
    {
        var readings = new CoveredReadings(covered.SweepCount, covered.UnitCount, _signalDeviation.Value);
        return ReadingEstimator.All(floor?.Noise ?? [new DetectorNoise(double.PositiveInfinity)], floor?.HalfWidthDb ?? 0,
            confidence, readings);
    }

    /// <summary>
    /// Standard uncertainty in dB that what is left of a subtracted leakage adds to the covered level; 0 where none was
    /// subtracted.
    /// </summary>
    public double RemainderDb(int f) =>
        leakage.RemainderDb.IsEmpty ? 0 : LeakageLaw.NoiseOnALevelDb(leakage.RemainderDb[f] - covered[f].MeanDb);

    // The same in all sweeps, so that no repeat shows it; known from many frequencies.
    private RepeatedLevel WithRemainder(RepeatedLevel level, int f)
    {
        if (leakage.RemainderDb.IsEmpty)
        {
            return level;
        }

        ReadOnlySpan<Contribution> parts = [level.Error, new Contribution(RemainderDb(f), double.PositiveInfinity)];
        double usual = level.UsualErrorDb == 0 ? 0
            : Math.Sqrt((level.UsualErrorDb * level.UsualErrorDb) + (RemainderDb(f) * RemainderDb(f)));
        return level with
        {
            Error = new Contribution(WelchSatterthwaite.Combined(parts),
            WelchSatterthwaite.DegreesOfFreedom(parts)),
            UsualErrorDb = usual,
        };
    }

    // A single sweep shows no scatter; noise scatters it all the same, by as much as the floor tells.
    private RepeatedLevel Level(RepeatedLevels levels, int f)
    {
        RepeatedLevel level = levels[f];
        return levels.Repeated ? level : level with
        {
            Error =
            new Contribution(Math.Sqrt((_noiseDb * _noiseDb / levels.SweepCount) + (levels.RoundingDb * levels.RoundingDb)),
                double.PositiveInfinity),
            UsualErrorDb = 0,
        };
    }

    // Pooled over the frequencies where the level rises by that much, noise adding next to nothing there; null where there are
    // none.
    private static double? Scatter(RepeatedLevels levels, NoiseFloor? floor, double riseDb)
    {
        if (floor is null || !levels.Repeated)
        {
            return null;
        }

        double variance = 0;
        int count = 0;
        for (int f = 0; f < levels.PointCount; f++)
        {
            if (!floor.Ambient[f] && levels.MeanDb(f) - floor.LevelDb[f] >= riseDb)
            {
                double error = levels.IndependentErrorDb(f);
                variance += error * error * levels.UnitCount;
                count++;
            }
        }

        return count == 0 ? null : Math.Sqrt(variance / count);
    }
}
