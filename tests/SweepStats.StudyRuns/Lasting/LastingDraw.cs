using SweepStats.Statistics;

namespace SweepStats.StudyRuns.Lasting;

/// <summary>Draws how sweeps lie about their mean, one after the other: one row a sweep, in standard deviations.</summary>
internal static class LastingDraw
{
    private const int Waves = 4;

    // Of what moves as a whole or smoothly a little is each sweep's own all the same.
    private const double Own = 0.15;

    /// <summary>So many rows of the cell's points; the sweeps of a cell resemble those before them by its strength.</summary>
    public static double[][] Of(LastingCell cell, int sweeps, RandomSource random)
    {
        double[][] Lasting(Func<double[]> fresh) => Series(sweeps, cell.Strength, fresh);
        double[] One() => Each(cell.Points, random);
        double[] Level() => [.. Enumerable.Repeat(random.Normal(), cell.Points)];
        double[][] own = Series(sweeps, 0, One);
        return cell.Kind switch
        {
            LastingKind.EachFrequency => Lasting(One),
            LastingKind.FineRipple => Sum(Lasting(() => Smooth(cell.Points, cell.Points / 50.0, random)), own, Own),
            LastingKind.WideRipple => Sum(Lasting(() => Smooth(cell.Points, cell.Points / 10.0, random)), own, Own),
            LastingKind.Whole => Sum(Lasting(Level), own, Own),
            LastingKind.WholeAndEachFrequency => Sum(Lasting(Level), Lasting(One), 1),
            LastingKind.HalfOfEachFrequency => Sum(Lasting(One), own, 1),
            _ => Sum(own, Wave(cell, sweeps, random), 1),
        };
    }

    // Stationary from the first sweep on.
    private static double[][] Series(int sweeps, double correlation, Func<double[]> fresh)
    {
        var rows = new double[sweeps][];
        rows[0] = fresh();
        for (int j = 1; j < sweeps; j++)
        {
            rows[j] = [.. rows[j - 1]
                .Zip(fresh(), (last, own) => (correlation * last) + (Math.Sqrt(1 - (correlation * correlation)) * own))];
        }

        return rows;
    }

    private static double[][] Sum(double[][] rows, double[][] others, double share) =>
        [.. rows.Zip(others, (a, b) => a.Zip(b, (x, y) => x + (share * y)).ToArray())];

    private static double[] Each(int points, RandomSource random) =>
        [.. Enumerable.Range(0, points).Select(_ => random.Normal())];

    // A moving average of independent values, bell-shaped, of variance 1.
    private static double[] Smooth(int points, double width, RandomSource random)
    {
        int reach = (int)Math.Ceiling(3 * width);
        double[] weights = [.. Enumerable.Range(-reach, (2 * reach) + 1).Select(i => Math.Exp(-i * i / (width * width)))];
        double norm = Math.Sqrt(weights.Sum(w => w * w));
        double[] fresh = Each(points + (2 * reach), random);
        return [.. Enumerable.Range(0, points).Select(f => weights.Select((w, i) => w * fresh[f + i]).Sum() / norm)];
    }

    // A tenth of a radian or less: what moves is the wave's slope, of either sign over frequency.
    private static double[][] Wave(LastingCell cell, int sweeps, RandomSource random)
    {
        double phase = 2 * Math.PI * random.Uniform(), moved = 0;
        int n = cell.Sweeps;
        bool steady = cell.Kind == LastingKind.SteadyPhase;
        double step = cell.Strength * (steady ? Math.Sqrt(12.0 / (n * (n + 1))) : Math.Sqrt(6.0 / (n + 1)));
        step *= random.Uniform() < 0.5 ? -1 : 1;
        var rows = new double[sweeps][];
        for (int j = 0; j < sweeps; j++)
        {
            double at = moved;
            rows[j] = [.. Enumerable.Range(0, cell.Points)
                .Select(f => at * Math.Sqrt(2) * Math.Cos((2 * Math.PI * Waves * f / cell.Points) + phase))];
            moved += step * (steady ? 1 : random.Normal());
        }

        return rows;
    }
}
