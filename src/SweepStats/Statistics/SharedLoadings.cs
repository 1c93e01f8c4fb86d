namespace SweepStats.Statistics;

/// <summary>Normal variables λ_j·Z₀ + √(1 − λ_j²)·Z_j that share Z₀: the probability that all lie below x.</summary>
/// <remarks>
/// Formula: ∫ φ(z)·Π Φ((x − λ_j·z)/√(1 − λ_j²)) dz. The steepest factor falls within w = √(1 − λ²)/λ of z = x/λ, which may be a
/// millionth; so the trapezoid rule runs over u = τ + w·sinh(τ)/2 with z = x/λ + w·sinh(τ): steps of w/6 there that grow to a
/// third far off, analytic all along. Immutable. Many loadings are stood for by few (<see cref="LoadingGroups"/>). Error:
/// absolute 1e-10 (through the tests of <see cref="ManyToOne"/>).
/// </remarks>
internal sealed class SharedLoadings
{
    private const double Step = 0.17;
    private const double Bend = 0.5;
    private const double Reach = 7;

    // Two variables closer than this differ by less than the error.
    private const double LeastOwnPart = 1e-9;

    private const double LogNothing = -30;

    private readonly double[] _perX, _perZ, _times;
    private readonly double _steepest;
    private readonly (double Offset, double Width)[] _nodes;

    /// <exception cref="ArgumentException">No loadings, or one that is not between 0 and 1.</exception>
    public SharedLoadings(ReadOnlySpan<double> loadings)
    {
        FiniteValues.Require(loadings, 1, nameof(loadings));
        double[] sorted = loadings.ToArray();
        Array.Sort(sorted);
        if (sorted[0] < 0 || sorted[^1] > 1)
        {
            throw new ArgumentException("A loading lies between 0 and 1.", nameof(loadings));
        }

        Count = sorted.Length;
        double[] own = [.. sorted.Select(l => Math.Max(LeastOwnPart, Math.Sqrt((1 - l) * (1 + l))))];
        IEnumerable<double> etas = sorted.Zip(own, (l, c) => Math.Asinh(l / c));
        LoadingGroup[] groups =
            LoadingGroups.Fewer([.. etas.GroupBy(eta => eta).Select(g => new LoadingGroup(g.Key, g.Count()))]);
        _perX = [.. groups.Select(g => Math.Cosh(g.Eta))];
        _perZ = [.. groups.Select(g => Math.Sinh(g.Eta))];
        _times = [.. groups.Select(g => g.Times)];
        _steepest = sorted[^1];
        _nodes = Nodes(Math.Min(1, own[^1] / _steepest));
    }

    /// <summary>How many variables.</summary>
    public int Count { get; }

    /// <summary>P(all ≤ x).</summary>
    public double AllBelow(double x)
    {
        if (_steepest == 0)
        {
            return Product(x, 0);
        }

        double centre = Math.Clamp(x / _steepest, -Reach, Reach);
        double sum = 0;
        foreach ((double offset, double width) in _nodes)
        {
            double z = centre + offset;
            if (Math.Abs(z) > Reach)
            {
                continue;
            }

            double product = Product(x, z);
            if (product == 0)
            {
                // Every factor falls with z.
                break;
            }

            sum += product * width * Math.Exp(-z * z / 2);
        }

        return Math.Min(1, sum * 0.3989422804014326779);
    }

    private double Product(double x, double z)
    {
        double log = 0;
        for (int j = 0; j < _times.Length; j++)
        {
            log += _times[j] * LogNormalTable.At((x * _perX[j]) - (z * _perZ[j]));
            if (log < LogNothing)
            {
                return 0;
            }
        }

        return Math.Exp(log);
    }

    private static (double Offset, double Width)[] Nodes(double w)
    {
        var upper = new List<(double, double)> { (0, Step * w / (1 + (Bend * w))) };
        double tau = 0, offset = 0;
        for (int i = 1; offset < 2 * Reach; i++)
        {
            // Convex and rising: Newton comes down to the root from above, the tangent's foot.
            tau += Step / (1 + (Bend * w * Math.Cosh(tau)));
            for (int step = 0; step < 4; step++)
            {
                tau -= (tau + (Bend * w * Math.Sinh(tau)) - (i * Step)) / (1 + (Bend * w * Math.Cosh(tau)));
            }

            offset = w * Math.Sinh(tau);
            double rise = w * Math.Cosh(tau);
            upper.Add((offset, Step * rise / (1 + (Bend * rise))));
        }

        return [.. upper.Skip(1).Reverse().Select(n => (-n.Item1, n.Item2)), .. upper];
    }
}
