using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>How the level of repeated sweeps moved, as a straight line along time, order or halves. Immutable.</summary>
public sealed record DriftTest
{
    /// <summary>
    /// Chance of a false alarm of one test, where sweeps scatter by so much that the next number does not matter.
    /// </summary>
    public const double FalseAlarm = 0.03;

    /// <summary>A shift of less than this over the whole campaign, in dB, does not change what is claimed.</summary>
    public const double WorthTellingDb = 0.3;

    private DriftTest()
    {
    }

    /// <summary>What x is.</summary>
    public required DriftAlong Along { get; init; }

    /// <summary>The groups looked at together; each keeps a level of its own.</summary>
    public required ImmutableArray<RepeatGroup> Groups { get; init; }

    /// <summary>Where each sweep of each group lies.</summary>
    public required ImmutableArray<ImmutableArray<double>> X { get; init; }

    /// <summary>Chance that this or a sister test finds as much without a drift; not a number where nothing scatters.</summary>
    public double Probability { get; private init; }

    /// <summary>From the smallest to the largest x: the hours of the day, or 1.</summary>
    public double Span => X.Max(x => x.Max()) - X.Min(x => x.Min());

    /// <summary>dB from one end to the other.</summary>
    public double Size => Slope.Value * Span;

    /// <summary>Whether it is more than chance, and enough to be told.</summary>
    public bool IsClear => Math.Abs(Size) >= WorthTellingDb && Probability < FalseAlarm;

    /// <summary>Whether x is the time of day, the same for all groups.</summary>
    public bool IsOfTheClock => Along is DriftAlong.Clock or DriftAlong.ClockWarmUp;

    /// <summary>Limits of the slope, dB per unit of x.</summary>
    public Interval SlopeLimits(Confidence confidence) => Slope.Interval(confidence);

    /// <summary>
    /// Most that a drift of the clock may have moved the level, in dB, from the middle of the reference to the farthest specimen:
    /// by the 95 % limit of its slope. Null where x is not the clock, or no reference or no specimen is among the groups.
    /// </summary>
    public double? FromReferenceDb()
    {
        double[] Middles(SweepRole role) => [.. Groups.Zip(X).Where(g => g.First.Role == role).Select(g => g.Second.Average())];
        (double[] reference, double[] covered) = (Middles(SweepRole.Reference), Middles(SweepRole.Covered));
        if (!IsOfTheClock || reference.Length == 0 || covered.Length == 0)
        {
            return null;
        }

        double middle = reference.Average();
        Interval limits = SlopeLimits(Confidence.NinetyFive);
        return covered.Max(c => Math.Abs(c - middle)) * Math.Max(Math.Abs(limits.Low), Math.Abs(limits.High));
    }

    /// <summary>Sweeps looked at.</summary>
    public int SweepCount => Groups.Sum(g => g.Sweeps.Count(IsSteady));

    /// <summary>
    /// Sweeps left out because they are odd by themselves: one of them at the end of the day would look like a drift.
    /// </summary>
    public required ImmutableArray<RepeatedSweep> LeftOut { get; init; }

    /// <summary>dB per unit of x.</summary>
    internal SlopeEstimate Slope { get; private init; }

    /// <summary>The line through a group, in dB of offset, at each of its sweeps.</summary>
    public ImmutableArray<double> Line(int group)
    {
        (double[] x, double[] offsets) = Pairs(group);
        double middle = x.Average();
        double level = offsets.Average();
        return [.. X[group].Select(x => level + (Slope.Value * (x - middle)))];
    }

