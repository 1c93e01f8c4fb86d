using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace SweepStats.Planning;

/// <summary>Draws how far repeats of a signal lie from its mean, in dB, one after the other. For one thread.</summary>
/// <param name="repeats">How they go together.</param>
/// <param name="deviation">Standard deviation of one in dB, as a pilot shows it.</param>
/// <param name="count">Repeats of one series.</param>
internal sealed class DrawnSignals(PlannedRepeats repeats, double deviation, int count)
{
    private readonly double[,]? _root = repeats.Root(deviation * deviation, count);
    private readonly double[] _drawn = new double[count];
    private int _next;

    /// <summary>The next repeat of a signal; every so many start a new series.</summary>
    public double Next(double mean, MersenneTwister random)
    {
        if (_root is null)
        {
            return Normal.Sample(random, mean, deviation);
        }

        if (_next == 0)
        {
            Normal.Samples(random, _drawn, 0, 1);
        }

        double sum = 0;
        for (int k = 0; k <= _next; k++)
        {
            sum += _root[_next, k] * _drawn[k];
        }

        _next = (_next + 1) % count;
        return mean + sum;
    }
}
