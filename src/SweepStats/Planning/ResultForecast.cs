using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Planning;

/// <summary>What a campaign will show of a specimen of given shielding at one frequency, near the floor too.</summary>
/// <remarks>
/// Campaigns are drawn reading by reading (<see cref="DrawnReadings"/>), and each goes through the interval that an analysis
/// uses. Where the averaging is not known, the way of averaging that shows least counts. Error: a share of 0.9 of 4 000 drawn
/// campaigns is right to 0.01 (two binomial deviations); of more than 100 covered sweeps fewer are drawn, down to 1 000, right to
/// 0.02.
/// </remarks>
public sealed class ResultForecast
{
    // A claim by the estimate alone, as near as an interval comes to it.
    private const double Middle = 0.5 + 1e-9;

    private readonly PlanBasis _basis;
    private readonly SweepNumbers _numbers;
    private readonly DrawnReadings _readings;
    private readonly Estimators _weak, _strong;

    // The share that succeeds and what is to be expected with the range there is are of the same campaigns.
    private DrawnCampaigns? _last;

    /// <summary>Prepares forecasts for one set-up and one number of sweeps.</summary>
    /// <param name="basis">What is known of the set-up; its noise must be known.</param>
    /// <param name="numbers">Sweeps taken, repeated in both roles.</param>
    /// <param name="confidence">Two-sided level of intervals.</param>
    /// <param name="claimLevel">One-sided level of claims, 0.5 or more; that of the intervals unless given.</param>
    /// <exception cref="ArgumentException">The floor is not known, or something does not repeat.</exception>
    public ResultForecast(PlanBasis basis, SweepNumbers numbers, Confidence confidence, Confidence? claimLevel = null)
    {
        ArgumentNullException.ThrowIfNull(basis);
        if (basis.Noise.IsDefaultOrEmpty || !numbers.Repeated)
        {
            throw new ArgumentException("A forecast needs to know the noise, and repeats of reference and covered.");
        }

        _basis = basis;
        _numbers = numbers;
        _readings = new DrawnReadings(basis, numbers);
        double scatter = Math.Min(basis.ReferenceDeviationDb, Math.Sqrt(basis.UnitVariance(numbers)));
        Confidence claims = new(Math.Max((claimLevel ?? confidence).Level, Middle));
        _strong = new Estimators(At(confidence, scatter), claims == confidence ? null : At(claims, scatter));
        _weak = new Estimators(At(confidence, 0), claims == confidence ? null : At(claims, 0));
    }

    /// <summary>Campaigns drawn for each share.</summary>
    public int Campaigns => _readings.Campaigns;

    /// <summary>Largest shielding that is bounded from both sides in 95 of 100 campaigns, in dB; not below 0.</summary>
    /// <param name="rangeDb">Displayed reference less displayed floor.</param>
    public double UsableRangeDb(double rangeDb)
    {
        double range = double.PositiveInfinity;
        foreach (ReadingEstimator e in _strong.Intervals)
        {
            double weakest = new DetectionLimit(e.Noise, e.Confidence, e.FloorShiftDb)
                .SignalToNoise(Repeats(), Math.Max(_basis.ReferenceDeviationDb, Math.Sqrt(_basis.UnitVariance(_numbers))),
                    _basis.FloorError);
            range = Math.Min(range, e.Noise.SnrInDecibels(rangeDb) - weakest);
        }

        return Math.Max(0, range);
    }

    /// <summary>What campaigns show.</summary>
    /// <param name="shieldingDb">True shielding.</param>
    /// <param name="rangeDb">Displayed reference less displayed floor.</param>
    public ExpectedResult At(double shieldingDb, double rangeDb) => Drawn(shieldingDb, rangeDb).MinBy(r => r.MedianLowDb)!;

    /// <summary>Share of campaigns whose one-sided lower limit reaches a claim.</summary>
    /// <param name="claimDb">Shielding to be claimed.</param>
    /// <param name="shieldingDb">True shielding.</param>
    /// <param name="rangeDb">Displayed reference less displayed floor.</param>
    public double ClaimShare(double claimDb, double shieldingDb, double rangeDb) =>
        Drawn(shieldingDb, rangeDb).Min(each => each.OneSidedLowDb.Count(low => low >= claimDb) / (double)Campaigns);

    /// <summary>
    /// Whether the share of <see cref="ClaimShare"/> is at least so large; campaigns are drawn only until that is settled.
    /// </summary>
    internal bool Reaches(double share, double claimDb, double shieldingDb, double rangeDb) =>
        _basis.Noise.All(
            noise => Reaches(share, claimDb, _readings.Draw(noise, rangeDb, shieldingDb).Select(Estimator(rangeDb).Limits)));

