using SweepStats.Repeats;
using SweepStats.Statistics;

namespace SweepStats.Planning;

/// <summary>How the mean of planned repeats scatters, seen from the scatter that a pilot shows.</summary>
/// <remarks>
/// Where the pilot's repeats are alike in the order taken, those of the plan are taken to be so too: their mean is known worse,
/// and twice as many help less.
/// </remarks>
/// <param name="lasting">How repeats of the pilot go together; null where they are independent, or none is known.</param>
internal sealed class PlannedRepeats(LastingScatter? lasting)
{
    /// <summary>Independent repeats.</summary>
    public static PlannedRepeats Independent { get; } = new(null);

    /// <summary>Variance of the mean of so many repeats.</summary>
    /// <param name="variance">Sample variance that the pilot shows.</param>
    /// <param name="count">How many.</param>
    public double OfMean(double variance, int count) =>
        lasting is null ? variance / count
            : variance * lasting.Level(count).VarianceOfMean / lasting.Level(lasting.SeenCount).SampleVariance;

    /// <summary>Variance of the mean of so many repeats over the pilot's sample variance divided by their number.</summary>
    public double OfPilot(int count) => lasting is null ? 1 : count * OfMean(1, count);

    /// <summary>Degrees of freedom of the sample variance of so many repeats.</summary>
    public double Freedom(int count) => lasting is null || count < 2 ? count - 1 : lasting.Level(count).DegreesOfFreedom();

    /// <summary>Variance of the mean of so many repeats over s²/n, s² their own sample variance.</summary>
    public double Factor(int count) => lasting?.Worth(count)?.Factor ?? 1;

    /// <summary>
    /// Lower triangle that makes independent normal variables of variance 1 into so many repeats; null where they are
    /// independent.
    /// </summary>
    /// <param name="variance">Sample variance that the pilot shows.</param>
    /// <param name="count">How many.</param>
    public double[,]? Root(double variance, int count)
    {
        if (lasting is null)
        {
            return null;
        }

        SerialCovariance level = lasting.Level(count);
        double scale = variance / lasting.Level(lasting.SeenCount).SampleVariance;
        var root = new double[count, count];
        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double rest = scale * level.Lag(i - j);
                for (int k = 0; k < j; k++)
                {
                    rest -= root[i, k] * root[j, k];
                }

                root[i, j] = i == j ? Math.Sqrt(Math.Max(0, rest)) : root[j, j] > 0 ? rest / root[j, j] : 0;
            }
        }

        return root;
    }
}
