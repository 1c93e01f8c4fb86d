namespace SweepStats.Statistics;

/// <summary>
/// Means of groups beside what chance makes of them, where each group may scatter by its own amount. Immutable.
/// </summary>
/// <remarks>
/// A value may be a number or a whole curve; T_l is the trace of the covariance Γ_l of group l, its variance for numbers, q_l =
/// n_l/N. With B = Σ n_l‖m_l − m‖², F = B/D, D = Σ(1 − q_l)T_l, on f₁ = D²/[Σ(1 − 2q_l)tr Γ_l² + tr(Σ q_lΓ_l)²] and f₂ = D²/Σ[(1
/// − q_l)² tr Γ_l²/ν_l] degrees of freedom: the means and mean squares of B and D are matched. Two groups of numbers give Welch's
/// t squared. Estimates stand for the Γ_l; a group that tells none is given that of the others together. Two departures, found by
/// trial: a scatter known by one degree of freedom weighs as by two, less one, without which lots of two find a half of what
/// Fisher's F finds; and the means must stand out as well where small groups truly scatter more than large ones by a fixed
/// pattern (Box), since one degree of freedom hides a large scatter as often as not: two values of three times the scatter of six
/// others were taken for different in 11 % by F alone, in 5 % with both. Assumes independent normal values. Source: Brown and
/// Forsythe 1974, Technometrics 16, 129; Mehrotra 1997, Communications in Statistics 26, 1139 (f₁); Box 1954, Annals of
/// Mathematical Statistics 25, 290; Brunner, Dette and Munk 1997, Journal of the American Statistical Association 92, 1494, for
/// several dimensions (all from memory). Error: relative 1e-10 of fixtures/oracles/unequal.R. Size: the rehearsed runs of its
/// tests.
/// </remarks>
internal sealed class UnequalScatter
{
    private readonly int[] _sizes;
    private readonly double[] _shares;
    private readonly double[] _freedom;
    private readonly double[] _traces;
    private readonly double[] _squares;
    private readonly Func<double[], double> _squareOf;

    /// <summary>Takes what is known of the groups.</summary>
    /// <param name="sizes">Values of each group.</param>
    /// <param name="freedom">Degrees of freedom of its scatter; 0 where it tells none. One group must tell it.</param>
    /// <param name="traces">tr Γ of each group.</param>
    /// <param name="squares">tr Γ² of each group.</param>
    /// <param name="squareOf">tr (Σ wΓ)² for a weight of each group.</param>
    public UnequalScatter(int[] sizes, double[] freedom, double[] traces, double[] squares, Func<double[], double> squareOf)
    {
        (_sizes, _freedom, _traces, _squares, _squareOf) = (sizes, freedom, traces, squares, squareOf);
        double count = sizes.Sum();
        _shares = [.. sizes.Select(n => n / count)];
    }

    /// <summary>Numbers: Γ is a variance.</summary>
    public static UnequalScatter OfNumbers(int[] sizes, double[] freedom, double[] variances) =>
        new(sizes, freedom, variances, [.. variances.Select(v => v * v)], weights => Math.Pow(Dot(weights, variances), 2));

    /// <summary>Probability of means at least as far apart where they are alike: the larger of both.</summary>
    /// <param name="ratio">Sum of squares between the groups over that within.</param>
    /// <param name="known">Degrees of freedom that tell the scatter within.</param>
    /// <param name="points">Independent points that a value is worth: 1 for numbers.</param>
    public double Probability(double ratio, double known, double points = 1) =>
        Math.Max(Own(ratio, known, points).Probability, SmallGroupsMore(_sizes, ratio, known, points).Probability);

    /// <summary>F by the scatter of each group.</summary>
    public VarianceRatio Own(double ratio, double known, double points = 1)
    {
        double[] degrees = [.. _sizes.Select(n => n - 1.0)];
        double[] weights = Over([.. _shares.Select(q => 1 - q)]), within = Over(degrees);
        double expected = Dot(weights, _traces), upper = expected * expected / Between(),
            lower = LowerFreedom(weights, expected, points);
        return new VarianceRatio(ratio * Dot(within, _traces) * (known / degrees.Sum()) / expected * upper, upper, lower, lower);
    }

    /// <summary>
    /// Fisher's F where small groups scatter more: by the variance 1 + 5/ν^1.5, that of two values six times, of six 1.4 times
    /// that of very many.
    /// </summary>
    public static VarianceRatio SmallGroupsMore(int[] sizes, double ratio, double known, double points = 1)
    {
        double[] degrees = [.. sizes.Select(n => n - 1.0)];
        double[] variances = [.. degrees.Select(v => 1 + (5 / Math.Pow(Math.Max(1, v), 1.5)))];
        UnequalScatter pattern = OfNumbers(sizes, [.. sizes.Select(_ => 1.0)], variances);
        double between = Dot([.. pattern._shares.Select(q => 1 - q)], variances), within = Dot(degrees, variances);
        double upper = points * between * between / pattern.Between();
        double lower = points * within * within / Dot(degrees, [.. variances.Select(v => v * v)]) * (known / degrees.Sum());
        return new VarianceRatio(ratio * within / between * (known / degrees.Sum()) * upper, upper, lower, lower);
    }

    // The mean square of B about its mean, halved: those that tell their scatter by their own, the others by that of these
    // together.
    private double Between()
    {
        double own = 0, others = 0;
        for (int l = 0; l < _sizes.Length; l++)
        {
            double weight = 1 - (2 * _shares[l]);
            (own, others) = _freedom[l] > 0 ? (own + (weight * _squares[l]), others) : (own, others + weight);
        }

        return own + _squareOf(Over(_shares)) + (others == 0 ? 0 : others * _squareOf(Together()));
    }

    private double LowerFreedom(double[] weights, double expected, double points)
    {
        double sum = 0, less = 0;
        for (int j = 0; j < _sizes.Length; j++)
        {
            if (_freedom[j] > 0)
            {
                double pair = _freedom[j] <= 1 ? 1 : 0;
                double part = weights[j] * weights[j] * _squares[j] / (_freedom[j] + pair);
                (sum, less) = (sum + part, less + (part * pair));
            }
        }

        return Math.Min(points * _freedom.Sum(), (expected * expected / sum) - (less / sum));
    }

    private static double Dot(double[] weights, double[] values)
    {
        double sum = 0;
        for (int l = 0; l < weights.Length; l++)
        {
            sum += weights[l] * values[l];
        }

        return sum;
    }

    // What the scatter of each group counts for, where a group that tells none is given that of the others together.
    private double[] Over(double[] weights)
    {
        double untold = 0;
        double[] over = Together();
        for (int l = 0; l < over.Length; l++)
        {
            untold += _freedom[l] > 0 ? 0 : weights[l];
        }

        for (int l = 0; l < over.Length; l++)
        {
            over[l] = (untold * over[l]) + (_freedom[l] > 0 ? weights[l] : 0);
        }

        return over;
    }

    private double[] Together()
    {
        double all = _freedom.Sum();
        return [.. _freedom.Select(v => v / all)];
    }
}
