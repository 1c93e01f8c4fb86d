namespace SweepStats.Statistics;

/// <summary>Scatter between groups against scatter within them; groups may differ in size.</summary>
/// <remarks>
/// Formula: F = [Σnⱼ(mⱼ − m)²/(k − 1)] / [ΣΣ(x − mⱼ)²/(N − k)]. Mean squares carry the squared unit of the values. Assumes
/// independent normal scatter of one size in every group. The data are centred first, which is exact for values within a factor
/// of two of their mean: what digits are lost then are those lost in storing the values. Source: JCGM 100:2008, H.5.2. Error:
/// checked against the certified NIST StRD sets (fixtures/published/nist-strd-anova).
/// </remarks>
public sealed record OneWayAnova
{
    private OneWayAnova()
    {
    }

    /// <summary>Groups minus one.</summary>
    public required int BetweenDegreesOfFreedom { get; init; }

    /// <summary>Values minus groups.</summary>
    public required int WithinDegreesOfFreedom { get; init; }

    /// <summary>Sum of squares between groups.</summary>
    public required double BetweenSumOfSquares { get; init; }

    /// <summary>Sum of squares within groups.</summary>
    public required double WithinSumOfSquares { get; init; }

    /// <summary>
    /// Effective group size, (N − Σnⱼ²/N)/(k − 1): the size itself where all are alike. Source: ISO 5725-2, 7.4.5.2 (from
    /// memory).
    /// </summary>
    public required double EffectiveGroupSize { get; init; }

    /// <summary>Mean square between groups.</summary>
    public double BetweenMeanSquare => BetweenSumOfSquares / BetweenDegreesOfFreedom;

    /// <summary>Mean square within groups: the squared standard deviation of one value about its group.</summary>
    public double WithinMeanSquare => WithinSumOfSquares / WithinDegreesOfFreedom;

    /// <summary>Ratio of the mean squares; infinite where only groups differ, not a number where nothing does.</summary>
    public double F => Ratio.F;

    /// <summary>Probability of an F at least as large where the groups are alike.</summary>
    public double Probability => Ratio.Probability;

    /// <summary>Estimated variance that a group shares, (between − within)/effective size, not below 0.</summary>
    public double GroupVariance => Math.Max(0, (BetweenMeanSquare - WithinMeanSquare) / EffectiveGroupSize);

    private VarianceRatio Ratio => new(BetweenSumOfSquares, BetweenDegreesOfFreedom, WithinSumOfSquares, WithinDegreesOfFreedom);

    /// <summary>Takes the scatter apart.</summary>
    /// <param name="values">All values.</param>
    /// <param name="groups">The group of each value, numbered from 0 without gaps.</param>
    /// <exception cref="ArgumentException">
    /// Numbers of values and groups differ, a group has no value, there is one group only, or no group has two values.
    /// </exception>
    public static OneWayAnova Of(ReadOnlySpan<double> values, ReadOnlySpan<int> groups)
    {
        int[] sizes = Sizes(values, groups);
        double centre = Sample.Mean(values);
        double[] means = Means(values, groups, sizes, centre);
        return new OneWayAnova
        {
            BetweenDegreesOfFreedom = sizes.Length - 1,
            WithinDegreesOfFreedom = values.Length - sizes.Length,
            BetweenSumOfSquares = Between(means, sizes, values.Length),
            WithinSumOfSquares = Within(values, groups, means, centre),
            EffectiveGroupSize = EffectiveSize(sizes, values.Length),
        };
    }

    private static int[] Sizes(ReadOnlySpan<double> values, ReadOnlySpan<int> groups)
    {
        if (values.Length != groups.Length)
        {
            throw new ArgumentException($"Each value needs its group: {values.Length} values, {groups.Length} groups.",
                nameof(groups));
        }

        int count = 0;
        foreach (int group in groups)
        {
            if (group < 0 || group >= groups.Length)
            {
                throw new ArgumentException($"Groups are numbered from 0 without gaps; {group} is out of place.", nameof(groups));
            }

            count = Math.Max(count, group + 1);
        }

        var sizes = new int[count];
        foreach (int group in groups)
        {
            sizes[group]++;
        }

        int empty = Array.IndexOf(sizes, 0);
        if (empty >= 0)
        {
            throw new ArgumentException($"Groups are numbered from 0 without gaps; group {empty} has no value.", nameof(groups));
        }

        if (count < 2 || values.Length == count)
        {
            throw new ArgumentException("At least two groups and one group with two values are needed.", nameof(groups));
        }

        return sizes;
    }

    private static double[] Means(ReadOnlySpan<double> values, ReadOnlySpan<int> groups, int[] sizes, double centre)
    {
        var sums = new CompensatedSum[sizes.Length];
        for (int i = 0; i < values.Length; i++)
        {
            sums[groups[i]].Add(values[i] - centre);
        }

        var means = new double[sizes.Length];
        for (int group = 0; group < means.Length; group++)
        {
            means[group] = sums[group].Value / sizes[group];
        }

        return means;
    }

    private static double Between(double[] means, int[] sizes, int count)
    {
        var squares = new CompensatedSum();
        var rest = new CompensatedSum();
        for (int group = 0; group < means.Length; group++)
        {
            squares.Add(sizes[group] * means[group] * means[group]);
            rest.Add(sizes[group] * means[group]);
        }

        // The centre is the mean only up to its rounding; what is left of it comes off here.
        return Math.Max(0, squares.Value - (rest.Value * rest.Value / count));
    }

    private static double Within(ReadOnlySpan<double> values, ReadOnlySpan<int> groups, double[] means, double centre)
    {
        var squares = new CompensatedSum();
        for (int i = 0; i < values.Length; i++)
        {
            double deviation = values[i] - centre - means[groups[i]];
            squares.Add(deviation * deviation);
        }

        return squares.Value;
    }

    private static double EffectiveSize(int[] sizes, int count)
    {
        double squares = 0;
        foreach (int size in sizes)
        {
            squares += (double)size * size;
        }

        return (count - (squares / count)) / (sizes.Length - 1);
    }
}
