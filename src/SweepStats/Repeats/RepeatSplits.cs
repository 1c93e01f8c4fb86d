using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>
/// Finds sweeps that repeat each other and lie on two levels: a source that was off, or a cable loose, for some of them.
/// </summary>
/// <remarks>
/// Where one sweep is off, the others tell which (<see cref="OddRepeats"/>). Where several are, they hide each other, and as
/// many in each placement hide in the mean of all. So the widest gap between the levels of a placement's sweeps is held against
/// what lies beside it, against the scatter of all repeats about their levels, and against what noise moves the mean of a sweep
/// by. Levels are means over frequency in dB as read, so that what lies in the floor is looked at too. Sweeps that are each a
/// placement are held against each other by <see cref="StrayPlacements"/>.
/// </remarks>
internal static class RepeatSplits
{
    /// <summary>
    /// Least gap in dB that is told where many repeats show how they scatter: less hardly changes what is claimed.
    /// </summary>
    public const double WorthTellingDb = 2;

    /// <summary>Least gap in dB where few do: four times the power (judgement, no source).</summary>
    public const double TooFarDb = 6;

    /// <summary>How many times as wide as either level's own range a gap is.</summary>
    public const double GapOverRange = 3;

    /// <summary>
    /// How many standard deviations wide: of four normal repeats two part so from two in one of ten thousand draws.
    /// </summary>
    public const double Deviations = 6;

    private const int Fewest = 3;

    /// <summary>All of them, the reference first; empty where no three sweeps repeat each other.</summary>
    public static ImmutableArray<SplitRepeats> Among(AlignedCampaign campaign, NoiseFloor? floor)
    {
        RepeatLevels[] all = [.. Levels(campaign.Reference, null),
            .. campaign.Covered.SelectMany(c => Levels(c.Block, c.Name))];
        double leastDb = LeastDb(all, floor, campaign.Grid.Count);
        return [.. all.Where(l => l.GapDb >= leastDb && l.IsParted).Select(l => l.Split(leastDb))];
    }

    /// <summary>Whether three sweeps of one placement repeat each other anywhere.</summary>
    public static bool CanTell(AlignedCampaign campaign) => campaign.Reference.SweepCount >= Fewest
        || campaign.Covered.Any(c => c.Block.Sweeps.GroupBy(s => s.Placement).Any(repeats => repeats.Count() >= Fewest));

    private static double LeastDb(RepeatLevels[] all, NoiseFloor? floor, int points)
    {
        int freedom = all.Sum(l => l.DegreesOfFreedom);
        double least = freedom < OddRepeats.ManyDegreesOfFreedom ? TooFarDb : WorthTellingDb;
        double scatter = freedom == 0 ? 0 : Math.Sqrt(all.Sum(l => l.Squares) / freedom);
        double noise = floor is { Source: FloorSource.Measured } ? floor.ReadingDeviationDb / Math.Sqrt(points) : 0;
        return Math.Max(least, Deviations * Math.Sqrt((scatter * scatter) + (noise * noise)));
    }

    private static IEnumerable<RepeatLevels> Levels(SweepBlock block, SpecimenName? specimen) =>
        Enumerable.Range(0, block.SweepCount).GroupBy(j => specimen is null ? null : block.Sweeps[j].Placement)
            .Where(rows => rows.Count() >= Fewest).Select(rows => new RepeatLevels(specimen,
                [.. rows.Select(j => new SweepLevel(block.Sweeps[j], Sample.Mean(block[j]))).OrderBy(l => l.Db)]));

    private sealed record SweepLevel(Sweep Sweep, double Db);

    /// <summary>Sweeps that repeat each other, by rising level, parted at their widest gap.</summary>
    private sealed class RepeatLevels
    {
        private readonly SpecimenName? _specimen;
        private readonly SweepLevel[] _lower, _higher;

        public RepeatLevels(SpecimenName? specimen, SweepLevel[] rising)
        {
            int parted = Enumerable.Range(1, rising.Length - 1).MaxBy(i => rising[i].Db - rising[i - 1].Db);
            (_specimen, _lower, _higher) = (specimen, rising[..parted], rising[parted..]);
        }

        public double GapDb => _higher[0].Db - _lower[^1].Db;

        public bool IsParted => GapDb >= GapOverRange * Math.Max(Range(_lower), Range(_higher));

        /// <summary>Of the scatter about the level, or about the two where the gap parts them.</summary>
        public int DegreesOfFreedom => _lower.Length + _higher.Length - (IsParted ? 2 : 1);

        public double Squares => IsParted ? SquaresOf(_lower) + SquaresOf(_higher) : SquaresOf([.. _lower, .. _higher]);

        public SplitRepeats Split(double leastDb) => new(_specimen, [.. _lower.Select(l => l.Sweep)],
            [.. _higher.Select(l => l.Sweep)], _lower.Average(l => l.Db), _higher.Average(l => l.Db), leastDb);

        private static double Range(SweepLevel[] rising) => rising[^1].Db - rising[0].Db;

        private static double SquaresOf(SweepLevel[] levels)
        {
            double mean = levels.Average(l => l.Db);
            return levels.Sum(l => (l.Db - mean) * (l.Db - mean));
        }
    }
}
