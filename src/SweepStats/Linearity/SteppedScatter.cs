using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Statistics;

namespace SweepStats.Linearity;

/// <summary>
/// How much a reading of the reference scatters at least, as linearity sweeps show: the same way with less source power.
/// </summary>
/// <remarks>
/// What source and receiver scatter in proportion is the same at every level. What is added to the signal, as noise is, weighs
/// less against more power, by the ratio of the voltages at most. So the reference scatters by no less than linearity sweeps
/// over that ratio, and by as much as they do where the floor shows that noise has little part in it. Covered sweeps show
/// nothing of the kind: a cloth that moves scatters by itself. Of each level the quietest pair counts, by the middle of its steps
/// (<see cref="PairScatter.Middle"/>), so that neither a restless sweep nor a transmitter makes the reference look too quiet.
/// </remarks>
internal static class SteppedScatter
{
    // Of two, one may be restless.
    private const int FewestSweeps = 3;

    // All pairs of many sweeps take long and tell no more.
    private const int Neighbours = 2;

    // Share of the variance seen that noise may have.
    private const double MostNoise = 0.25;

    /// <summary>
    /// Standard deviation of a reading of the reference in dB that is the least to expect; 0 where nothing shows it.
    /// </summary>
    /// <param name="campaign">The sweeps.</param>
    /// <param name="floor">The floor; null where none is known.</param>
    /// <param name="campaignDbm">Source level stated for the whole campaign in dBm; null where none is.</param>
    public static double LeastOfReferenceDb(AlignedCampaign campaign, NoiseFloor? floor, double? campaignDbm)
    {
        ImmutableArray<SourceLevel> levels = SourceLevel.Of(campaign, campaignDbm);
        // A ratio tells what arrived only beside what arrived for the reference.
        bool isComparable = campaign.Scale != LevelScale.DecibelRatio || levels.Any(l => l.IsReference);
        double reference = Sample.Mean(campaign.Reference.Means().AsSpan());
        return levels.Where(l => isComparable && !l.IsReference && l.Sweeps.Length >= FewestSweeps)
            .Select(l => LeastDb(l, reference, floor)).DefaultIfEmpty(0).Max();
    }

    /// <summary>
    /// Standard deviation of a reading in dB that the quietest specimen shows apart from noise; 0 where nothing shows it. No
    /// measure of the reference: the cloth may move.
    /// </summary>
    public static double LeastOfCoveredDb(AlignedCampaign campaign, NoiseFloor? floor)
    {
        SweepBlock[] repeated = [.. campaign.Covered.Select(c => c.Block).Where(b => b.SweepCount >= FewestSweeps)];
        if (floor is null || repeated.Length == 0 || campaign.Grid.Count < NearCopies.FewestPoints)
        {
            return 0;
        }

        (SweepBlock quietest, double seen) = (repeated[0], double.PositiveInfinity);
        foreach (SweepBlock block in repeated)
        {
            if (NearCopies.QuietestBelowDb(block, seen) is { } quieter)
            {
                (quietest, seen) = (block, quieter);
            }
        }

        ImmutableArray<double> means = quietest.Means();
        double noise = Enumerable.Range(0, means.Length).Average(f => NoiseOf(floor, means[f], f));
        return noise <= MostNoise * seen * seen ? seen : 0;
    }

    private static double LeastDb(SourceLevel level, double referenceDb, NoiseFloor? floor)
    {
        int[] places = [.. Enumerable.Range(0, level.Sweeps[0].Length).Where(f => floor is null || !floor.Ambient[f])];
        if (places.Length < NearCopies.FewestPoints)
        {
            return 0;
        }

        double[][] sweeps = [.. level.Sweeps.Select(s => RowPart.At(s, places))];
        double[] Beside(double[] one, int i) =>
            [.. sweeps.Skip(i + 1).Take(Neighbours).Select(next => PairScatter.Middle(one, next))];
        double seen = sweeps.SelectMany(Beside).Min();
        double below = Math.Max(0, referenceDb - Sample.Mean([.. places.Select(level.MeanAt)]));
        return floor is not null && Noise(level, floor, places) <= MostNoise * seen * seen ? seen
            : seen * Math.Pow(10, -below / 20);
    }

    // Mean variance of a reading in dB² that noise alone makes.
    private static double Noise(SourceLevel level, NoiseFloor floor, int[] places) =>
        places.Average(f => NoiseOf(floor, level.MeanAt(f), f));

    private static double NoiseOf(NoiseFloor floor, double levelDb, int f) =>
        floor.Noise.Max(n => n.LogCumulants(n.SnrInDecibels(levelDb - floor.LevelDb[f])).Variance);
}
