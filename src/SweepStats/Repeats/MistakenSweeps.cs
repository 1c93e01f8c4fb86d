using SweepStats.Alignment;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>
/// Finds sweeps that read like those of another kind and far from those of their own: a file exchanged, a specimen left on, a
/// source not off.
/// </summary>
/// <remarks>
/// Both conditions must hold at most frequencies. Alone, the first accuses specimens that shield nothing or everything, the
/// second whatever is odd. Those of its own kind are the ones that read like no other, were they the fewer: four references
/// with the specimen on do not outvote the one without. A covered sweep is held against its placement only, since a whole
/// placement is looked at beside the others (<see cref="StrayPlacements"/>).
/// </remarks>
internal static class MistakenSweeps
{
    /// <summary>
    /// Least distance in dB from its own kind: four times the power, more than a level drifts (judgement, no source).
    /// </summary>
    public const double FarDb = 6;

    // Where most of a kind look mistaken, the few may be the odd ones: then only what no drift and no touched cable does.
    private const double FarFromFewDb = 10;

    /// <summary>All of them, in the order of floor, reference and specimens.</summary>
    public static ImmutableArray<MistakenSweep> Among(AlignedCampaign campaign)
    {
        KindCurve[]? specimens = null;
        KindCurve[] Specimens() => specimens ??= [.. campaign.Covered.Select(c => KindCurve.Of(c.Block, c.Name))];
        IEnumerable<KindCurve> One(SweepBlock? block) => block is null ? [] : [KindCurve.Of(block)];
        return
        [
            .. In(campaign.Floor, () => [.. One(campaign.Reference), .. Specimens()]),
            .. In(campaign.Reference, () => [.. One(campaign.Floor), .. Specimens()]),
            .. campaign.Covered.SelectMany(c => In(c.Block, () => [.. One(campaign.Floor), .. One(campaign.Reference)])),
        ];
    }

    /// <summary>Sweeps of one kind that read like another of these kinds.</summary>
    /// <param name="own">The sweeps, on the grid of the kinds, by what they stand for.</param>
    /// <param name="others">The other kinds.</param>
    public static IEnumerable<MistakenSweep> In(IReadOnlyList<SetAsideSweep> own, IReadOnlyList<KindCurve> others) =>
        In([.. own.Select(s => new TakenSweep(s.Sweep, [.. s.Levels]))], others);

    private static IEnumerable<MistakenSweep> In(SweepBlock? block, Func<IReadOnlyList<KindCurve>> others)
    {
        if (block is null)
        {
            yield break;
        }

        IReadOnlyList<KindCurve>? kinds = null;
        foreach (IGrouping<string?, int> placement in Enumerable.Range(0, block.SweepCount)
            .GroupBy(j => Placement(block.Sweeps[j])))
        {
            // Nobody is far from sweeps that lie together, and most do.
            double[] levels = [.. placement.Select(j => Sample.Mean(block[j]))];
            if (levels.Max() - levels.Min() < FarDb / 2)
            {
                continue;
            }

            kinds ??= others();
            foreach (MistakenSweep mistaken in In(
                [.. placement.Select(j => new TakenSweep(block.Sweeps[j], block[j].ToArray()))], kinds))
            {
                yield return mistaken;
            }
        }
    }

    private static string? Placement(Sweep sweep) => sweep.Role == SweepRole.Covered ? sweep.Placement : null;

    private static IEnumerable<MistakenSweep> In(TakenSweep[] own, IReadOnlyList<KindCurve> others)
    {
        ImmutableArray<KindCurve>[] likes = [.. own.Select(s => Likes(s, others))];
        double[][] rest = [.. own.Where((_, i) => likes[i].IsEmpty).Select(s => s.Levels)];
        if (rest.Length == 0)
        {
            yield break;
        }

        double[] middle = KindCurve.Middle(rest);
        double far = 2 * rest.Length > own.Length ? FarDb : FarFromFewDb;
        for (int i = 0; i < own.Length; i++)
        {
            double[] above = [.. own[i].Levels.Zip(middle, (a, b) => a - b)];
            if (!likes[i].IsEmpty && above.Count(a => Math.Abs(a) >= far) >= KindCurve.Most * above.Length)
            {
                int agreeing = likes[i][0].Agreeing(own[i].Levels);
                yield return new MistakenSweep(own[i].Sweep, likes[i], agreeing, Sample.Median(above), rest.Length, far);
            }
        }
    }

    private static ImmutableArray<KindCurve> Likes(TakenSweep sweep, IReadOnlyList<KindCurve> kinds) =>
        [.. kinds.Where(k => k.IsLike(sweep.Levels)).OrderBy(k => k.AwayDb(sweep.Levels))];

    private sealed record TakenSweep(Sweep Sweep, double[] Levels);
}
