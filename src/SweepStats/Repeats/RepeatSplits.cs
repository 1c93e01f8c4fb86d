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
/// what lies beside it, against the scatter of repeats, and against what noise moves the mean of a sweep by. Groups need not
/// scatter alike, and of three sweeps two lie together by chance as often as not: where a level has one sweep, or few sweeps
/// repeat each other, only a gap is told that no scatter makes. Of three levels the widest gap may be too narrow to be told.
/// Levels are means over frequency in dB as read, so that what lies in the floor is looked at too. Sweeps that are each a
/// placement are held against each other by <see cref="StrayPlacements"/>.
/// </remarks>
internal static class RepeatSplits
{
    /// <summary>
    /// Least gap in dB that is told of five sweeps and more, two at least on either level: less hardly changes what is claimed.
    /// </summary>
    public const double WorthTellingDb = 2;

    /// <summary>Least gap in dB of fewer: four times the power (judgement, no source).</summary>
    public const double TooFarDb = 6;

    /// <summary>How many times as wide as either level's own range a gap is.</summary>
    public const double GapOverRange = 3;

    // Standard deviations of a sweep's level (judgement, no source).
    private const double Deviations = 6;

    // The middle standard deviation of groups of five normal sweeps is 0.92 of the true one, and of fewer less.
    private const double OfMiddle = 0.9;

    // Of five and more, two on either level part so by chance in one of five hundred draws where the gap is two deviations.
    private const int FewestOfEither = 2;

    private const int Fewest = 3;

    /// <summary>All of them, the reference first; empty where no three sweeps repeat each other.</summary>
    public static ImmutableArray<SplitRepeats> Among(AlignedCampaign campaign, NoiseFloor? floor)
    {
        RepeatLevels[] all = [.. Levels(campaign.Reference, null),
            .. campaign.Covered.SelectMany(c => Levels(c.Block, c.Name))];
        double scatterDb = Deviations * ScatterDb(all, campaign, floor);
        return [.. all.Where(l => l.IsWide && l.GapDb >= scatterDb)
            .Select(l => l.Split(Math.Max(l.LeastDb, scatterDb)))];
    }

    /// <summary>Whether three sweeps of one placement repeat each other anywhere.</summary>
    public static bool CanTell(AlignedCampaign campaign) => campaign.Reference.SweepCount >= Fewest
        || campaign.Covered.Any(IsRepeated);

    /// <summary>Specimens of which no three sweeps of one placement repeat each other.</summary>
    public static int Untold(AlignedCampaign campaign) => campaign.Covered.Count(c => !IsRepeated(c));

    private static bool IsRepeated(SpecimenBlock specimen) =>
        specimen.Block.Sweeps.GroupBy(s => s.Placement).Any(repeats => repeats.Count() >= Fewest);

    // Of the middle group, so that few that scatter far more than the others do not hide what these show.
    private static double ScatterDb(RepeatLevels[] all, AlignedCampaign campaign, NoiseFloor? floor)
    {
        double middle = all.Length == 0 ? 0 : Sample.Median([.. all.Select(l => l.DeviationDb)]) / OfMiddle;
        double noise = floor is { Source: FloorSource.Measured } ? NoiseDb(campaign.Floor!, floor) : 0;
        return Math.Sqrt((middle * middle) + (noise * noise));
    }

    // Of the mean of a sweep that holds noise alone: readings that neighbours resemble are worth fewer, and whole sweeps move.
    private static double NoiseDb(SweepBlock sweeps, NoiseFloor floor)
    {
        double alike = new FloorScatter(sweeps).Correlation, offset = floor.SweepOffsetDeviationDb ?? 0;
        double reading = floor.ReadingDeviationDb * floor.ReadingDeviationDb;
        return Math.Sqrt((reading / sweeps.PointCount * (1 + alike) / (1 - alike)) + (offset * offset));
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

        private bool IsParted => GapDb >= GapOverRange * Math.Max(Range(_lower), Range(_higher));

        public double LeastDb => Math.Min(_lower.Length, _higher.Length) >= FewestOfEither
            && _lower.Length + _higher.Length >= OddRepeats.Fewest ? WorthTellingDb : TooFarDb;

        /// <summary>Whether its gap would be told if repeats did not scatter at all.</summary>
        public bool IsWide => IsParted && GapDb >= LeastDb;

        /// <summary>Standard deviation about its level in dB, or about the two where it is wide.</summary>
        public double DeviationDb => IsWide
            ? Math.Sqrt((SquaresOf(_lower) + SquaresOf(_higher)) / (_lower.Length + _higher.Length - 2))
            : Math.Sqrt(SquaresOf([.. _lower, .. _higher]) / (_lower.Length + _higher.Length - 1));

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
