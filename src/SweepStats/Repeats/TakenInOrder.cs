using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Repeats;

/// <summary>Repeats of signal in the order in which they were taken: reference, covered sweeps, placements.</summary>
/// <remarks>
/// In the order of their times where all of them have one, else as the campaign lists them. Sweeps that are odd by themselves are
/// left out: one at the end would look like a slow change. Near the floor it is the noise that scatters, which is each sweep's
/// own and would hide what lasts; so only frequencies count at which noise makes up at most a quarter of the variance seen, or
/// all that are clear of the floor where these are too few.
/// </remarks>
/// <param name="campaign">Sweeps on their common grid.</param>
/// <param name="floor">The floor; null where none is known.</param>
/// <param name="odd">Sweeps that are odd among their repeats.</param>
internal sealed class TakenInOrder(AlignedCampaign campaign, NoiseFloor? floor, ImmutableArray<OddRepeat> odd)
{
    private const double MostNoise = 0.25;
    private const int FewestPoints = 8;

    /// <summary>All series of two repeats and more.</summary>
    /// <param name="threads">Threads to use; each specimen stands alone.</param>
    public ImmutableArray<RepeatSeries> Series(int threads = 1)
    {
        RepeatSeries?[] OfPlace(int i) => i == 0
            ? [Of(RepeatKind.Reference, campaign.Reference, Sweeps(campaign.Reference, _ => true))]
            : [.. OfSpecimen(campaign.Covered[i - 1].Block)];
        return [.. SideBySide.Of(campaign.Covered.Length + 1, threads, OfPlace).SelectMany(series => series)
            .OfType<RepeatSeries>()];
    }

    private IEnumerable<RepeatSeries?> OfSpecimen(SweepBlock block)
    {
        int[] placement = block.Placements();
        int placements = placement.Max() + 1;
        if (placements == 1)
        {
            yield return Of(RepeatKind.Covered, block, Sweeps(block, _ => true));
            yield break;
        }

        int[][][] within = [.. Enumerable.Range(0, placements).Select(p => Sweeps(block, j => placement[j] == p))];
        foreach (int[][] sweeps in within)
        {
            yield return Of(RepeatKind.WithinPlacement, block, sweeps);
        }

        int[][] means = [.. within.Select(sweeps => sweeps.SelectMany(s => s).ToArray()).Where(rows => rows.Length > 0)];
        yield return Of(RepeatKind.Placement, block, InOrder(block, means));
    }

    // Each sweep by itself.
    private int[][] Sweeps(SweepBlock block, Func<int, bool> belongs) => InOrder(
        block,
        [.. Enumerable.Range(0, block.SweepCount)
            .Where(j => belongs(j) && !odd.Any(o => ReferenceEquals(o.Sweep.Sweep, block.Sweeps[j])))
            .Select(j => new[] { j })]);

    // A placement is as early as its first sweep.
    private static int[][] InOrder(SweepBlock block, int[][] repeats) =>
        Array.TrueForAll(repeats, rows => Array.TrueForAll(rows, j => block.Sweeps[j].TakenAt is not null))
            ? [.. repeats.OrderBy(rows => rows.Min(j => block.Sweeps[j].TakenAt))]
            : repeats;

    private RepeatSeries? Of(RepeatKind kind, SweepBlock block, int[][] repeats)
    {
        int[] points = repeats.Length < 2 ? [] : RepeatGroups.Points(block, [.. repeats.SelectMany(rows => rows)], floor);
        if (points.Length < FewestPoints)
        {
            return null;
        }

        double[] Levels(int[] rows) =>
            rows.Length == 1 ? block.Row(rows[0], points) : RowPart.At(block.Means(rows).AsSpan(), points);
        double[][] levels = [.. repeats.Select(Levels)];
        int[] quiet = floor is null ? [] : Quiet(levels, points, repeats.Average(rows => rows.Length));
        bool all = quiet.Length < FewestPoints || quiet.Length == points.Length;
        return RepeatSeries.Of(kind, all ? levels : [.. levels.Select(row => RowPart.At(row, quiet))]);
    }

    // Without a floor all are.
    private int[] Quiet(double[][] levels, int[] points, double readings)
    {
        var scatter = ColumnScatter.Of(levels);
        bool Is(int p) => IsQuiet(scatter.Means[p], scatter.SquaredDeviations[p] / (levels.Length - 1), points[p], readings);
        return [.. Enumerable.Range(0, points.Length).Where(Is)];
    }

    // Whether little of what scatters at a frequency is noise, which falls with the readings in a repeat.
    private bool IsQuiet(double mean, double seen, int f, double readings)
    {
        double noise = 0;
        foreach (DetectorNoise kind in floor!.Noise)
        {
            noise = Math.Max(noise, kind.LogCumulants(kind.SnrInDecibels(mean - floor.LevelDb[f])).Variance);
        }

        return noise / readings <= MostNoise * seen;
    }
}