    private bool Reaches(double share, double claimDb, IEnumerable<DrawnLimits> campaigns)
    {
        int needed = (int)Math.Ceiling(share * Campaigns), held = 0, failed = 0;
        foreach (double low in campaigns.Select(c => c.ClaimLowDb))
        {
            _ = low >= claimDb ? held++ : failed++;
            if (held >= needed || Campaigns - failed < needed || IsSettled(held, held + failed, share))
            {
                break;
            }
        }

        return held >= share * (held + failed);
    }

    // Chernoff's bound: a share on the other side would show such a count once in 7e10 times.
    private static bool IsSettled(int held, int drawn, double share)
    {
        const double Rarer = 25;
        double found = (double)held / drawn;
        return share < 1 && drawn * (Surprise(found, share) + Surprise(1 - found, 1 - share)) > Rarer;
    }

    private static double Surprise(double found, double share) => found == 0 ? 0 : found * Math.Log(found / share);

    // Only a reference 30 dB over the floor shows an analysis how the signal scatters.
    private Estimators Estimator(double rangeDb) => rangeDb >= 30 ? _strong : _weak;

    private DetectionRepeats Repeats() => new(_numbers.CoveredSweeps, _numbers.Units)
    {
        VarianceFactor = _basis.UnitRepeats(_numbers).OfPilot(_numbers.Units),
        DegreesOfFreedom = _basis.UnitRepeats(_numbers).Freedom(_numbers.Units),
    };

    private ImmutableArray<ExpectedResult> Drawn(double shieldingDb, double rangeDb)
    {
        if (_last is not { } last || last.ShieldingDb != shieldingDb || last.RangeDb != rangeDb)
        {
            ImmutableArray<ExpectedResult> each = [.. _basis.Noise.Select(noise => Drawn(noise, shieldingDb, rangeDb))];
            _last = last = new DrawnCampaigns(shieldingDb, rangeDb, each);
        }

        return last.OfEachNoise;
    }

    private ExpectedResult Drawn(DetectorNoise noise, double shieldingDb, double rangeDb)
    {
        Estimators estimators = Estimator(rangeDb);
        DrawnLimits[] limits =
            [.. _readings.Draw(noise, rangeDb, shieldingDb).Select(estimators.Limits)];
        return new ExpectedResult
        {
            MedianLowDb = Sample.Median([.. limits.Select(l => l.Interval.LowDb)]),
            MedianHighDb = Sample.Median([.. limits.Select(l => l.Interval.HighDb)]),
            BoundedShare = limits.Count(l => !l.Interval.Capped) / (double)limits.Length,
            OneSidedLowDb = [.. limits.Select(l => l.ClaimLowDb)],
        };
    }

    private ImmutableArray<ReadingEstimator> At(Confidence confidence, double scatter) =>
        ReadingEstimator.All(_basis.Noise, _basis.FloorHalfWidthDb, confidence,
            new CoveredReadings(_numbers.CoveredSweeps, _numbers.Units, scatter));

    /// <param name="Interval">The two-sided interval of a campaign.</param>
    /// <param name="ClaimLowDb">Its one-sided lower limit in dB.</param>
    private readonly record struct DrawnLimits(EnvelopeLimits Interval, double ClaimLowDb);

    private sealed record DrawnCampaigns(double ShieldingDb, double RangeDb, ImmutableArray<ExpectedResult> OfEachNoise);

    private sealed record Estimators(ImmutableArray<ReadingEstimator> Intervals, ImmutableArray<ReadingEstimator>? Claims)
    {
        /// <summary>Interval and limit for a claim, open where nothing is shown; no limit lies above a bound alone.</summary>
        // Where only a bound is known, the bound that an analysis prints has to reach the claim too.
        public DrawnLimits Limits(ReadingLevels levels)
        {
            EnvelopeLimits interval = Of(levels, Intervals);
            double low = Claims is { } claims ? Of(levels, claims).OneSidedLowDb : interval.OneSidedLowDb;
            return new DrawnLimits(interval, interval.Capped ? Math.Min(low, interval.OneSidedLowDb) : low);
        }

        private static EnvelopeLimits Of(ReadingLevels levels, ImmutableArray<ReadingEstimator> estimators) =>
            Bounded(EnvelopeLimits.Of(levels, estimators, floorKnown: true, repeated: true));

        // A campaign whose reference does not rise over its floor shows nothing: neither end of its interval is known.
        private static EnvelopeLimits Bounded(EnvelopeLimits limits) => limits with
        {
            LowDb = double.IsNaN(limits.LowDb) ? double.NegativeInfinity : limits.LowDb,
            HighDb = double.IsNaN(limits.HighDb) ? double.PositiveInfinity : limits.HighDb,
            OneSidedLowDb = double.IsNaN(limits.OneSidedLowDb) ? double.NegativeInfinity : limits.OneSidedLowDb,
        };
    }
}