    /// <summary>The clearest of the tests that can be made, one for each family.</summary>
    /// <remarks>
    /// Reference and covered sweeps together where all have times, steadily and as a device warms up; else each role by itself,
    /// along order, as a warm-up, and along halves, since a pause between the sweeps before and after a specimen does not show in
    /// their order. The clearest pays for its sisters (Bonferroni). A specimen that shields more than another is no drift; nor is
    /// a placement. Floor sweeps say little about the level of a signal and are left out.
    /// </remarks>
    /// <param name="repeats">All groups.</param>
    /// <param name="odd">Sweeps that are odd by themselves.</param>
    public static ImmutableArray<DriftTest> Clearest(ImmutableArray<RepeatGroup> repeats, ImmutableArray<OddRepeat> odd)
    {
        ImmutableArray<RepeatedSweep> leftOut = [.. odd.Where(o => o.ByOffset).Select(o => o.Sweep)];
        ImmutableArray<RepeatGroup> signal = [.. repeats.Where(g => g.Role is SweepRole.Reference or SweepRole.Covered)];
        List<DriftTest> together = ByClock(signal, leftOut);
        IEnumerable<List<DriftTest>> families = together.Count > 0
            ? [together]
            : new[] { SweepRole.Reference,
                SweepRole.Covered }.Select(role => ByOrder([.. signal.Where(g => g.Role == role)], leftOut));
        return [.. families.Where(family => family.Count > 0).Select(Clearest)];
    }

    private static DriftTest Clearest(List<DriftTest> family)
    {
        DriftTest best = family.MinBy(t => t.Slope.Probability)!;
        return best with { Probability = Math.Min(1, family.Count * best.Slope.Probability) };
    }

    private static List<DriftTest> ByClock(ImmutableArray<RepeatGroup> groups, ImmutableArray<RepeatedSweep> leftOut)
    {
        var sweeps = groups.SelectMany(g => g.Sweeps).Select(s => s.Sweep).ToList();
        if (sweeps.Count == 0 || sweeps.Exists(s => s.TakenAt is null))
        {
            return [];
        }

        DateTimeOffset first = sweeps.Min(s => s.TakenAt!.Value);
        double day = (sweeps.Max(s => s.TakenAt!.Value) - first).TotalHours;
        double Hours(RepeatGroup group, int j) => (group.Sweeps[j].Sweep.TakenAt!.Value - first).TotalHours;
        return
        [
            .. new[]
            {
                Of(DriftAlong.Clock, groups, leftOut, Hours),
                Of(DriftAlong.ClockWarmUp, groups, leftOut, (group, j) => day > 0 ? WarmUp(Hours(group, j) / day) : 0),
            }.OfType<DriftTest>(),
        ];
    }

    private static List<DriftTest> ByOrder(ImmutableArray<RepeatGroup> groups, ImmutableArray<RepeatedSweep> leftOut) =>
    [
        .. new[]
        {
            Of(DriftAlong.Order, groups, leftOut, Place),
            Of(DriftAlong.OrderWarmUp, groups, leftOut, (group, j) => WarmUp(Place(group, j))),
            Of(DriftAlong.Halves, groups, leftOut, (group, j) => j < (group.Sweeps.Length + 1) / 2 ? 0 : 1),
        }.OfType<DriftTest>(),
    ];

    private static double Place(RepeatGroup group, int j) => (double)j / (group.Sweeps.Length - 1);

    // What is left falls to a tenth in each third of the day.
    private static double WarmUp(double share) => (1 - Math.Pow(10, -3 * share)) / (1 - 1e-3);

    private static DriftTest? Of(
        DriftAlong along, ImmutableArray<RepeatGroup> groups, ImmutableArray<RepeatedSweep> leftOut,
        Func<RepeatGroup, int, double> place)
    {
        var unfitted = new DriftTest
        {
            Along = along,
            Groups = groups,
            X = [.. groups.Select(g => Enumerable.Range(0, g.Sweeps.Length).Select(j => place(g, j)).ToImmutableArray())],
            LeftOut = leftOut,
        };
        return CommonSlope.Of([.. Enumerable.Range(0, groups.Length).Select(unfitted.Pairs)]) is { } slope
            ? unfitted with { Slope = slope } : null;
    }

    private bool IsSteady(RepeatedSweep sweep) => !LeftOut.Any(odd => ReferenceEquals(odd, sweep));

    private PairGroup Pairs(int group)
    {
        int[] steady = [.. Enumerable.Range(0, X[group].Length).Where(j => IsSteady(Groups[group].Sweeps[j]))];
        return new([.. steady.Select(j => X[group][j])], [.. steady.Select(j => Groups[group].Sweeps[j].Offset.Value)]);
    }
}
