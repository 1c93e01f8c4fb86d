using SweepStats.Alignment;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Floor;

/// <summary>
/// When the floor was measured, beside the covered sweeps, and how far it may have moved from what was measured. Immutable.
/// </summary>
/// <remarks>
/// Floor sweeps before and after the covered ones are one series: where their means differ by more than sweeps scatter, the floor
/// of the covered sweeps lies anywhere between. Measured at one time only, the floor may have moved as far as receivers' floors
/// do; nothing in the sweeps shows it.
/// </remarks>
public sealed record FloorHistory
{
    /// <summary>
    /// How far the noise of a receiver is taken to move at most after it was measured once: 1 dB either way. Gains and noise
    /// figures move by some tenths of a dB as an instrument warms up and as the room does (common practice; no source).
    /// </summary>
    public const double UsualStabilityDb = 1;

    // Two groups that differ by less than this many standard errors are not told apart.
    private const double Score = 3;

    /// <summary>Whether floor sweeps were taken on both sides of the covered ones.</summary>
    public required bool Bracketed { get; init; }

    /// <summary>Whether times or the campaign say so; else it is taken to be measured once.</summary>
    public required bool IsKnown { get; init; }

    /// <summary>
    /// Which floor sweeps were taken after the covered ones, in their order; empty where the floor was measured once.
    /// </summary>
    public ImmutableArray<bool> Later { get; init; } = [];

    /// <summary>Mean of the later sweeps less that of the earlier ones in dB; null where the floor was measured once.</summary>
    public required double? ChangeDb { get; init; }

    /// <summary>How far the floor of the covered sweeps may lie from the measured one, to either side, in dB.</summary>
    public required double HalfWidthDb { get; init; }

    /// <summary>Looks at the floor sweeps of a campaign; null where there are none.</summary>
    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="taking">When they were taken, where it is stated.</param>
    /// <param name="stabilityDb">How far the floor moves at most, where it is stated.</param>
    public static FloorHistory? Of(AlignedCampaign campaign, SweepTaking taking, double? stabilityDb)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        if (campaign.Floor is not { } floor)
        {
            return null;
        }

        bool timed = IsTimed(campaign);
        bool[]? later = taking == SweepTaking.Once ? null
            : timed ? LaterByTime(campaign, floor)
            : taking == SweepTaking.BeforeAndAfter && IsWhole(campaign, floor)
            ? [.. Enumerable.Range(0, floor.SweepCount).Select(j => 2 * j >= floor.SweepCount)] : null;
        return later is null
            ? new FloorHistory
            {
                Bracketed = false,
                IsKnown = timed || taking != SweepTaking.Unstated,
                ChangeDb = null,
                HalfWidthDb = stabilityDb ?? UsualStabilityDb,
            }
            : Between(floor, later, stabilityDb);
    }

    private static FloorHistory Between(SweepBlock floor, bool[] later, double? stabilityDb)
    {
        var scatter = new FloorScatter(floor);
        double[] before = [.. scatter.Offset.Where((_, j) => !later[j])], after = [.. scatter.Offset.Where((_, j) => later[j])];
        double change = after.Average() - before.Average();
        double squares = SumOfSquares(before) + SumOfSquares(after);
        double chance = Math.Pow(scatter.Deviation(new bool[floor.PointCount]), 2) / floor.PointCount;
        double variance = floor.SweepCount > 2 ? Math.Max(chance, squares / (floor.SweepCount - 2)) : chance;
        double error = Math.Sqrt(variance * ((1.0 / before.Length) + (1.0 / after.Length)));
        return new FloorHistory
        {
            Bracketed = true,
            IsKnown = true,
            Later = [.. later],
            ChangeDb = change,
            HalfWidthDb = Math.Max(stabilityDb ?? 0,
                Math.Abs(change) > Score * error ? FarthestShare(before, after) * Math.Abs(change) : 0),
        };
    }

    // The mean of all sweeps lies nearer to the side with more of them.
    private static double FarthestShare(double[] before, double[] after) =>
        (double)Math.Max(before.Length, after.Length) / (before.Length + after.Length);

    // Files that were all stamped at once have no times of their sweeps.
    private static bool IsTimed(AlignedCampaign campaign) =>
        campaign.Used().All(s => s.TakenAt is not null) && campaign.Used().Select(s => s.TakenAt).Distinct().Skip(1).Any();

    // Of a single sweep, or where some were left out, nobody knows which were taken after the specimens.
    private static bool IsWhole(AlignedCampaign campaign, SweepBlock floor) =>
        floor.SweepCount > 1 && !campaign.Excluded.Any(s => s.Role == SweepRole.Floor);

    // Null unless some lie on each side of the covered sweeps.
    private static bool[]? LaterByTime(AlignedCampaign campaign, SweepBlock floor)
    {
        ImmutableArray<Sweep> covered = [.. campaign.Covered.SelectMany(c => c.Block.Sweeps)];
        DateTimeOffset first = covered.Min(s => s.TakenAt!.Value), last = covered.Max(s => s.TakenAt!.Value);
        DateTimeOffset middle = first + ((last - first) / 2);
        bool brackets = floor.Sweeps.Any(s => s.TakenAt <= first) && floor.Sweeps.Any(s => s.TakenAt >= last);
        return brackets ? [.. floor.Sweeps.Select(s => s.TakenAt > middle)] : null;
    }

    private static double SumOfSquares(double[] values)
    {
        double[] away = Deviations.FromMean(values);
        return Deviations.Product(away, away);
    }
}
