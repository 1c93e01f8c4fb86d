using SweepStats.Bands;
using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Choice;

/// <summary>Ranks the specimens in one band.</summary>
internal static class BandRanker
{
    // Two in ten thousand, one binomial deviation at 5 %, do not change what a reader makes of a probability.
    private const int Draws = 20000;

    /// <summary>Ranks over the compared part of a band with a frequency in it; groups only where repeats allow.</summary>
    public static BandRanking Of(
        FrequencyGrid grid, CurvesAndSweeps specimens, RankedBand over, RankingQuestion asked, int threads)
    {
        int[] inside = [.. Enumerable.Range(0, grid.Count).Where(f => over.Band.Band.Contains(grid[f]))];
        int yardstick = specimens.Curves.IndexOf(specimens.Curves.FirstOrDefault(c => c.Name == asked.Question.Yardstick)!);
        int[] candidates = [.. Enumerable.Range(0, specimens.Curves.Length).Where(i => i != yardstick)];
        int[] readable = [.. inside.Where(f => Readable(specimens.Curves, f))];
        int[] compared = ComparedPart.Of(grid, over.Band.Band, readable, [.. candidates.Select(i => specimens.Sweeps[i])]);
        double[] weights = LogWeights.OfPart(grid, over.Band.Band, new HashSet<int>(compared).Contains);
        CandidateFigure[] figures =
            CandidateFigures.Of(specimens.Sweeps, specimens.Curves, weights, over.ByPlacement, threads);
        RankedSpecimen[] all = SideBySide.Of(
            specimens.Curves.Length, threads,
            i => Stated(specimens.Curves[i], new ComparedPoints(weights, inside, asked.Level), figures[i]));
        candidates = [.. candidates.Where(i => double.IsFinite(figures[i].Mean.Value))];
        if (figures[0].DeviationDb is not null && candidates.Length > 0 && compared.Length > 0)
        {
            CandidateMean[] means = [.. figures.Select(f => f.Mean)];
            Group(all, means, candidates, asked.Level, threads);
            // Sweeps of a specimen that stays where it is say nothing of how it lies the next time: no chance of being the best
            // follows.
            if (over.AllPutBack)
            {
                Chances(all, means, candidates, asked.Seed);
            }

            if (yardstick >= 0)
            {
                for (int i = 0; i < all.Length; i++)
                {
                    all[i] = all[i] with
                    {
                        BelowYardstickDb = i == yardstick ? null
                        : YardstickDifference.Of(figures[yardstick].Mean, figures[i].Mean, asked.Level),
                    };
                }
            }
        }

        return new BandRanking
        {
            Name = over.Band.Name,
            Band = new FrequencyBand(grid[inside[0]], grid[inside[^1]]),
            PointCount = compared.Length,
            LeftOut = inside.Length - readable.Length,
            CappedLeftOut = readable.Length - compared.Length,
            OverloadedLeftOut =
                readable.Except(compared)
                    .Count(f => specimens.Curves.Any(c => c.Readings.Mark(f).State == ShieldingState.Overloaded)),
            Ranking = Ranked([.. all.Where((_, i) => i != yardstick)]),
            Yardstick = yardstick < 0 ? null : all[yardstick],
        };
    }

    private static bool Readable(ImmutableArray<ShieldingCurve> curves, int f) =>
        curves[0].Readings.Mark(f) is { Ambient: false, ReferenceInFloor: false };

    private static RankedSpecimen Stated(ShieldingCurve curve, ComparedPoints over, CandidateFigure figure)
    {
        var figures = new FigureEstimator(curve, over.Weights, over.Level);
        bool anything = Array.Exists(over.Weights, w => w > 0);
        double[] limits = curve.Readings.OneSidedLowDb.ToArray();
        bool unlimited =
            over.Inside.Any(f => double.IsNaN(limits[f]) || curve.Readings.Mark(f).Kind == ReadingKind.Unreadable);
        return new RankedSpecimen
        {
            Name = curve.Name,
            MeanDb = anything ? figures.Limits(figures.Parts()) : default,
            AtLeast = unlimited ? null : new Decibels(over.Inside.Min(f => limits[f])),
            CappedCount = over.Inside.Count(f => curve.Readings.Mark(f).State == ShieldingState.Capped),
            OverloadedCount = over.Inside.Count(f => curve.Readings.Mark(f).State == ShieldingState.Overloaded),
            Open = figure.Mean.Open || !anything || !double.IsFinite(figure.Mean.Value),
            DeviationDb = anything ? figure.DeviationDb : null,
        };
    }

    // Groups stay together; within one the best claim comes first. Ranks count in the order that a reader sees.
    private static ImmutableArray<RankedSpecimen> Ranked(RankedSpecimen[] candidates)
    {
        IEnumerable<RankedSpecimen> ordered = candidates.OrderBy(s => s.Group ?? int.MaxValue)
            .ThenByDescending(s => s.MeanDb.Low ?? s.MeanDb.Value ?? double.NegativeInfinity).ThenBy(s => s.Name);
        return [.. ordered.Select((s, i) => s with { Rank = i + 1 })];
    }

    private static void Chances(RankedSpecimen[] all, CandidateMean[] means, int[] candidates, ulong seed)
    {
        CandidateMean[] compared = [.. candidates.Select(i => means[i])];
        double[] shares = BestOf.Shares(
            [.. compared.Select(m => m.Value)], [.. compared.Select(m => m.StandardError)],
            compared.Max(m => m.DegreesOfFreedom), seed, Draws);
        Interval[] chances = BestOf.Limits(shares, [.. compared.Select(m => m.Open)]);
        for (int c = 0; c < candidates.Length; c++)
        {
            all[candidates[c]] = all[candidates[c]] with { ProbabilityBest = chances[c] };
        }
    }

    private static void Group(
        RankedSpecimen[] all, CandidateMean[] means, int[] candidates, Confidence level, int threads)
    {
        int[] left = candidates;
        for (int group = 1; left.Length > 0; group++)
        {
            bool[] stays = BestCandidates.Among([.. left.Select(i => means[i])], 1 - level.Level, threads);
            foreach (int i in left.Where((_, c) => stays[c]))
            {
                all[i] = all[i] with { Group = group };
            }

            left = [.. left.Where((_, c) => !stays[c])];
        }
    }

    /// <param name="Weights">One a frequency; 0 where not all can be compared.</param>
    /// <param name="Inside">The frequencies of the band.</param>
    /// <param name="Level">Level of the limits.</param>
    private readonly record struct ComparedPoints(double[] Weights, int[] Inside, Confidence Level);
}
