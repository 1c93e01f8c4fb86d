using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Shielding;

/// <summary>Interval for the shielding from reference, covered and floor log means.</summary>
/// <remarks>
/// The signal behind each reading is taken out of the noise, then limits are set by recovering the variance estimates at the
/// limits (MOVER), which keeps the bend of the noise curve that a symmetric interval loses. Reference and covered share one
/// coverage factor from their effective degrees of freedom: far above the floor this is Welch's interval. The reach of a covered
/// mean in the noise follows the skewness of its readings (<see cref="SkewedMean"/>). What no repeat shows is added by its own
/// distribution (<see cref="WidenedInterval"/>). The floor keeps its own factor: pooled over frequency, it has many degrees of
/// freedom, and lending them to three covered sweeps made intervals too short (92 % instead of 95 %, see the coverage study). The
/// upper end is open unless the covered mean rises over the floor by more than its own error and by more than noise alone would:
/// three readings of noise that happen to lie close together do not make a signal. Source: Zou and Donner 2008, Statistics in
/// Medicine 27, 1693 (MOVER; from memory); JCGM 100:2008 G.4.1 (effective degrees of freedom).
/// </remarks>
/// <param name="noise">The detector's noise.</param>
/// <param name="confidence">Two-sided level.</param>
/// <param name="covered">
/// Readings behind the covered mean, for what noise alone would do, and how far the signal scatters.
/// </param>
internal sealed class ShieldingInterval(DetectorNoise noise, Confidence confidence, CoveredReadings covered) : IReadingInterval
{
    private readonly StudentQuantile _student = StudentQuantile.Of(confidence.TwoSidedQuantile);

    private readonly SkewedMean _mean = new(confidence);
    private readonly double _criticalRise = noise.CriticalRise(covered.Count, confidence.TwoSidedQuantile);

    // Log readings of noise fall further below their mean than they rise above it.
    private readonly double _deepestFall = -noise.CriticalRise(covered.Count, 1 - confidence.TwoSidedQuantile);

    /// <summary>Estimate and limits of one reading, in dB.</summary>
    public ShieldingLimits For(in ReadingLevels levels) => For(Basis(levels));

    /// <inheritdoc/>
    public ReadingBasis Basis(in ReadingLevels levels)
    {
        (RepeatedLevel reference, RepeatedLevel under, RepeatedLevel floor, SystematicError typeB) = levels;
        double rise = Rise(levels);
        double slopeCovered = SignalInNoise.Slope(rise, noise);
        double slopeReference = SignalInNoise.Slope(reference.MeanDb - floor.MeanDb, noise);
        ReadOnlySpan<Contribution> parts =
        [
            reference.Error.Scaled(slopeReference), under.Error.Scaled(slopeCovered),
            floor.Error.Scaled(slopeCovered - slopeReference),
            new Contribution(typeB.StandardUncertainty, typeB.DegreesOfFreedom),
        ];
        return new ReadingBasis(
            levels, rise, CoverageFreedom.Of(new(reference, slopeReference), new(under, slopeCovered)),
            SkewedMean.Skewness(noise, covered, noise.SnrInDecibels(rise), under.Error.StandardUncertainty),
            SignalInNoise.Level(reference.MeanDb, floor.MeanDb, noise),
            SignalInNoise.Level(floor.MeanDb + rise, floor.MeanDb, noise), WelchSatterthwaite.Combined(parts),
            CoverageFreedom.OfAll(parts, new(reference, slopeReference), new(under, slopeCovered)));
    }

    /// <inheritdoc/>
    public ShieldingLimits For(in ReadingBasis basis)
    {
        Margins at = Around(basis);
        double se = at.ReferenceSignal - at.CoveredSignal;
        return new ShieldingLimits(se, Low(at, se), High(at, se), basis.StandardUncertainty, basis.DegreesOfFreedom);
    }

    /// <inheritdoc/>
    public ShieldingLimits Lower(in ReadingBasis basis)
    {
        Margins at = Around(basis);
        double se = at.ReferenceSignal - at.CoveredSignal;
        return new ShieldingLimits(se, Low(at, se), double.PositiveInfinity, basis.StandardUncertainty, basis.DegreesOfFreedom);
    }

    /// <inheritdoc/>
    public ShieldingLimits Upper(in ReadingBasis basis)
    {
        Margins at = Around(basis);
        double se = at.ReferenceSignal - at.CoveredSignal;
        return new ShieldingLimits(se, double.NegativeInfinity, High(at, se), basis.StandardUncertainty, basis.DegreesOfFreedom);
    }

