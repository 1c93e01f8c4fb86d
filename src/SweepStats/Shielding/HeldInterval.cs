using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Shielding;

/// <summary>Limits of the shielding at one end of what readings of a kept look leave possible.</summary>
/// <remarks>
/// The estimate is the end itself (<see cref="HeldLaw"/>); errors of reference, covered and floor are added by recovering their
/// limits, as
/// <see cref="ShieldingInterval"/> does, and with the same factors, so that far above the floor both ends meet in Welch's
/// interval. The envelope of the
/// two ends is the interval, its middle the estimate. The end of the most shielding is open unless the covered mean clears the
/// noise amplitude of the floor by more than its own error and that of the floor, and by more than noise alone would. Both ends
/// are limits already, so that near the floor the interval holds more often than promised; the means lean less than those of
/// single looks, and their skewness is left out.
/// </remarks>
/// <param name="noise">Noise of a kept look.</param>
/// <param name="most">The end of the most shielding.</param>
/// <param name="confidence">Two-sided level.</param>
/// <param name="covered">Readings behind the covered mean.</param>
internal sealed class HeldInterval(HeldNoise noise, bool most, Confidence confidence, CoveredReadings covered)
    : IReadingInterval
{
    private readonly StudentQuantile _student = StudentQuantile.Of(confidence.TwoSidedQuantile);
    private readonly double _criticalRise = noise.CriticalRise(covered.Count, confidence.TwoSidedQuantile);
    private readonly double _inReference = most ? noise.UnseenAmplitude : -noise.LeastAmplitude;
    private readonly double _inCovered = most ? -noise.LeastAmplitude : noise.UnseenAmplitude;

    // Where nothing clears the floor the slope grows without bound and says nothing about the interval any more.
    private readonly double _leastSloped = HeldAmplitude.Of(noise.LeastRiseDb + SignalInNoise.LeastRiseDb);

    /// <inheritdoc/>
    public double Rise(in ReadingLevels levels) => levels.Covered.MeanDb - levels.Floor.MeanDb;

    /// <inheritdoc/>
    public ReadingBasis Basis(in ReadingLevels levels)
    {
        double rise = Rise(levels);
        HeldAmplitude reference = new(HeldAmplitude.Of(levels.Reference.MeanDb - levels.Floor.MeanDb), _inReference);
        HeldAmplitude under = new(HeldAmplitude.Of(rise), _inCovered);
        HeldAmplitude referenceSloped = Sloped(reference), underSloped = Sloped(under);
        double slopeReference = referenceSloped.SlopeOfReading, slopeCovered = underSloped.SlopeOfReading;
        ReadOnlySpan<Contribution> parts =
        [
            levels.Reference.Error.Scaled(slopeReference), levels.Covered.Error.Scaled(slopeCovered),
            levels.Floor.Error.Scaled(referenceSloped.SlopeOfFloor - underSloped.SlopeOfFloor),
            new Contribution(levels.TypeB.StandardUncertainty, levels.TypeB.DegreesOfFreedom),
        ];
        return new ReadingBasis
        {
            Levels = levels,
            Rise = rise,
            CoverageFreedom = CoverageFreedom.Of(new(levels.Reference, slopeReference), new(levels.Covered, slopeCovered)),
            ReferenceSignal = HeldAmplitude.Level(reference.Signal),
            CoveredSignal = HeldAmplitude.Level(under.Signal),
            StandardUncertainty = WelchSatterthwaite.Combined(parts),
            DegreesOfFreedom = CoverageFreedom.OfAll(
                parts, new(levels.Reference, slopeReference), new(levels.Covered, slopeCovered)),
            ReferenceAmplitude = reference.Reading,
            CoveredAmplitude = under.Reading,
        };
    }

    /// <inheritdoc/>
    public ShieldingLimits Lower(in ReadingBasis basis) => Limits(basis, upper: false);

    /// <inheritdoc/>
    public ShieldingLimits Upper(in ReadingBasis basis) => Limits(basis, lower: false);

    /// <inheritdoc/>
    public ShieldingLimits For(in ReadingBasis basis) => Limits(basis);

    // An end that is not asked for is left open.
    private ShieldingLimits Limits(in ReadingBasis basis, bool lower = true, bool upper = true)
    {
        double dof = basis.CoverageFreedom;
        Parts reach = Reach(basis.Levels, _student.At(dof));
        Parts factors = new(HeldAmplitude.Of(reach.Reference), HeldAmplitude.Of(reach.Covered), HeldAmplitude.Of(reach.Floor));
        WidenedInterval typeB = basis.Levels.TypeB.Widened(confidence.TwoSidedQuantile);
        double se = basis.ReferenceSignal - basis.CoveredSignal;
        double low = lower ? se - typeB.Half(Less(basis, factors), dof) : double.NegativeInfinity;
        double high = upper && Clears(basis.Rise, reach) ? se + typeB.Half(More(basis, factors), dof) : double.PositiveInfinity;
        return new ShieldingLimits(
            se, double.IsNaN(low) ? se : low, double.IsNaN(high) ? double.PositiveInfinity : high,
            basis.StandardUncertainty, basis.DegreesOfFreedom);
    }

    // The floor keeps its own factor.
    private Parts Reach(in ReadingLevels levels, double t) => new(
        t * levels.Reference.Error.StandardUncertainty, t * levels.Covered.Error.StandardUncertainty,
        Expanded(levels.Floor.Error));

    // Least shielding comes from a reference that is too high, a covered level that is too low and a floor that is too low for
    // what is taken out of the reference or added to the covered signal; most shielding from the opposite, but for the floor,
    // which then takes too little from the covered one.
    private double Less(in ReadingBasis basis, Parts up) =>
        Moved(basis, new Parts(1 / up.Reference, up.Covered, most ? 1 / up.Floor : up.Floor));

    private double More(in ReadingBasis basis, Parts up) =>
        Moved(basis, new Parts(up.Reference, 1 / up.Covered, most ? up.Floor : 1 / up.Floor));

    // Root sum of squares of what each of the three moves the shielding by, given the factors on their amplitudes.
    private double Moved(in ReadingBasis basis, Parts by)
    {
        HeldAmplitude reference = new(basis.ReferenceAmplitude, _inReference), under = new(basis.CoveredAmplitude, _inCovered);
        double byReference = reference.Moved(by.Reference, 1), byCovered = under.Moved(by.Covered, 1);
        double byFloor = reference.Moved(1, by.Floor) - under.Moved(1, by.Floor);
        return Math.Sqrt((byReference * byReference) + (byCovered * byCovered) + (byFloor * byFloor));
    }

    private bool Clears(double rise, Parts reach)
    {
        double own = Math.Max(reach.Covered, _criticalRise);
        return !most || rise - noise.LeastRiseDb > Math.Sqrt((own * own) + (reach.Floor * reach.Floor));
    }

    private HeldAmplitude Sloped(HeldAmplitude of) => of with { Reading = Math.Max(of.Reading, _leastSloped) };

    private double Expanded(Contribution part) =>
        part.StandardUncertainty == 0 ? 0 : _student.At(part.DegreesOfFreedom) * part.StandardUncertainty;

    /// <summary>What belongs to each of the three log means.</summary>
    private readonly record struct Parts(double Reference, double Covered, double Floor);
}
