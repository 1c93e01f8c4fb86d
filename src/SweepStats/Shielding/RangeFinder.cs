using System.Collections.Immutable;
using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Shielding;

/// <summary>Usable dynamic range at each frequency: reference level minus the weakest signal that this set-up bounds from both sides.</summary>
/// <remarks>With single sweeps nothing is bounded; the range is then the reference over what noise alone would do.</remarks>
internal sealed class RangeFinder(NoiseFloor floor, ImmutableArray<ReadingEstimator> estimators, RepeatedLevels reference, RepeatedLevels covered)
{
    private readonly double _signalDeviation = reference.Repeated ? reference.UnitDeviationDb() : 0;
    private readonly DetectionLimit[] _limits = [.. estimators.Select(e => new DetectionLimit(e.Noise, e.Confidence))];
    private readonly Dictionary<Contribution, double>[] _weakest = [.. estimators.Select(_ => new Dictionary<Contribution, double>())];

    /// <summary>The range in dB; not below 0.</summary>
    public double At(int f)
    {
        double range = double.PositiveInfinity;
        for (int i = 0; i < estimators.Length; i++)
        {
            DetectorNoise noise = estimators[i].Noise;
            double floorLevel = floor.LevelDb[f] + estimators[i].FloorShiftDb;
            double level = SignalInNoise.Level(reference[f].MeanDb, floorLevel, noise);
            double weakest = floorLevel - noise.LogMeanOffset + WeakestSnr(i, new Contribution(floor.StandardErrorDb[f], floor.DegreesOfFreedom[f]));
            range = Math.Min(range, level - weakest);
        }

        return Math.Max(0, range);
    }

    // The floor's error takes few values, as many as there are window widths.
    private double WeakestSnr(int estimator, Contribution floorError)
    {
        if (!_weakest[estimator].TryGetValue(floorError, out double snr))
        {
            ReadingEstimator e = estimators[estimator];
            snr = covered.Repeated
                ? _limits[estimator].SignalToNoise(covered.SweepCount, covered.UnitCount, _signalDeviation, floorError)
                : e.Noise.StrongestSnrInDecibels(
                    e.Noise.LeastRiseDb + Math.Max(SignalInNoise.LeastRiseDb, e.Noise.CriticalRise(covered.SweepCount,
                        e.Confidence.TwoSidedQuantile)));
            _weakest[estimator].Add(floorError, snr);
        }

        return snr;
    }
}
