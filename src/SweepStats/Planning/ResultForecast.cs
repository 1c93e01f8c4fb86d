using System.Collections.Immutable;
using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Planning;

/// <summary>What a campaign will show of a specimen of given shielding at one frequency, near the floor too.</summary>
/// <remarks>
/// Chance is drawn evenly (<see cref="ChanceGrid"/>) for the reference and covered means, the noise in the covered mean, the floor and both sample variances;
/// each draw goes through the interval that an analysis uses. Where the averaging is not known, the way of averaging that shows least counts.
/// Noise in a mean of readings is drawn with its skewness; that mean and variance of skewed readings go together is left out.
/// Error: shares to about 0.02 (see the planning study).
/// </remarks>
public sealed class ResultForecast
{
    private readonly PlanBasis _basis;
    private readonly SweepNumbers _numbers;
    private readonly Chance _chance;
    private readonly ImmutableArray<ReadingEstimator> _weak, _strong;

    /// <summary>Prepares forecasts for one set-up and one number of sweeps.</summary>
    /// <param name="basis">What is known of the set-up; its noise must be known.</param>
    /// <param name="numbers">Sweeps taken, repeated in both roles.</param>
    /// <param name="confidence">Two-sided level; claims have the whole of it on one side.</param>
    /// <exception cref="ArgumentException">The floor is not known, or something does not repeat.</exception>
    public ResultForecast(PlanBasis basis, SweepNumbers numbers, Confidence confidence)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Noise.IsDefaultOrEmpty || !numbers.Repeated)
        {
            throw new ArgumentException("A forecast needs to know the noise, and repeats of reference and covered.");
        }

        _basis = basis;
        _numbers = numbers;
        _chance = new Chance(numbers);
        double scatter = Math.Min(basis.ReferenceDeviationDb, Math.Sqrt(basis.UnitVariance(numbers)));
        _strong = Estimators(confidence, scatter);
        _weak = Estimators(confidence, 0);
    }

    /// <summary>Largest shielding that is bounded from both sides in 95 of 100 campaigns, in dB; not below 0.</summary>
    /// <param name="rangeDb">Displayed reference less displayed floor.</param>
    public double UsableRangeDb(double rangeDb)
    {
        double range = double.PositiveInfinity;
        foreach (ReadingEstimator e in _strong)
        {
            double weakest = new DetectionLimit(e.Noise, e.Confidence)
                .SignalToNoise(_numbers.CoveredSweeps, _numbers.Units, _basis.ReferenceDeviationDb, _basis.FloorError.StandardUncertainty);
            range = Math.Min(range, e.Noise.SnrInDecibels(rangeDb - e.FloorShiftDb) - weakest);
        }

        return Math.Max(0, range);
    }

    /// <summary>What campaigns show.</summary>
    /// <param name="shieldingDb">True shielding.</param>
    /// <param name="rangeDb">Displayed reference less displayed floor.</param>
    public ExpectedResult At(double shieldingDb, double rangeDb)
    {
        ExpectedResult[] each = [.. _basis.Noise.Select(noise => Drawn(noise, shieldingDb, rangeDb))];
        return each.MinBy(r => r.MedianLowDb)!;
    }

    /// <summary>Share of campaigns whose one-sided lower limit reaches a claim.</summary>
    /// <param name="claimDb">Shielding to be claimed.</param>
    /// <param name="shieldingDb">True shielding.</param>
    /// <param name="rangeDb">Displayed reference less displayed floor.</param>
    public double ClaimShare(double claimDb, double shieldingDb, double rangeDb) =>
        _basis.Noise.Min(noise => Drawn(noise, shieldingDb, rangeDb).OneSidedLowDb.Count(low => low >= claimDb) / (double)ChanceGrid.Points);

    private ExpectedResult Drawn(DetectorNoise noise, double shieldingDb, double rangeDb)
    {
        double reference = noise.SnrInDecibels(rangeDb);
        double snr = reference - shieldingDb;
        double rise = noise.Rise(Math.Pow(10, snr / 10));
        double slope = SignalInNoise.Slope(rise, noise) is var steep && double.IsFinite(steep) ? 1 / steep : 0;
        double unit = _basis.UnitVariance(_numbers);
        var level = new Level(
            rangeDb,
            Math.Sqrt((_basis.ReferenceDeviationDb * _basis.ReferenceDeviationDb) + NoisyLevel.Variance(noise, reference)),
            snr,
            Math.Sqrt(unit),
            Math.Sqrt((slope * slope * unit) + (NoisyLevel.Variance(noise, snr) * _numbers.Units / _numbers.CoveredSweeps)));
        double[] noiseInMean = _chance.NoiseInMean(NoisyLevel.Like(noise, snr), _numbers.CoveredSweeps);
        ImmutableArray<ReadingEstimator> estimators = rangeDb >= 30 ? _strong : _weak;
        double[] low = new double[ChanceGrid.Points], high = new double[low.Length], oneSided = new double[low.Length];
        for (int i = 0; i < low.Length; i++)
        {
            EnvelopeLimits limits = EnvelopeLimits.Of(Reading(noise, level, noiseInMean[i], i), estimators, floorKnown: true, repeated: true);
            (low[i], high[i], oneSided[i]) = (limits.LowDb, limits.HighDb, limits.OneSidedLowDb);
        }

        return new ExpectedResult
        {
            MedianLowDb = Sample.Median(low),
            MedianHighDb = Sample.Median(high),
            BoundedShare = high.Count(double.IsFinite) / (double)high.Length,
            OneSidedLowDb = [.. oneSided],
        };
    }

    // One campaign: the floor truly reads 0 dB.
    private ReadingLevels Reading(DetectorNoise noise, Level level, double noiseInMean, int i)
    {
        double rounding = _basis.RoundingDb * _basis.RoundingDb;
        double referenceError = level.ReferenceDeviation * Math.Sqrt(_chance.ReferenceRatio[i] / _numbers.ReferenceSweeps);
        double coveredError = level.ReadDeviation * Math.Sqrt(_chance.CoveredRatio[i] / _numbers.Units);
        double snr = level.Snr + (level.UnitDeviation / Math.Sqrt(_numbers.Units) * _chance.Covered[i]);
        double covered = noise.Rise(Math.Pow(10, snr / 10)) + noiseInMean;
        return new ReadingLevels(
            new RepeatedLevel(
                level.Range + (level.ReferenceDeviation / Math.Sqrt(_numbers.ReferenceSweeps) * _chance.Reference[i]),
                new Contribution(Math.Sqrt((referenceError * referenceError) + rounding), _numbers.ReferenceSweeps - 1)),
            new RepeatedLevel(covered, new Contribution(Math.Sqrt((coveredError * coveredError) + rounding), _numbers.Units - 1)),
            new RepeatedLevel(_basis.FloorError.StandardUncertainty * _chance.Floor[i], _basis.FloorError),
            new Contribution(_basis.TypeBDb, double.PositiveInfinity));
    }

    private ImmutableArray<ReadingEstimator> Estimators(Confidence confidence, double scatter)
    {
        double[] shifts = _basis.FloorHalfWidthDb > 0 ? [-_basis.FloorHalfWidthDb, _basis.FloorHalfWidthDb] : [0];
        var covered = new CoveredReadings(_numbers.CoveredSweeps, scatter);
        return [.. from noise in _basis.Noise from shift in shifts select new ReadingEstimator(noise, shift, confidence, covered)];
    }

    private readonly record struct Level(double Range, double ReferenceDeviation, double Snr, double UnitDeviation, double ReadDeviation);

    private sealed class Chance(SweepNumbers numbers)
    {
        private readonly double[] _noise = ChanceGrid.Probabilities(2);

        public double[] Reference { get; } = ChanceGrid.Normals(0);

        public double[] Covered { get; } = ChanceGrid.Normals(1);

        public double[] Floor { get; } = ChanceGrid.Normals(3);

        public double[] CoveredRatio { get; } = ChanceGrid.VarianceRatios(4, numbers.Units - 1);

        public double[] ReferenceRatio { get; } = ChanceGrid.VarianceRatios(5, numbers.ReferenceSweeps - 1);

        public double[] NoiseInMean(DetectorNoise noise, int readings) => [.. _noise.Select(p => noise.CriticalRise(readings, p))];
    }
}
