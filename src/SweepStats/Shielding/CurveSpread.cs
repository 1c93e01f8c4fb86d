using System.Collections.Immutable;
using SweepStats.Floor;
using SweepStats.Repeats;
using SweepStats.Uncertainty;

namespace SweepStats.Shielding;

/// <summary>
/// What each repeat contributes to a curve, to first order: for figures over a band, which are compared between repeats.
/// </summary>
/// <remarks>
/// Leaving one unit out moves the shielding at a frequency by minus its slope times the move of the mean. The frequencies of one
/// sweep are never taken as independent repeats: a shared offset moves them all.
/// </remarks>
internal sealed class CurveSpread(
    RepeatedLevels reference, RepeatedLevels covered, NoiseFloor? floor, KnownErrors known)
{
    private readonly double[] _slopeReference = known.ReferenceSlopes;
    private readonly double[] _slopeCovered = Slopes(covered, floor);

    public bool Repeated => reference.Repeated && covered.Repeated;

    public int ReferenceUnits => reference.UnitCount;

    public int CoveredUnits => covered.UnitCount;

    /// <summary>
    /// What the reference units are worth where they go together in the order taken; null where they count as independent.
    /// </summary>
    public RepeatWorth? ReferenceWorth => reference.Worth;

    /// <summary>The same of the covered units.</summary>
    public RepeatWorth? CoveredWorth => covered.Worth;

    /// <summary>What no repeat shows.</summary>
    public SystematicError TypeB => known.TypeB;

    /// <summary>Fewest degrees of freedom of the floor's error over the frequencies.</summary>
    public double FloorDegreesOfFreedom { get; } = floor is null ? double.PositiveInfinity : floor.DegreesOfFreedom.Min();

    /// <summary>How far the shielding may lie to either side for not knowing how the receiver averages.</summary>
    public double AveragingShift(int f) => known.AveragingDb[f];

    /// <summary>Change of the shielding when a reference unit is left out.</summary>
    public double WithoutReference(int unit, int f) => _slopeReference[f] * Shift(reference, unit, f);

    /// <summary>Changes of a weighted sum over the frequencies when each reference unit is left out.</summary>
    /// <param name="weights">One a frequency.</param>
    public double[] WithoutEachReference(double[] weights) => WithoutEach(reference, _slopeReference, weights);

    /// <summary>The same of the covered units.</summary>
    public double[] WithoutEachCovered(double[] weights) => WithoutEach(covered, _slopeCovered, weights, sign: -1);

    /// <summary>
    /// Standard uncertainty in dB that the display's rounding of the reference leaves in a weighted sum over the frequencies.
    /// </summary>
    /// <param name="weights">One a frequency.</param>
    public double ReferenceRounding(double[] weights) => reference.Rounding(Sloped(_slopeReference, weights));

    /// <summary>The same of the covered levels.</summary>
    public double CoveredRounding(double[] weights) => covered.Rounding(Sloped(_slopeCovered, weights));

    /// <summary>How much the shielding falls for each dB that the covered level rises.</summary>
    public double CoveredSlope(int f) => _slopeCovered[f];

    /// <summary>Change of the shielding when the floor lies one standard error higher.</summary>
    public double FloorShift(int f) => floor is null ? 0 : (_slopeCovered[f] - _slopeReference[f]) * floor.StandardErrorDb[f];

    private static double[] Sloped(double[] slopes, double[] weights) =>
        [.. slopes.Zip(weights, (slope, weight) => slope * weight)];

    // A sum is linear in the levels: each unit is gone through once.
    private static double[] WithoutEach(RepeatedLevels levels, double[] slopes, double[] weights, int sign = 1)
    {
        var sloped = new double[weights.Length];
        double whole = 0;
        for (int f = 0; f < sloped.Length; f++)
        {
            sloped[f] = sign * slopes[f] * weights[f] / (levels.UnitCount - 1);
            whole += sloped[f] * levels.MeanDb(f);
        }

        var changes = new double[levels.UnitCount];
        for (int j = 0; j < changes.Length; j++)
        {
            ReadOnlySpan<double> unit = levels.Unit(j);
            changes[j] = whole;
            for (int f = 0; f < unit.Length; f++)
            {
                changes[j] -= sloped[f] * unit[f];
            }
        }

        return changes;
    }

    private static double Shift(RepeatedLevels levels, int unit, int f) =>
        (levels.MeanDb(f) - levels.Unit(unit)[f]) / (levels.UnitCount - 1);

    /// <summary>How much the signal moves for each dB that the level moves, at each frequency.</summary>
    public static double[] Slopes(RepeatedLevels levels, NoiseFloor? floor)
    {
        var slopes = new double[levels.PointCount];
        for (int f = 0; f < slopes.Length; f++)
        {
            slopes[f] = floor is null ? 1 : Steepest(floor.Noise, levels.MeanDb(f) - floor.LevelDb[f]);
        }

        return slopes;
    }

    private static double Steepest(ImmutableArray<DetectorNoise> noises, double rise)
    {
        double steepest = double.NegativeInfinity;
        foreach (DetectorNoise noise in noises)
        {
            steepest = Math.Max(steepest, SignalInNoise.Slope(rise, noise));
        }

        return steepest;
    }
}
