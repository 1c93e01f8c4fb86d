using MathNet.Numerics.Distributions;
using SweepStats.Statistics;

namespace SweepStats.Alignment;

/// <summary>
/// Whether the lowest level of some sweeps is the bottom of what the receiver shows: readings below it stand at it.
/// </summary>
/// <remarks>
/// Two signs. Noise on a dB scale falls at least as far and as often as it rises: where ten readings stand farther above the
/// level round about than the lowest level lies below it, and none below the lowest, readings have been cut off (by chance once
/// in 2¹⁰ = 1024 times). And where levels carry digits enough to differ, more readings stand at the lowest level than those
/// just above it let expect. Both look at readings against their neighbourhood, so that a floor that slopes or steps has no
/// bottom.
/// </remarks>
/// <param name="LevelDb">The lowest level in dB.</param>
/// <param name="Readings">Readings that stand at it.</param>
/// <param name="IsLimit">Whether the receiver shows nothing lower.</param>
internal sealed record BottomTies(double LevelDb, int Readings, bool IsLimit)
{
    private const int FewestReadings = 4;
    private const int FewestAbove = 10;
    private const int HalfWidth = 4;

    // Of two sweeps the middle is no more than their mean.
    private const int FewestForMiddle = 3;
    private const double NormalMedian = 0.6745;
    private const double MostOfMedian = 0.3;

    private const double ByChance = 1e-4;
    private const double ScatterInSteps = 5;
    private const double UnseenStep = 1e-4;

    /// <summary>Readings among which they are found.</summary>
    public required int ReadingCount { get; init; }

    /// <summary>Looks at all readings of a block.</summary>
    public static BottomTies Of(SweepBlock block)
    {
        double lowest = block.LowestDb;
        int count = block.SweepCount * block.PointCount;
        int at = Enumerable.Range(0, block.SweepCount).Sum(j => ReachesDown(block, j, lowest) ? Upto(block[j], lowest) : 0);
        return new BottomTies(lowest, at,
            at >= FewestReadings && at < count && IsCutOff(block, lowest, at))
        { ReadingCount = count };
    }

    /// <summary>Whether some reading of a sweep stands at a level.</summary>
    public static bool ReachesDown(SweepBlock block, int sweep, double levelDb) => IsAt(block.ExtremesDb(sweep).Lowest, levelDb);

    private static bool IsCutOff(SweepBlock block, double lowest, int at)
    {
        double step = Math.Max(UnseenStep, Math.Max(DisplayStep.Of(block), block.UsualSteps.Coarsest));
        return IsMirrored(block, lowest, at, step) || IsTied(block, lowest, at, step);
    }

    // Readings that stand at a level or below.
    private static int Upto(ReadOnlySpan<double> levels, double levelDb)
    {
        int count = 0;
        foreach (double level in levels)
        {
            count += IsAt(level, levelDb) ? 1 : 0;
        }

        return count;
    }

    /// <summary>Whether a reading stands at a level.</summary>
    public static bool IsAt(double reading, double levelDb) => reading <= levelDb + DisplayStep.Same;

    // A reading in the middle of its step is up to half a step off, and so is the level round about: two steps more are asked
    // for above than below. Neighbours that rise together are one transmitter, and count once.
    private static bool IsMirrored(SweepBlock block, double lowest, int at, double step)
    {
        double[] round = Round(block);
        double[] far = [.. round.Select(level => (2 * level) - lowest + (2 * step))];
        double[][] beyond = [.. Rows(block).Select(row => row.Zip(far, (level, limit) => level - limit).ToArray())];
        double[] mirrored = [.. beyond.SelectMany(row => row).Where(IsBeyond)];
        bool[] any = [.. far.Select((_, f) => Array.Exists(beyond, row => IsBeyond(row[f])))];
        int runs = block.SweepCount < FewestForMiddle ? Runs(any) : beyond.Sum(row => Runs([.. row.Select(IsBeyond)]));
        return runs >= FewestAbove && at >= mirrored.Length / 2 && ThinsOut(mirrored);
    }

    // Noise thins out upwards, transmitters stand well above it: a tenth of a normal tail, or of one that falls as an
    // exponential, lies within 0.15 to 0.19 of its median distance.
    private static bool ThinsOut(double[] beyond) =>
        Sample.Quantile(beyond, 0.1) <= (MostOfMedian * Sample.Median(beyond)) + DisplayStep.Same;

    private static bool IsBeyond(double beyond) => beyond >= -DisplayStep.Same;

    private static int Runs(bool[] marks) => marks.Where((mark, f) => mark && (f == 0 || !marks[f - 1])).Count();

    private static bool IsTied(SweepBlock block, double lowest, int at, double step)
    {
        double scatter = Scatter(block);
        double steps = scatter / step;
        int above = Rows(block).Sum(row => row.Count(l => !IsAt(l, lowest) && l <= lowest + scatter));
        return steps >= ScatterInSteps && 1 - Poisson.CDF((above + 1) / steps, at - 1) < ByChance;
    }

    // The level round about each frequency: median of the readings of all sweeps at it and its neighbours, or of its own, where
    // there are several, if that is higher.
    private static double[] Round(SweepBlock block)
    {
        double[][] rows = Rows(block);
        double[] own = rows.Length < FewestForMiddle ? [] : new RowMedians(rows.Length).Of(j => rows[j], block.PointCount);
        var round = new double[block.PointCount];
        for (int f = 0; f < round.Length; f++)
        {
            double beside = Sample.Median(Beside(rows, Math.Max(0, f - HalfWidth), Math.Min(round.Length, f + HalfWidth + 1)));
            round[f] = own.Length == 0 ? beside : Math.Max(beside, own[f]);
        }

        return round;
    }

    private static double[] Beside(double[][] rows, int start, int end)
    {
        var beside = new double[rows.Length * (end - start)];
        for (int j = 0; j < rows.Length; j++)
        {
            rows[j].AsSpan(start..end).CopyTo(beside.AsSpan(j * (end - start)));
        }

        return beside;
    }

    // Standard deviation of a reading, told by the median, which a clipped share does not move much: about its neighbours, or
    // about the mean of the sweeps where that is less.
    private static double Scatter(SweepBlock block)
    {
        double[][] rows = Rows(block);
        double beside = Typical(rows.SelectMany(FromNeighbours)) / Math.Sqrt(1.5);
        double between = Typical(Enumerable.Range(0, block.PointCount).SelectMany(f => Deviations.FromMean(At(rows, f))));
        return rows.Length < 2 ? beside : Math.Min(beside, between * Math.Sqrt(rows.Length / (rows.Length - 1.0)));
    }

    private static IEnumerable<double> FromNeighbours(double[] row) =>
        Enumerable.Range(1, Math.Max(0, row.Length - 2)).Select(f => row[f] - ((row[f - 1] + row[f + 1]) / 2));

    private static double Typical(IEnumerable<double> away)
    {
        double[] sizes = [.. away.Select(Math.Abs)];
        return sizes.Length == 0 ? 0 : Sample.Median(sizes) / NormalMedian;
    }

    private static double[][] Rows(SweepBlock block) =>
        [.. Enumerable.Range(0, block.SweepCount).Select(j => block[j].ToArray())];

    private static double[] At(double[][] rows, int point) => [.. rows.Select(row => row[point])];
}
