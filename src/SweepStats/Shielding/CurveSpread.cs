using SweepStats.Floor;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Storage;
using SweepStats.Uncertainty;

namespace SweepStats.Shielding;

/// <summary>
/// What each repeat contributes to a curve, to first order: for figures over a band, which are compared between repeats.
/// </summary>
/// <remarks>
/// Leaving one unit out moves the shielding at a frequency by minus its slope times the move of the mean. The frequencies of one
/// sweep are never taken as independent repeats: a shared offset moves them all.
/// </remarks>
internal sealed class CurveSpread
{
    private readonly RepeatedLevels _reference;
    private readonly RepeatedLevels _covered;
    private readonly NoiseFloor? _floor;
    private readonly double[] _slopeReference;

    // Of each frequency the slope of the covered level, and how far the shielding may lie to either side.
    private readonly KeptRows _own;

    /// <summary>Works out the slopes of the covered levels once, and keeps them where the sweeps are kept.</summary>
    public CurveSpread(RepeatedLevels reference, RepeatedLevels covered, NoiseFloor? floor, KnownErrors known)
    {
        (_reference, _covered, _floor, _slopeReference, TypeB) = (reference, covered, floor, known.ReferenceSlopes, known.TypeB);
        _own = covered.Store.Keep(Slopes(covered, floor), known.AveragingDb);
        FloorDegreesOfFreedom = floor is null ? double.PositiveInfinity : floor.DegreesOfFreedom.Min();
    }

    /// <summary>Whether reference and covered levels both repeat, so that there is a spread.</summary>
    public bool Repeated => _reference.Repeated && _covered.Repeated;

    /// <summary>Independent repeats of the reference: sweeps, or placements where those are named.</summary>
    public int ReferenceUnits => _reference.UnitCount;

    /// <summary>
    /// What the reference units are worth where they go together in the order taken; null where they count as independent.
    /// </summary>
    public RepeatWorth? ReferenceWorth => _reference.Worth;

    /// <summary>The same of the covered units.</summary>
    public RepeatWorth? CoveredWorth => _covered.Worth;

    /// <summary>What no repeat shows.</summary>
    public SystematicError TypeB { get; }

    /// <summary>Fewest degrees of freedom of the floor's error over the frequencies.</summary>
    public double FloorDegreesOfFreedom { get; }

    /// <summary>How far the shielding may lie to either side for not knowing how the receiver averages.</summary>
    public double AveragingShift(int f) => _own.Rows[1][f];

    /// <summary>Change of the shielding when a reference unit is left out.</summary>
    public double WithoutReference(int unit, int f) => _slopeReference[f] * Shift(_reference, unit, f);

    /// <summary>Changes of a weighted sum over the frequencies when each reference unit is left out.</summary>
    /// <param name="weights">One a frequency.</param>
    public double[] WithoutEachReference(double[] weights) => WithoutEach(_reference, _slopeReference, weights);

    /// <summary>The same of the covered units.</summary>
    public double[] WithoutEachCovered(double[] weights) => WithoutEach(_covered, SlopesCovered, weights, sign: -1);

    /// <summary>
    /// Standard uncertainty in dB that the display's rounding of the reference leaves in a weighted sum over the frequencies.
    /// </summary>
    /// <param name="weights">One a frequency.</param>
    public double ReferenceRounding(double[] weights) => _reference.Rounding(Sloped(_slopeReference, weights));

    /// <summary>The same of the covered levels.</summary>
    public double CoveredRounding(double[] weights) => _covered.Rounding(Sloped(SlopesCovered, weights));

    /// <summary>
    /// How much the shielding falls for each dB that the covered level rises, at neighbouring frequencies.
    /// </summary>
    /// <param name="first">Place of the first.</param>
    /// <param name="slopes">Room for them.</param>
    public void ReadCoveredSlopes(int first, Span<double> slopes) => _own.Read(0, first, slopes);

    /// <summary>Changes of the shielding when the floor lies one standard error higher, at neighbouring frequencies.</summary>
    /// <param name="first">Place of the first.</param>
    /// <param name="shifts">Room for them.</param>
    public void ReadFloorShifts(int first, Span<double> shifts)
    {
        ReadCoveredSlopes(first, shifts);
        for (int k = 0; k < shifts.Length; k++)
        {
            shifts[k] = FloorShift(first + k, shifts[k]);
        }
    }

    /// <summary>Change of the shielding when the floor lies one standard error higher.</summary>
    public double FloorShift(int f) => FloorShift(f, SlopesCovered[f]);

    private double FloorShift(int f, double slopeCovered) =>
        _floor is null ? 0 : (slopeCovered - _slopeReference[f]) * _floor.StandardErrorDb[f];

    private double[] SlopesCovered => _own.Rows[0];

    private static double[] Sloped(double[] slopes, double[] weights)
    {
        var sloped = new double[slopes.Length];
        for (int f = 0; f < sloped.Length; f++)
        {
            sloped[f] = slopes[f] * weights[f];
        }

        return sloped;
    }

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
            changes[j] = whole - RowProduct.Of(sloped, levels.Unit(j));
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
