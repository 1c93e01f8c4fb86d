using SweepStats.Alignment;
using SweepStats.Doubts;
using SweepStats.Floor;
using SweepStats.Leakage;
using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Storage;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

namespace SweepStats.Shielding;

/// <summary>Turns reference, covered and floor sweeps into shielding over frequency.</summary>
/// <remarks><see cref="Estimate(SpecimenBlock)"/> may be called from many threads.</remarks>
public sealed class ShieldingEstimator
{
    // A reference that rises less than this leaves no range to speak of.
    private const double LeastReferenceRiseDb = 10;
    private const double ClearRiseDb = 10;

    // What is left of a subtracted leakage differs from frequency to frequency, so that a mean over the band has little of it.
    private const double NormalReach = 1.96;

    // A voltage of unknown phase so far below changes the level by less than 1 dB.
    private const double ClearOfLeakageDb = 20;

    private readonly FrequencyGrid _grid;
    private readonly RepeatedLevels _reference;
    private readonly double[] _referenceSlopes;
    private readonly NoiseFloor? _floor;
    private readonly Confidence _confidence;
    private readonly SystematicError _typeB;
    private readonly LeakageLevels _leakage;
    private readonly SerialCorrelation _together;
    private readonly CoveredScatter? _scatter;
    private readonly DetectionLimits _limits = new();
    private readonly ReadingSurroundings _beside;
    private readonly RowStore _store;

