using SweepStats.Statistics;

namespace SweepStats.Receivers;

/// <summary>Margins of several observations with what they have in common: the sensitivity of a receiver, the level of a
/// source.</summary>
internal sealed class MarginErrors
{
    // A figure that is stated as exact: too small to move a printed limit, and no division by nothing.
    private const double LeastUncertaintyDb = 1e-6;

    private readonly ImmutableArray<ReceiverObservation> _of;
    private readonly ImmutableArray<SharedPattern> _patterns;

    /// <param name="observations">At least one.</param>
    public MarginErrors(ImmutableArray<ReceiverObservation> observations)
    {
        _of = observations;
        Margins = [.. observations.Select(o => o.MarginDb)];
        Uncertainties = [.. observations.Select(Uncertainty)];
        ImmutableArray<SharedPattern> all = [Of(o => o.Receiver, Sensitivity), Of(o => o.Source, Level), OfBoth()];
        _patterns = all.Any(p => p.Shares) ? [.. all.Where(p => p.Shares)] : [all[0]];
    }

    /// <summary>M in dB.</summary>
    public double[] Margins { get; }

    /// <summary>Their standard uncertainties in dB.</summary>
    public double[] Uncertainties { get; }

    /// <summary>Standard uncertainty of a margin in dB, above 0.</summary>
    public static double Uncertainty(ReceiverObservation observation) => Math.Max(LeastUncertaintyDb, observation.UncertaintyDb);

    /// <summary>At least the probability that the error of each margin, in its standard uncertainties, stays below a
    /// threshold.</summary>
    /// <remarks>
    /// Errors that go together make the probability larger (Slepian 1962; no two of them go against each other). What receivers
    /// share, what sources share, and what both share is each taken alone, which needs one integral and no more; the largest of
    /// the three is nearest to the truth and still not above it.
    /// </remarks>
    public double AllBelow(ReadOnlySpan<double> thresholds)
    {
        double most = 0;
        foreach (SharedPattern pattern in _patterns)
        {
            most = Math.Max(most, SharedNormals.AllBelow(thresholds, pattern));
        }

        return most;
    }

    /// <summary>Standard uncertainty of the difference of two margins in dB; 0 where receiver and source are the same and err
    /// alike.</summary>
    public double OfDifference(int i, int j)
    {
        double a = Uncertainties[i], b = Uncertainties[j];
        return Math.Sqrt(Math.Max(0, (a * a) + (b * b) - (2 * Correlation(i, j) * a * b)));
    }

    private double Correlation(int i, int j)
    {
        double receiver = _of[i].Receiver is { } r && r == _of[j].Receiver ? Sensitivity(i) * Sensitivity(j) : 0;
        double source = _of[i].Source is { } s && s == _of[j].Source ? Level(i) * Level(j) : 0;
        return Math.Min(1, receiver + source);
    }

    private double Sensitivity(int i) => _of[i].SensitivityUncertaintyDb / Uncertainties[i];

    private double Level(int i) => _of[i].Level.UncertaintyDb / Uncertainties[i];

    private SharedPattern Of(Func<ReceiverObservation, string?> key, Func<int, double> share) =>
        new([.. _of.Select(key)], [.. Enumerable.Range(0, _of.Length).Select(i => Math.Min(1, share(i)))]);

    // One loading for all of a pair: the root of their least correlation, so that none is taken for larger than it is.
    private SharedPattern OfBoth()
    {
        object?[] keys = [.. _of.Select(o => o is { Receiver: { } r, Source: { } s } ? new ReceiverAndSource(r, s) : null)];
        var loadings = new double[_of.Length];
        foreach (int[] together in Enumerable.Range(0, _of.Length).Where(i => keys[i] is not null).GroupBy(i => keys[i])
            .Select(g => g.ToArray()))
        {
            double least = together.SelectMany(a => together.Select(b => Correlation(a, b))).Min();
            foreach (int i in together)
            {
                loadings[i] = least > 1 - 1e-9 ? 1 : Math.Sqrt(least);
            }
        }

        return new SharedPattern(keys, loadings);
    }

    private sealed record ReceiverAndSource(string Receiver, string Source);
}
