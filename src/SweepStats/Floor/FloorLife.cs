using MathNet.Numerics.Distributions;
using SweepStats.Alignment;

namespace SweepStats.Floor;

/// <summary>
/// Whether floor sweeps show noise, or the bottom of a display, a number put in by hand, an input that is not connected.
/// Immutable.
/// </summary>
/// <remarks>
/// Noise scatters: averaged over 10 000 looks, the most that is reckoned with, by 0.043 dB. A floor is stuck where more than
/// half of its readings stand at one level, each sweep at its own, and the least scatter of noise brings so many into one step
/// of the display by chance less than once in 1000 times. Readings that are all the same although a display as coarse as that
/// of the other sweeps might hide noise of more than 100 looks are hidden; a few typed by hand, which noise of 100 looks
/// explains, live. A floor is clipped where its lowest level is a limit (<see cref="BottomTies"/>) at which more than a quarter
/// of the readings stand. Measured at 0 to 50 % clipped, 1 to 100 looks, 3 to 10 sweeps: the lower end of an interval, which
/// promises to miss in 2.5 %, misses in 3.5 % at most with a fifth clipped, in 4.5 % with three tenths, in 11 % with half.
/// </remarks>
public sealed record FloorLife
{
    private const double ByChance = 1e-3;
    private const double MostInOneLevel = 0.5;
    private const double MostClipped = 0.25;
    private const double ManyLooks = 1e4;
    private const double UsualLooks = 100;

    // Of two frequencies each sweep has no scatter of its own to show.
    private const int FewestPoints = 3;

    // What levels with full digits are written to.
    private const double FinestStepDb = 1e-3;

    /// <summary>Whether they show noise.</summary>
    public required FloorState State { get; init; }

    /// <summary>The level at which most of the readings stand in dB: where clipped, the lowest.</summary>
    public required double LevelDb { get; init; }

    /// <summary>Readings that stand at it; where each sweep has a level of its own, at theirs.</summary>
    public required int Tied { get; init; }

    /// <summary>Readings of all floor sweeps.</summary>
    public required int ReadingCount { get; init; }

    /// <summary>Whether the floor may be held against covered sweeps.</summary>
    public bool Lives => State is FloorState.Alive or FloorState.PartlyClipped;

    /// <summary>Looks at the floor sweeps of a campaign; null where there are none.</summary>
    /// <param name="campaign">Its sweeps; all but those of the floor show the steps of the display.</param>
    public static FloorLife? Of(AlignedCampaign campaign)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        if (campaign.Floor is not { } floor)
        {
            return null;
        }

        (double level, int tied, int groups) = Commonest(floor);
        int count = floor.SweepCount * floor.PointCount;
        double Step() => Math.Min(OtherStep(campaign), Math.Max(FinestStepDb, DisplayStep.Shared([level])));
        FloorState state = Stuck(new(tied, count, groups), Step);
        BottomTies bottom = BottomTies.Of(floor);
        bool cut = state == FloorState.Alive ? bottom.IsLimit
            : state == FloorState.Stuck && groups == 1 && tied < count && BottomTies.IsAt(level, bottom.LevelDb);
        FloorState clipped = bottom.Readings > MostClipped * count ? FloorState.Clipped : FloorState.PartlyClipped;
        return cut
            ? new FloorLife { State = clipped, LevelDb = bottom.LevelDb, Tied = bottom.Readings, ReadingCount = count }
            : new FloorLife { State = state, LevelDb = level, Tied = tied, ReadingCount = count };
    }

    // The step is looked for in all sweeps of the campaign, and few floors need it.
    private static FloorState Stuck(LevelTies readings, Func<double> step) =>
        readings.Tied <= MostInOneLevel * readings.Count ? FloorState.Alive : BeyondChance(readings, step());

    private static FloorState BeyondChance(LevelTies readings, double step) =>
        Chance(readings, step, ManyLooks) < ByChance ? FloorState.Stuck
            : readings.Tied == readings.Count && Chance(readings, step, UsualLooks) < ByChance ? FloorState.Hidden
            : FloorState.Alive;

    // That noise of so many looks brings so many readings into one step; the first of each group sets the level that the others
    // agree with.
    private static double Chance(LevelTies readings, double step, double looks)
    {
        int agree = readings.Tied - readings.Groups;
        double one = SteppedReadings.InOneStep(step, new DetectorNoise(looks).LogStandardDeviation);
        return agree <= 0 ? 1 : 1 - Binomial.CDF(one, readings.Count - readings.Groups, agree - 1);
    }

    // The level at which most readings stand, and how many: of all sweeps, or of each by itself where more stand at those.
    private static (double Level, int Tied, int Groups) Commonest(SweepBlock floor)
    {
        double[][] sweeps = [.. Enumerable.Range(0, floor.SweepCount).Select(j => floor[j].ToArray())];
        (double Level, int Count) all = Commonest(sweeps.SelectMany(s => s));
        int own = sweeps.Sum(s => Commonest(s).Count);
        return floor.PointCount >= FewestPoints && own > all.Count
            ? (all.Level, own, floor.SweepCount)
            : (all.Level, all.Count, 1);
    }

    private static (double Level, int Count) Commonest(IEnumerable<double> levels)
    {
        KeyValuePair<double, int> most = levels.CountBy(l => l).MaxBy(level => level.Value);
        return (most.Key, most.Value);
    }

    // The step of the sweeps that vary; of all levels, where none does.
    private static double OtherStep(AlignedCampaign campaign)
    {
        SweepBlock[] others = [.. campaign.Signals()];
        return Math.Max(FinestStepDb, DisplayStep.OfVarying(others) ?? DisplayStep.Shared(others));
    }

    /// <summary>
    /// Readings at the commonest level, all readings, and groups whose first reading sets that level: one, or one a sweep.
    /// </summary>
    private readonly record struct LevelTies(int Tied, int Count, int Groups);
}