    /// <summary>Prepares the estimate for all specimens of a campaign.</summary>
    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="floor">The floor; null where none is known.</param>
    /// <param name="confidence">Two-sided level.</param>
    /// <param name="uncertainties">Uncertainties that repeats do not show.</param>
    /// <param name="leakage">What else reaches the receiver; nothing unless given.</param>
    /// <param name="together">Whether repeats go together in the order taken; unless given they count as independent.</param>
    /// <param name="threads">Threads to prepare with; the result does not depend on it.</param>
    public ShieldingEstimator(
        AlignedCampaign campaign, NoiseFloor? floor, Confidence confidence, ImmutableArray<UncertaintyEntry> uncertainties,
        LeakageLevels? leakage = null, SerialCorrelation? together = null, int threads = 1)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        _grid = campaign.Grid;
        // The display is the receiver's: what one role shows of its steps holds for the others.
        double[] roundings =
            SideBySide.Of(campaign.Covered.Length, threads, i => DisplayStep.Deviation(campaign.Covered[i].Block));
        double rounding = roundings.Append(campaign.Floor is null ? 0 : DisplayStep.Deviation(campaign.Floor)).Max();
        _together = together ?? SerialCorrelation.Untested;
        _reference = RepeatedLevels.From(campaign.Reference, rounding, RepeatKind.Reference, _together);
        _floor = floor;
        _referenceSlopes = CurveSpread.Slopes(_reference, floor);
        _scatter = floor is null ? null : new CoveredScatter(campaign.Covered, floor);
        _confidence = confidence;
        _typeB = new SystematicError(uncertainties);
        _leakage = leakage ?? LeakageLevels.None;
        _store = campaign.Store;
        _beside = Surroundings();
    }

    /// <summary>Shielding of one specimen against which nothing stands.</summary>
    public ShieldingCurve Estimate(SpecimenBlock specimen) => Estimate(specimen, SpecimenDoubts.None);

    /// <summary>Shielding of one specimen.</summary>
    /// <param name="specimen">Its sweeps.</param>
    /// <param name="doubts">What may have moved it beside scatter and noise.</param>
    public ShieldingCurve Estimate(SpecimenBlock specimen, SpecimenDoubts doubts)
    {
        ArgumentNullException.ThrowIfNull(specimen);
        ArgumentNullException.ThrowIfNull(doubts);
        RepeatedLevels covered = RepeatedLevels.From(specimen.Block, _reference.RoundingDb, RepeatKind.Covered, _together);
        var measured = new CurveLevels(_reference, covered, _floor, _typeB, _leakage);
        ImmutableArray<ReadingEstimator> estimators = measured.Estimators(_confidence);
        var range = _floor is null ? null
            : new RangeFinder(_floor, estimators, _limits, _reference, covered, _leakage.Beside, SignalDeviation(covered));
        var readings = new ReadingColumns(_beside);
        var half = new double[_grid.Count];
        for (int f = 0; f < _grid.Count; f++)
        {
            ReadingLevels levels = measured[f];
            // A transmitter is no noise: it beats with the signal and comes and goes, so nothing is taken out of the reading and
            // only a bound remains.
            bool noise = _floor is not null && !_floor.Ambient[f];
            EnvelopeLimits limits = EnvelopeLimits.Of(levels, estimators, noise, measured.Repeated);
            bool behind = limits.Capped && noise && ShownDb(f) is null && BoundedWithoutLeakage(levels, estimators);
            ShieldingReading reading =
                Read(f, levels, limits, new ReadingSetup(measured.Repeated, range?.At(f), doubts.At(f), behind));
            readings.Put(f, reading);
            half[f] = limits.HalfWidthDb
                + (reading is ShieldingReading.Measured { Shielding.Value.Value: var se }
                    ? LeakageLaw.HalfWidthDb(se, levels) : 0)
                + (NormalReach * measured.RemainderDb(f) / Math.Sqrt(_grid.Count));
        }

        return new ShieldingCurve
        {
            Name = specimen.Name,
            Readings = readings.Kept(_store),
            SweepCount = covered.SweepCount,
            PlacementCount = covered.PlacementCount,
            RepeatabilityDb = covered.RepeatabilityDb,
            RoundingDb = Math.Max(_reference.RoundingDb, covered.RoundingDb),
            Levels = measured,
            Spread = new CurveSpread(_reference, covered, _floor, new KnownErrors(_typeB, half, _referenceSlopes)),
        };
    }

    private ReadingSurroundings Surroundings()
    {
        var beside = new ReadingSurroundings(_grid.Hertz.ToArray(), new double[_grid.Count], new double[_grid.Count],
            new double[_grid.Count]);
        for (int f = 0; f < _grid.Count; f++)
        {
            beside.ReferenceDb[f] = _reference.MeanDb(f);
            beside.FloorDb[f] = _floor is null ? double.NaN : PowerSum(_floor.LevelDb[f], ShownDb(f));
            beside.LeakageDb[f] = ShownDb(f) ?? double.NaN;
        }

        return beside;
    }

    private double? ShownDb(int f) =>
        _leakage.ShownDb.IsEmpty || double.IsNegativeInfinity(_leakage.ShownDb[f]) ? null : _leakage.ShownDb[f];

    private static bool BoundedWithoutLeakage(in ReadingLevels levels, ImmutableArray<ReadingEstimator> estimators) =>
        !levels.Leakage.IsNone && !EnvelopeLimits.Of(levels with { Leakage = LeakageLevel.None }, estimators, floorKnown: true,
            repeated: false).Capped;

    // Placements, or what the specimen itself does, may scatter the signal more than the reference shows; less is not to be
    // counted on.
    private double SignalDeviation(RepeatedLevels covered) =>
        Math.Max(_reference.Repeated ? _reference.UnitDeviationDb() : 0, _scatter?.DeviationDb(covered) ?? 0);

    private ShieldingReading Read(int f, in ReadingLevels levels, in EnvelopeLimits limits, in ReadingSetup setup)
    {
        bool ambient = _floor is not null && _floor.Ambient[f];
        bool referenceInFloor = _floor is not null && levels.Reference.MeanDb - levels.Floor.MeanDb < LeastReferenceRiseDb;
        var evidence = new ReadingEvidence
        {
            At = _grid[f],
            ReferenceDb = levels.Reference.MeanDb,
            CoveredDb = levels.Covered.MeanDb,
            FloorDb = ReadingEvidence.Known(_beside.FloorDb[f]),
            LeakageDb = ShownDb(f),
            HiddenBehindPlate = setup.BehindPlate,
            DynamicRange = setup.RangeDb is { } db ? new Decibels(db) : null,
            StandardUncertaintyDb = setup.Repeated ? limits.StandardUncertaintyDb : null,
            DegreesOfFreedom = setup.Repeated ? limits.DegreesOfFreedom : null,
            OneSidedLow = setup.Repeated && double.IsFinite(limits.OneSidedLowDb) ? new Decibels(limits.OneSidedLowDb) : null,
            Ambient = ambient,
            HiddenByFloor = _floor is not null && !ambient && limits.Capped && !setup.BehindPlate,
            Doubts = setup.Doubts,
            ReferenceInFloor = referenceInFloor,
        };
        if (DoubtedReading.Of(evidence, limits) is { } doubted)
        {
            return doubted;
        }

        ShieldingState state = _floor is null ? ShieldingState.NoFloor
            : IsClear(levels, ShownDb(f)) ? ShieldingState.Clear : ShieldingState.NearFloor;
        if (!setup.Repeated && !limits.Capped && !ambient)
        {
            return new ShieldingReading.Unrepeated(state, evidence, new Decibels(limits.SeDb));
        }

        if (limits.Capped || referenceInFloor || ambient || _floor is null)
        {
            return Bound(_floor is null ? ShieldingState.NoFloor : ShieldingState.Capped, evidence, limits.LowDb);
        }

        var estimate = new ShieldingEstimate(new Decibels(limits.SeDb), new Decibels(limits.LowDb),
            new Decibels(limits.HighDb), _confidence);
        return double.IsFinite(limits.LowDb)
            ? new ShieldingReading.Measured(state, evidence, estimate)
            : Bound(ShieldingState.Capped, evidence, limits.LowDb);
    }

    private static bool IsClear(in ReadingLevels levels, double? leakageDb) =>
        levels.Covered.MeanDb - levels.Floor.MeanDb >= ClearRiseDb && !(levels.Covered.MeanDb - leakageDb < ClearOfLeakageDb);

    // What floor sweeps show.
    private static double PowerSum(double noise, double? leakageDb) =>
        leakageDb is { } leakage ? 10 * Math.Log10(Math.Pow(10, noise / 10) + Math.Pow(10, leakage / 10)) : noise;

    private static ShieldingReading Bound(ShieldingState state, ReadingEvidence evidence, double low) => double.IsFinite(low)
        ? new ShieldingReading.AtLeast(state, evidence, new Decibels(low))
        : new ShieldingReading.Unreadable(state, evidence,
            "The reference does not rise clearly over the floor, so not even a lower bound can be had.");
}
