namespace SweepStats.Statistics;

/// <summary>How likely each of many models of going together makes what rows show. Immutable.</summary>
/// <remarks>
/// The powers S_k of the cosine modes of a group are taken as gamma variables of shape κ/2 about σ²·λ_k, λ_k the mode's variance
/// under the model, with the likeliest σ² of its own: log L = −κ/2·[Σ ln λ_k + (n − 1)·ln mean(S_k/λ_k)]. What modes have in
/// common under a model is left out; for an autoregressive process it is small. Groups add up. Weighed by their likelihood the
/// models tell what is to be expected, without one of them having to be chosen: with few independent columns the likeliest one
/// alone held 85 to 90 % where the weighed ones held 89 to 91 % (random phase of a standing wave), at smaller width.
/// Before any rows are seen, nothing lasting and each strength of it is as likely, and half of the weight is on rows with nothing
/// of their own beside what lasts. What lasts falls to 1/e within twice the rows of a group at the latest, ρ ≤ 1 − 1/(2n): slower
/// changes cannot be told from the mean of a group, and a level that wanders without end moves by no more from one group to the
/// next after a pause as long as the group.
/// </remarks>
internal sealed class SerialLikelihood
{
    // Models whose likelihood falls below the likeliest one's by a chance of 1 in 20 and less (χ², one degree of freedom: 3.84).
    private const double Contradiction = 4;

    private readonly ImmutableArray<double> _logs;

    private SerialLikelihood(ImmutableArray<double> logs) => _logs = logs;

    /// <summary>What lasts: from nothing to nearly all of it from row to row, and from all of the variance to a tenth.</summary>
    public static ImmutableArray<SerialModel> Models { get; } =
    [
        .. from correlation in (double[])[0, .05, .1, .15, .2, .25, .3, .35, .4, .45, .5, .55, .6, .65, .7, .75, .8, .85, .9,
            .925, .95, .975, .9875]
           from share in (double[])[1, .9, .8, .7, .6, .5, .4, .3, .2, .1]
           select new SerialModel(correlation, share),
    ];

    /// <summary>Nothing seen: every model as likely as any other.</summary>
    public static SerialLikelihood Nothing { get; } = new([.. Models.Select(_ => 0.0)]);

    /// <summary>What one group of rows says.</summary>
    /// <param name="rows">Rows in the order taken; two of them, or such as do not scatter, say nothing.</param>
    /// <param name="independentColumns">κ.</param>
    public static SerialLikelihood Of(SerialRows rows, double independentColumns)
    {
        if (rows.Count < SuccessionRatio.FewestRows || !rows.Scatters)
        {
            return Nothing;
        }

        double[][] modes = CosineModes.Weights(rows.Count);
        Dictionary<double, double[]> lasting = Models.Select(m => m.Correlation).Distinct()
            .ToDictionary(r => r, r => new SerialModel(r, 1).ModeVariances(modes));
        return new(
            [.. Models.Select(m => independentColumns / 2
            * LogDensity(rows.ModePowers, [.. lasting[m.Correlation].Select(v => (m.Share * v) + 1 - m.Share)]))]);
    }

    /// <summary>What both say together.</summary>
    public SerialLikelihood With(SerialLikelihood other) => new([.. _logs.Zip(other._logs, (a, b) => a + b)]);

    /// <summary>Whether what all groups say together is hard to believe by these rows alone.</summary>
    /// <param name="all">What all say, these included.</param>
    /// <param name="count">Rows of a group.</param>
    public bool Contradicts(SerialLikelihood all, int count) => 2 * (_logs[Best(count)] - _logs[all.Best(count)]) > Contradiction;

    /// <summary>Weight of each model; they sum to 1.</summary>
    /// <param name="count">Rows of a group.</param>
    public double[] Weights(int count)
    {
        double most = _logs[Best(count)];
        int own = Models.Select(m => m.Share).Distinct().Count() - 1;
        double[] weights =
            [.. _logs.Select((log, i) => IsTold(Models[i], count) ? Math.Exp(log - most) * (Models[i].Share == 1 ? 1 : 1.0 / own)
            : 0)];
        double sum = weights.Sum();
        return [.. weights.Select(w => w / sum)];
    }

    private static bool IsTold(SerialModel model, int count) => 1 - model.Correlation >= 0.5 / count - 1e-12;

    private int Best(int count) => Enumerable.Range(0, Models.Length).Where(i => IsTold(Models[i], count)).MaxBy(i => _logs[i]);

    // Of one independent column, twice; but for what is the same under every model.
    private static double LogDensity(double[] powers, double[] expected)
    {
        double logs = 0, sum = 0;
        for (int k = 0; k < powers.Length; k++)
        {
            logs += Math.Log(expected[k]);
            sum += powers[k] / expected[k];
        }

        return -(logs + (powers.Length * Math.Log(sum / powers.Length)));
    }
}
