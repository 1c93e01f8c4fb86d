using System.Collections.Immutable;
using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Shielding;

/// <summary>The levels behind a curve, kept so that limits of another confidence can be had later.</summary>
internal sealed class CurveLevels(RepeatedLevels reference, RepeatedLevels covered, NoiseFloor? floor, Contribution typeB)
{
    // Without a floor the readings are taken as they are: a floor far below, without error.
    public ReadingLevels this[int f] => new(
        reference[f],
        covered[f],
        floor is null
            ? new RepeatedLevel(double.NegativeInfinity, Contribution.None)
            : new RepeatedLevel(floor.LevelDb[f], new Contribution(floor.StandardErrorDb[f], floor.DegreesOfFreedom[f])),
        typeB);

    /// <summary>One estimator for each way of averaging that has to be reckoned with.</summary>
    public ImmutableArray<ReadingEstimator> Estimators(Confidence confidence) =>
        [.. (floor?.Noise ?? [new DetectorNoise(double.PositiveInfinity)]).Select(n => new ReadingEstimator(n, confidence, new CoveredReadings(covered.SweepCount, SignalDeviation())))];

    /// <summary>Upper limit of the two-sided interval at a frequency, for any confidence; infinite where the floor hides it.</summary>
    public double High(int f, ImmutableArray<ReadingEstimator> estimators) =>
        floor is null ? double.PositiveInfinity : EnvelopeLimits.Of(this[f], estimators, floorKnown: true, repeated: false).HighDb;

    // Taken from the reference, where it stands so far above the floor that noise adds nothing to it.
    private double SignalDeviation()
    {
        const double FarAboveDb = 30;
        if (floor is null || !reference.Repeated)
        {
            return 0;
        }

        for (int f = 0; f < reference.PointCount; f++)
        {
            if (reference[f].MeanDb - floor.LevelDb[f] < FarAboveDb)
            {
                return 0;
            }
        }

        return reference.UnitDeviationDb();
    }
}