    private Margins Around(in ReadingBasis basis)
    {
        ReadingLevels levels = basis.Levels;
        double t = _student.At(basis.CoverageFreedom);
        double coveredError = t * levels.Covered.Error.StandardUncertainty;
        (double below, double above) = _mean.Reach(basis.Skewness);
        return new Margins(
            levels.Reference.MeanDb, levels.Floor.MeanDb + basis.Rise, levels.Floor.MeanDb,
            t * levels.Reference.Error.StandardUncertainty, below * coveredError, above * coveredError,
            Expanded(levels.Floor.Error), basis.CoverageFreedom, levels.TypeB.Widened(confidence.TwoSidedQuantile),
            basis.ReferenceSignal, basis.CoveredSignal);
    }

    /// <summary>Rise of the covered mean over the floor in dB, with what scatter of the signal adds taken out.</summary>
    public double Rise(in ReadingLevels levels)
    {
        double rise = levels.Covered.MeanDb - levels.Floor.MeanDb;
        return rise - SignalInNoise.ScatterBias(rise, covered.SignalDeviationDb, noise);
    }

    private double High(in Margins at, double se)
    {
        if (at.Covered - at.Floor <= RootSumSquares(_criticalRise, at.FloorError))
        {
            return double.PositiveInfinity;
        }

        double high = se + at.Whole(RootSumSquares(
            SignalInNoise.Level(at.Reference + at.ReferenceError, at.Floor, noise) - at.CoveredSignal - se,
            at.ReferenceSignal - SignalInNoise.Level(at.Covered - at.CoveredBelow, at.Floor, noise) - se,
            Shielding(at.Reference, at.Covered, at.Floor + at.FloorError) - se));
        return double.IsNaN(high) ? double.PositiveInfinity : high;
    }

    private double Low(in Margins at, double se)
    {
        double rise = at.Covered - at.Floor;
        // In the noise a mean is not known better than noise allows, however close its few readings happen to lie.
        double above = rise <= RootSumSquares(_criticalRise, at.FloorError) ? Math.Max(at.CoveredAbove, _deepestFall)
            : at.CoveredAbove;
        double strongest = SignalInNoise.AtRise(Math.Max(rise, 0) + RootSumSquares(above, at.FloorError), at.Floor, noise);
        double weakestReference = SignalInNoise.Level(at.Reference - at.ReferenceError, at.Floor, noise);
        // The two add up here without a root, and so does what no repeat shows.
        double inNoise = weakestReference - strongest - at.Whole(0);
        if (double.IsPositiveInfinity(se))
        {
            return inNoise;
        }

        double signal = at.CoveredSignal;
        double up = RootSumSquares(
            SignalInNoise.Level(at.Covered + above, at.Floor, noise) - signal,
            SignalInNoise.Level(at.Covered, at.Floor - at.FloorError, noise) - signal);
        // Where the rise is within its own error the bound must not profit from a mean that happens to lie low.
        up = rise < above ? Math.Max(up, strongest - signal) : up;
        double down = at.ReferenceSignal - weakestReference;
        double low = se - at.Whole(RootSumSquares(down, up));
        // The signal of a mean a hair over the floor lies so far down that the root of two such distances is longer than either:
        // the bound must not lose by it either.
        return rise < above ? Math.Max(low, inNoise) : low;
    }

    private double Shielding(double reference, double covered, double floor) =>
        SignalInNoise.Level(reference, floor, noise) - SignalInNoise.Level(covered, floor, noise);

    private double Expanded(Contribution part) =>
        part.StandardUncertainty == 0 ? 0 : _student.At(part.DegreesOfFreedom) * part.StandardUncertainty;

    private static double RootSumSquares(double a, double b, double c = 0) => Math.Sqrt((a * a) + (b * b) + (c * c));

    private readonly record struct Margins(
        double Reference, double Covered, double Floor, double ReferenceError, double CoveredBelow, double CoveredAbove,
        double FloorError, double DegreesOfFreedom, WidenedInterval TypeB, double ReferenceSignal, double CoveredSignal)
    {
        /// <summary>Half-width once what no repeat shows is added to that from repeats.</summary>
        public double Whole(double half) => TypeB.Half(half, DegreesOfFreedom);
    }
}
