using System.Numerics;
using SweepStats.Alignment;
using SweepStats.Leakage;

namespace SweepStats.Fields;

/// <summary>
/// By how much the specimen turns the phase, measured: the phase of the mean covered voltage over that of the mean reference
/// voltage.
/// </summary>
internal static class MeasuredPhase
{
    /// <summary>
    /// As numbers of size 1 at the frequencies of a grid; zero outside the band, and where the sweeps of a block cancel.
    /// </summary>
    public static Complex[] Of(SweepBlock reference, SweepBlock covered, MeasuredBand band)
    {
        Complex[] without = Mean(reference), with = Mean(covered);
        Complex[] turns = [.. with.Zip(without, (w, r) => Unit(w * Complex.Conjugate(r)))];
        var spread = new Complex[band.Bins.Bins];
        for (int k = 0; k < spread.Length; k++)
        {
            if (band.Holds(k))
            {
                int below = band.ReadingBelow(k);
                Complex above = turns[Math.Min(below + 1, turns.Length - 1)];
                spread[k] = Unit(turns[below] + (band.ShareAbove(k) * (above - turns[below])));
            }
        }

        return spread;
    }

    private static Complex[] Mean(SweepBlock block)
    {
        var sums = new Complex[block.PointCount];
        for (int j = 0; j < block.SweepCount; j++)
        {
            Complex[] voltages = Voltages.Of(block, j);
            for (int f = 0; f < sums.Length; f++)
            {
                sums[f] += voltages[f];
            }
        }

        return sums;
    }

    private static Complex Unit(Complex number) => number.Magnitude > 0 ? number / number.Magnitude : Complex.Zero;
}
