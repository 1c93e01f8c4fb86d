using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>What shows how much sweeps should differ.</summary>
internal enum NearCopiesBeside
{
    /// <summary>Other sweeps of the kind.</summary>
    OtherSweeps,

    /// <summary>The same sweeps, from frequency to frequency, as noise differs.</summary>
    Frequencies,

    /// <summary>Linearity sweeps.</summary>
    LinearitySweeps,

    /// <summary>Reference sweeps, beside covered ones.</summary>
    ReferenceSweeps,

    /// <summary>Covered sweeps, beside those of the reference: a cloth that moves scatters by itself.</summary>
    CoveredSweeps,
}

/// <summary>Sweeps of one kind that differ by far less than sweeps of the campaign do. Immutable.</summary>
/// <param name="Role">What they were taken for.</param>
/// <param name="Specimen">Which specimen; null for floor and reference.</param>
/// <param name="Sweeps">The sweeps, at least two, in order.</param>
/// <param name="ApartDb">The largest scatter of a reading between two that are alike, in dB.</param>
/// <param name="UsualDb">What is usual, in dB.</param>
/// <param name="Beside">What shows what is usual.</param>
internal sealed record NearCopies(
    SweepRole Role, SpecimenName? Specimen, ImmutableArray<Sweep> Sweeps, double ApartDb, double UsualDb, NearCopiesBeside Beside)
{
    /// <summary>Share of the usual scatter below which two sweeps are alike.</summary>
    /// <remarks>
    /// Of sweeps that resemble each other by a correlation ρ the scatter falls to √(1 − ρ): one in eight is ρ = 0.984, and no
    /// more a repeat.
    /// </remarks>
    public const double Share = 1.0 / 8;

    /// <summary>The same where only sweeps of another level show what is usual.</summary>
    public const double ShareOfSteps = 1.0 / 16;

    // Fewer frequencies scatter by little now and then: of twenty, one in eight comes by chance less than once in 10^12.
    public const int FewestPoints = 20;

    // Noise of 10 000 looks, the most that is reckoned with.
    private const double SteadiestNoiseDb = 0.0434;

    // With most pairs alike the others may be the odd ones.
    private const int FewestPairs = 6;
    private const double MostAlike = 0.4;

    // Twice the power: noise then scatters by 1.4 times as much at most.
    private const double SameLevelDb = 3;

    // All pairs of many sweeps take long and tell no more.
    private const int MostNeighbours = 30;

    /// <summary>Near copies among floor, reference and covered sweeps.</summary>
    /// <param name="campaign">Sweeps on their common grid; copies that agree everywhere are not among them.</param>
    /// <param name="floor">The floor; null where none is known.</param>
    /// <param name="leastOfReferenceDb">
    /// What a reading of the reference scatters by at least, in dB; 0 where only its own sweeps tell.
    /// </param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public static ImmutableArray<NearCopies> Among(
        AlignedCampaign campaign, NoiseFloor? floor, double leastOfReferenceDb, int threads)
    {
        if (campaign.Grid.Count < FewestPoints)
        {
            return [];
        }

        KindPairs[] covered = SideBySide.Of(campaign.Covered.Length, threads,
            i => KindPairs.Of(campaign.Covered[i].Block, campaign.Covered[i].Name));
        Dictionary<KindPairs, UsualPairs> usual = OfSameLevel(covered);
        KindPairs reference = KindPairs.Of(campaign.Reference, null);
        double leastOfSignalDb = QuietestDb(campaign.Reference);
        double[] leastDb = [.. campaign.Covered.Select(c => IsSignal(c.Block, floor) ? leastOfSignalDb : 0)];
        return
        [
            .. campaign.Floor is { } noise ? OfFloor(KindPairs.Of(noise, null)) : [],
            .. OfReference(reference, leastOfReferenceDb),
            .. covered.Zip(leastDb, (kind, least) => OfCovered(kind, usual[kind], least)).SelectMany(alike => alike),
        ];
    }

    /// <summary>
    /// The reference, where all of its sweeps scatter by far less than covered ones do apart from noise: copies, or a cloth that
    /// moves.
    /// </summary>
    /// <param name="campaign">Sweeps on their common grid.</param>
    /// <param name="coveredDb">What a reading of the covered sweeps scatters by at least, apart from noise, in dB.</param>
    public static NearCopies? QuietReference(AlignedCampaign campaign, double coveredDb) =>
        campaign.Grid.Count < FewestPoints || campaign.Reference.SweepCount < 2 ? null
            : OfAnotherLevel(KindPairs.Of(campaign.Reference, null), coveredDb, NearCopiesBeside.CoveredSweeps)
                .SingleOrDefault(alike => alike.Sweeps.Length == campaign.Reference.SweepCount);

    // Specimens mostly read about as high, and then all are held against the same pairs: those are sorted once.
    private static Dictionary<KindPairs, UsualPairs> OfSameLevel(KindPairs[] kinds)
    {
        KindPairs[] byLevel = [.. kinds.OrderBy(k => k.LevelDb)];
        var usual = new Dictionary<KindPairs, UsualPairs>();
        Range alike = 0..0;
        UsualPairs? ofAlike = null;
        foreach (KindPairs kind in byLevel)
        {
            Range own = Alike(byLevel, kind.LevelDb, alike);
            if (ofAlike is null || !own.Equals(alike))
            {
                (alike, ofAlike) = (own, UsualPairs.Of(byLevel[own]));
            }

            usual.Add(kind, ofAlike);
        }

        return usual;
    }

    // Neither end lies before that of a lower level.
    private static Range Alike(KindPairs[] byLevel, double levelDb, Range ofLower)
    {
        (int first, int end) = (ofLower.Start.Value, ofLower.End.Value);
        while (levelDb - byLevel[first].LevelDb > SameLevelDb)
        {
            first++;
        }

        while (end < byLevel.Length && byLevel[end].LevelDb - levelDb <= SameLevelDb)
        {
            end++;
        }

        return first..end;
    }

    /// <summary>
    /// Whether sweeps are of signal, so that the reference shows how they should scatter: noise that is averaged scatters by less
    /// than a restless source does. Where no floor is known, they are taken for it.
    /// </summary>
    public static bool IsSignal(SweepBlock block, NoiseFloor? floor) =>
        2 * RepeatGroups.Points(block, [.. Enumerable.Range(0, block.SweepCount)], floor).Length >= block.PointCount;

    /// <summary>Whether sweeps that repeat each other show by their own pairs what is usual.</summary>
    public static bool ShowUsual(params IEnumerable<SweepBlock> blocks) =>
        blocks.Sum(b => b.SweepCount * (b.SweepCount - 1) / 2) >= FewestPairs;

    private static IEnumerable<NearCopies> In(KindPairs kind, UsualPairs usual)
    {
        if (usual.MiddleDb == 0 || usual.MiddleDb < kind.StepDb || usual.MostAreAlike)
        {
            return [];
        }

        return kind.Below(Share * usual.MiddleDb) is not { Length: > 0 } alike ? []
            : [kind.Told(alike, usual.MiddleDb, NearCopiesBeside.OtherSweeps)];
    }

    // Where all of them are alike, only sweeps of another level of the source show it.
    private static NearCopies[] OfReference(KindPairs reference, double leastDb) =>
        In(reference, UsualPairs.Of([reference])).ToArray() is { Length: > 0 } found ? found
            : OfAnotherLevel(reference, leastDb, NearCopiesBeside.LinearitySweeps);

    // Where all are alike, only the reference shows it: what source and receiver scatter in proportion is in both.
    private static NearCopies[] OfCovered(KindPairs kind, UsualPairs usual, double leastDb) =>
        In(kind, usual).ToArray() is { Length: > 0 } found ? found
            : OfAnotherLevel(kind, leastDb, NearCopiesBeside.ReferenceSweeps);

    private static NearCopies[] OfAnotherLevel(KindPairs kind, double leastDb, NearCopiesBeside beside) =>
        leastDb >= kind.StepDb && kind.Below(ShareOfSteps * leastDb) is { Length: > 0 } alike
            ? [kind.Told(alike, leastDb, beside)] : [];

    /// <summary>
    /// What a reading scatters by in the quietest pair of sweeps that follow each other, in dB; 0 of a single sweep. Two
    /// frequencies at least.
    /// </summary>
    /// <remarks>By the middle of the steps, so that no restless sweep and no transmitter makes others look too quiet.</remarks>
    public static double QuietestDb(SweepBlock block) => QuietestBelowDb(block, double.PositiveInfinity) ?? 0;

    /// <summary>The same where it lies below a limit, else null.</summary>
    /// <inheritdoc cref="QuietestDb"/>
    public static double? QuietestBelowDb(SweepBlock block, double limitDb)
    {
        double? quietest = null;
        for (int j = 1; j < block.SweepCount; j++)
        {
            quietest = PairScatter.MiddleBelow(block[j - 1], block[j], quietest ?? limitDb) ?? quietest;
        }

        return quietest;
    }

    // Noise is as different from sweep to sweep as it is from frequency to frequency, or more, where the points share some of it.
    private static NearCopies[] OfFloor(KindPairs floor)
    {
        NearCopies[] found = [.. In(floor, UsualPairs.Of([floor]))];
        double limit = Math.Min(SteadiestNoiseDb, Share * floor.AlongDb);
        return found.Length > 0 ? found
            : floor.AlongDb >= floor.StepDb && floor.Below(limit) is { Length: > 0 } alike
            ? [floor.Told(alike, floor.AlongDb, NearCopiesBeside.Frequencies)] : [];
    }

    /// <summary>What is usual between two sweeps.</summary>
    /// <param name="MiddleDb">Median scatter of a reading between them in dB; 0 where too few pairs tell.</param>
    /// <param name="MostAreAlike">So many pairs lie far below the median that the others may be the odd ones.</param>
    private sealed record UsualPairs(double MiddleDb, bool MostAreAlike)
    {
        /// <summary>From all pairs of these kinds together; fewer than six pairs tell nothing.</summary>
        public static UsualPairs Of(KindPairs[] kinds)
        {
            double[] all = [.. kinds.SelectMany(k => k.Usual)];
            double middle = all.Length < FewestPairs ? 0 : Sample.Median(all);
            return new UsualPairs(middle, all.Count(s => s < Share * middle) >= MostAlike * all.Length);
        }
    }

    private readonly record struct AlikePair(int One, int Other, double Db, bool SamePlacement);

    private sealed class KindPairs
    {
        private readonly SweepBlock _block;
        private readonly SpecimenName? _specimen;
        private readonly AlikePair[] _pairs;

        private KindPairs(SweepBlock block, SpecimenName? specimen, AlikePair[] pairs)
        {
            (_block, _specimen, _pairs) = (block, specimen, pairs);
            LevelDb = Sample.Mean(block[0]);

            // Putting back may change what is seen at single frequencies; only sweeps of one placement show how sweeps scatter.
            Usual = [.. (pairs.Any(p => p.SamePlacement) ? pairs.Where(p => p.SamePlacement) : pairs).Select(p => p.Db)];
        }

        /// <summary>Mean level of the first sweep in dB: kinds of about one level are held against each other.</summary>
        public double LevelDb { get; }

        /// <summary>Scatter of a reading between two sweeps in dB, one a pair, of one placement where any are.</summary>
        public double[] Usual { get; }

        /// <summary>Step in dB in which the levels are shown.</summary>
        public double StepDb => _block.StepDb;

        /// <summary>
        /// Scatter from frequency to frequency in dB, by the median of the steps; a few transmitters do not bear on it.
        /// </summary>
        public double AlongDb
        {
            get
            {
                double[] steps =
                    [.. Enumerable.Range(1, _block.PointCount - 1).Select(f => Math.Abs(_block[0][f] - _block[0][f - 1]))];
                return Sample.Median(steps) / (MedianOfNormal * Math.Sqrt(2));
            }
        }

        // Φ⁻¹(0.75): half of normal values lie nearer to their mean.
        private const double MedianOfNormal = 0.6745;

        /// <summary>Holds each sweep against the 30 that follow it.</summary>
        public static KindPairs Of(SweepBlock block, SpecimenName? specimen)
        {
            List<AlikePair> pairs = [];
            for (int i = 0; i < block.SweepCount; i++)
            {
                for (int j = i + 1; j < Math.Min(block.SweepCount, i + 1 + MostNeighbours); j++)
                {
                    bool same = block.Sweeps[i].Placement == block.Sweeps[j].Placement;
                    pairs.Add(new AlikePair(i, j, PairScatter.Of(block[i], block[j]), same));
                }
            }

            return new KindPairs(block, specimen, [.. pairs]);
        }

        /// <summary>The pairs that scatter by less than a limit in dB.</summary>
        public AlikePair[] Below(double limit) => [.. _pairs.Where(p => p.Db < limit)];

        /// <summary>The finding on pairs that are alike, one at least, with what is usual in dB.</summary>
        public NearCopies Told(AlikePair[] alike, double usual, NearCopiesBeside beside)
        {
            IEnumerable<int> sweeps = alike.SelectMany(p => new[] { p.One, p.Other }).Distinct().Order();
            ImmutableArray<Sweep> told = [.. sweeps.Select(j => _block.Sweeps[j])];
            return new(_block.Sweeps[0].Role, _specimen, told, alike.Max(p => p.Db), usual, beside);
        }
    }
}
