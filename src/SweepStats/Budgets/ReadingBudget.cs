using SweepStats.Doubts;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Budgets;

/// <summary>Uncertainty budget of the shielding at one frequency.</summary>
internal sealed class ReadingBudget
{
    private readonly ShieldingCurve _curve;
    private readonly CurveLevels _levels;
    private readonly ImmutableArray<StatedError> _errors;
    private readonly ImmutableArray<ReadingEstimator> _estimators;
    private readonly Confidence _confidence;

    /// <param name="curve">The specimen's, repeated.</param>
    /// <param name="errors">The stated errors.</param>
    /// <param name="confidence">Level of the intervals.</param>
    public ReadingBudget(ShieldingCurve curve, ImmutableArray<StatedError> errors, Confidence confidence)
    {
        (_curve, _levels, _errors, _confidence) = (curve, curve.Levels!, errors, confidence);
        _estimators = _levels.Estimators(confidence);
    }

    /// <summary>The budget at a place, by the least certain estimator; of plain means with no floor or beside ambient.</summary>
    public ShieldingBudget At(int f)
    {
        ShieldingReading reading = _curve.Readings[f];
        bool plain = !_levels.FloorKnown || reading.Evidence.Ambient;
        ReadingEstimator way = plain ? _estimators[0] : _estimators.MaxBy(e => e.TwoSided(_levels[f]).StandardUncertaintyDb)!;
        ReadingLevels levels = plain ? _levels[f] : way.Corrected(_levels[f]);
        var inputs = new BudgetInputs();
        inputs.Mean(BudgetPart.Reference, levels.Reference.MeanDb, levels.Reference.Error);
        inputs.Mean(BudgetPart.Covered, levels.Covered.MeanDb, levels.Covered.Error);
        if (!plain)
        {
            inputs.Mean(BudgetPart.Floor, levels.Floor.MeanDb, levels.Floor.Error);
        }

        double leakage = LeakageLaw.HalfWidthDb(
            (plain ? WithoutFloor.Limits(_levels[f], _confidence) : way.TwoSided(_levels[f])).SeDb, _levels[f]);
        if (leakage > 0)
        {
            inputs.Leakage(leakage);
        }

        foreach (StatedError error in _errors)
        {
            inputs.Stated(error);
        }

        double least = way.Noise.LeastRiseDb + SignalInNoise.LeastRiseDb;
        bool clear = plain || Math.Min(levels.Covered.MeanDb, levels.Reference.MeanDb) - levels.Floor.MeanDb >= least;
        bool sloped = reading.Evidence.Doubts == ReadingDoubts.None && clear;
        var model = new ShieldingModel(plain ? null : way.Law, leakage > 0, _errors);
        double degreesOfFreedom = reading.Evidence.DegreesOfFreedom ?? double.PositiveInfinity;
        return new ShieldingBudget(model.Shielding, inputs.Inputs, inputs.Lines, sloped, degreesOfFreedom)
        {
            Name = _curve.Name,
            At = reading.Evidence.At,
            Confidence = _confidence,
            Reported = Reported(reading),
            Doubts = reading.Evidence.Doubts,
            ByPlacement = _levels.ByPlacement,
            LeakageBehindPlate = leakage > 0 && reading.Evidence.LeakageDb is null,
            LargestOfSeveral = !plain && _estimators.Length > 1,
        };
    }

    private static Interval Reported(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured m => new Interval(m.Shielding.Low.Value, m.Shielding.High.Value),
        ShieldingReading.AtLeast a => new Interval(a.Bound.Value, double.PositiveInfinity),
        _ => new Interval(double.NegativeInfinity, double.PositiveInfinity),
    };
}
