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
internal sealed class HeldInterval(DetectorNoise noise, bool most, Confidence confidence, CoveredReadings covered)
    : IReadingInterval
{
    // For slopes: small against the bend of the law, large against rounding.
    private const double StepDb = 0.001;

    private readonly StudentQuantile _student = StudentQuantile.Of(confidence.TwoSidedQuantile);
    private readonly double _criticalRise = noise.CriticalRise(covered.Count, confidence.TwoSidedQuantile);
    private readonly HeldLaw _law = new(noise, most);

    public double Rise(ReadingLevels levels) => levels.Covered.MeanDb - levels.Floor.MeanDb;

    public ReadingBasis Basis(ReadingLevels levels) => new() { Levels = levels };

    public ShieldingLimits Lower(in ReadingBasis basis) => Limits(basis, upper: false);

    public ShieldingLimits Upper(in ReadingBasis basis) => Limits(basis, lower: false);

    public ShieldingLimits For(in ReadingBasis basis) => Limits(basis);

    // An end that is not asked for is left open.
    private ShieldingLimits Limits(in ReadingBasis basis, bool lower = true, bool upper = true)
    {
        ReadingLevels levels = basis.Levels;
        Means at = new(levels.Reference.MeanDb, levels.Covered.MeanDb, levels.Floor.MeanDb);
        Means slope = Slopes(at);
        double dof = CoverageFreedom.Of((levels.Reference, slope.Reference), (levels.Covered, slope.Covered));
        double t = _student.At(dof);
        Means reach = new(
            t * levels.Reference.Error.StandardUncertainty, t * levels.Covered.Error.StandardUncertainty,
                Expanded(levels.Floor.Error));
        WidenedInterval typeB = levels.TypeB.Widened(confidence.TwoSidedQuantile);
        double se = Shielding(at);
        double low = lower ? se - typeB.Half(Moved(at, reach, se, -1), dof) : double.NegativeInfinity;
        double high = upper && Clears(at, reach) ? se + typeB.Half(Moved(at, reach, se, 1), dof) : double.PositiveInfinity;
        ReadOnlySpan<Contribution> parts =
        [
            levels.Reference.Error.Scaled(slope.Reference), levels.Covered.Error.Scaled(slope.Covered),
            levels.Floor.Error.Scaled(slope.Floor),
            new Contribution(levels.TypeB.StandardUncertainty, levels.TypeB.DegreesOfFreedom),
        ];
        return new ShieldingLimits(
            se, double.IsNaN(low) ? se : low, double.IsNaN(high) ? double.PositiveInfinity : high,
            WelchSatterthwaite.Combined(parts),
            CoverageFreedom.OfAll(parts, (levels.Reference, slope.Reference), (levels.Covered, slope.Covered)));
    }

    // Least shielding comes from a reference that is too high, a covered level that is too low and a floor that is too low for
    // what is taken out of the reference or added to the covered signal; most shielding from the opposite, but for the floor,
    // which then takes too little from the covered one.
    private double Moved(Means at, Means reach, double se, int side)
    {
        double reference = Shielding(at with { Reference = at.Reference + (side * reach.Reference) }) - se;
        double under = Shielding(at with { Covered = at.Covered - (side * reach.Covered) }) - se;
        double floor = Shielding(at with { Floor = at.Floor + ((most ? side : -side) * reach.Floor) }) - se;
        return Math.Sqrt((reference * reference) + (under * under) + (floor * floor));
    }

    private bool Clears(Means at, Means reach)
    {
        double own = Math.Max(reach.Covered, _criticalRise);
        return !most || at.Covered - at.Floor - noise.LeastRiseDb > Math.Sqrt((own * own) + (reach.Floor * reach.Floor));
    }

    private Means Slopes(Means at)
    {
        // Where nothing clears the floor the slope grows without bound and says nothing about the interval any more.
        double least = at.Floor + noise.LeastRiseDb + SignalInNoise.LeastRiseDb;
        Means clear = new(Math.Max(at.Reference, least), Math.Max(at.Covered, least), at.Floor);
        return new Means(
            Slope(step => clear with { Reference = clear.Reference + step }),
            Slope(step => clear with { Covered = clear.Covered + step }),
            Slope(step => clear with { Floor = clear.Floor + step }));
    }

    private double Slope(Func<double, Means> moved) => (Shielding(moved(StepDb)) - Shielding(moved(-StepDb))) / (2 * StepDb);

    private double Shielding(Means at) => _law.Reference(at.Reference, at.Floor) - _law.Covered(at.Covered, at.Floor);

    private double Expanded(Contribution part) =>
        part.StandardUncertainty == 0 ? 0 : _student.At(part.DegreesOfFreedom) * part.StandardUncertainty;

    /// <summary>Log means in dB, or what belongs to each of them.</summary>
    private readonly record struct Means(double Reference, double Covered, double Floor);
}
