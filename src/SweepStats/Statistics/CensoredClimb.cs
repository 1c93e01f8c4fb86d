namespace SweepStats.Statistics;

/// <summary>Climbs the likelihood of <see cref="CensoredGroups"/> in g = μ/σ of each group and h = 1/σ.</summary>
internal sealed class CensoredClimb
{
    private const int MostSteps = 200;
    private static readonly double LogRootTwoPi = 0.5 * Math.Log(2 * Math.PI);

    private readonly double _centre;
    private readonly double[] _values;
    private readonly bool[] _bound;
    private readonly int[] _group;
    private readonly bool[] _seen;

    /// <summary>Values in any unit, whether each is a bound from below, and its group from 0; their mean is taken off.</summary>
    public CensoredClimb(ReadOnlySpan<double> values, ReadOnlySpan<bool> censored, ReadOnlySpan<int> groups)
    {
        _centre = Sample.Mean(values);
        (_values, _bound, _group) = (values.ToArray(), censored.ToArray(), groups.ToArray());
        for (int i = 0; i < _values.Length; i++)
        {
            _values[i] -= _centre;
        }

        _seen = new bool[_group.Max() + 1];
        var first = new double?[_seen.Length];
        for (int i = 0; i < _values.Length; i++)
        {
            if (!_bound[i])
            {
                _seen[_group[i]] = true;
                first[_group[i]] ??= _values[i];
                Fits |= first[_group[i]] != _values[i];
            }
        }
    }

    /// <summary>Some group has two values that differ.</summary>
    public bool Fits { get; }

    /// <summary>The highest likelihood, where <see cref="Fits"/>; a group of bounds alone has a mean of +∞.</summary>
    public CensoredGroups Summit()
    {
        (double[] g, double h) = Start();
        double here = LogLikelihood(g, h);
        for (int step = 0; step < MostSteps; step++)
        {
            (double[] dg, double dh) = Step(g, h);
            double part = 1, there;
            double[] trial;
            do
            {
                trial = [.. g.Zip(dg, (a, d) => a + (part * d))];
                there = h + (part * dh) > 0 ? LogLikelihood(trial, h + (part * dh)) : double.NegativeInfinity;
                part /= 2;
            }
            while (!(there >= here - (1e-13 * Math.Abs(here))) && part > 1e-12);

            double moved = Math.Abs(2 * part * dh) / h;
            (g, h, here) = (trial, h + (2 * part * dh), there);
            if (moved < 1e-13)
            {
                break;
            }
        }

        return CensoredGroups.From([.. g.Select((x, l) => _seen[l] ? (x / h) + _centre : double.PositiveInfinity)], 1 / h, here);
    }

    // From the values and bounds as they are, with the scatter of the values alone or of both, whichever is wider.
    private (double[] G, double H) Start()
    {
        var sums = new (double Sum, int Count)[_seen.Length];
        for (int i = 0; i < _values.Length; i++)
        {
            sums[_group[i]] = (sums[_group[i]].Sum + _values[i], sums[_group[i]].Count + 1);
        }

        double squares = 0;
        int counted = 0;
        for (int i = 0; i < _values.Length; i++)
        {
            if (_seen[_group[i]])
            {
                double apart = _values[i] - (sums[_group[i]].Sum / sums[_group[i]].Count);
                (squares, counted) = (squares + (apart * apart), counted + 1);
            }
        }

        double h = 1 / Math.Sqrt(squares / counted);
        return ([.. sums.Select(s => s.Sum / s.Count * h)], h);
    }

    private double LogLikelihood(double[] g, double h)
    {
        var sum = new CompensatedSum();
        double log = Math.Log(h);
        for (int i = 0; i < _values.Length; i++)
        {
            double z = g[_group[i]] - (h * _values[i]);
            if (_seen[_group[i]])
            {
                sum.Add(_bound[i] ? NormalTail.LogCdf(z) : log - (z * z / 2) - LogRootTwoPi);
            }
        }

        return sum.Value;
    }

    // Newton: each g meets only h, so the system is solved group by group.
    private (double[] G, double H) Step(double[] g, double h)
    {
        var slope = new double[g.Length];
        var bend = new double[g.Length];
        var mixed = new double[g.Length];
        double slopeH = 0, bendH = 0;
        for (int i = 0; i < _values.Length; i++)
        {
            int l = _group[i];
            if (!_seen[l])
            {
                continue;
            }

            double y = _values[i], z = g[l] - (h * y);
            if (_bound[i])
            {
                double ratio = NormalTail.Ratio(z), weight = ratio * (ratio + z);
                (slope[l], bend[l], mixed[l]) = (slope[l] + ratio, bend[l] + weight, mixed[l] + (weight * y));
                (slopeH, bendH) = (slopeH - (ratio * y), bendH + (weight * y * y));
            }
            else
            {
                (slope[l], bend[l], mixed[l]) = (slope[l] - z, bend[l] + 1, mixed[l] + y);
                (slopeH, bendH) = (slopeH + (1 / h) + (z * y), bendH + (1 / (h * h)) + (y * y));
            }
        }

        for (int l = 0; l < g.Length; l++)
        {
            if (_seen[l])
            {
                slopeH += mixed[l] * slope[l] / bend[l];
                bendH -= mixed[l] * mixed[l] / bend[l];
            }
        }

        double moveH = slopeH / bendH;
        return ([.. g.Select((_, l) => _seen[l] ? (slope[l] + (mixed[l] * moveH)) / bend[l] : 0)], moveH);
    }
}
