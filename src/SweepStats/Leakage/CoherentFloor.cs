using System.Numerics;
using SweepStats.Alignment;
using SweepStats.Statistics;

namespace SweepStats.Leakage;

/// <summary>Floor sweeps with phase, taken apart: the voltage that stays from sweep to sweep, and the noise about it.</summary>
/// <remarks>
/// z(j, f) = leakage(f) + noise(j, f). A discrete Fourier transform over the n sweeps leaves the leakage in the mean alone; the
/// other n − 1 terms are independent noise of the same power, however the leakage looks over frequency. They are read as floor
/// sweeps of their own. Leakage shows where n times the power of the mean exceeds that of the noise, pooled over neighbouring
/// frequencies (F test). Assumes complex Gaussian noise and leakage that does not move between the sweeps.
/// </remarks>
internal sealed class CoherentFloor
{
    private const int HalfWidth = 8;

    // Chance of one false leakage in a whole clean floor, all windows together. Windows overlap: one in two and a half counts as
    // another (by simulation).
    private const double FalseAlarm = 0.005;
    private const double PointsOfAWindow = 2.5;

    // The smallest power a double's square keeps its digits for.
    private const double LeastPower = 1e-300;

    private readonly Complex[] _mean;
    private readonly double[][] _noise;
    private readonly Complex[][] _sweeps;

    private CoherentFloor(Complex[][] sweeps, double[][] noise) => (_mean, _noise, _sweeps) = (Term(sweeps, 0), noise, sweeps);

    /// <summary>Takes a floor apart; null where its sweeps carry no phase or do not repeat.</summary>
    public static CoherentFloor? Of(SweepBlock floor)
    {
        if (!floor.HasPhases || floor.SweepCount < 2)
        {
            return null;
        }

        Complex[][] sweeps = [.. Enumerable.Range(0, floor.SweepCount).Select(j => Voltages.Of(floor, j))];
        return new CoherentFloor(sweeps,
            [.. Enumerable.Range(1, sweeps.Length - 1).Select(k => Powers(Term(sweeps, k), sweeps.Length))]);
    }

    /// <summary>The voltage that stays, at each frequency.</summary>
    public IReadOnlyList<Complex> Mean => _mean;

    /// <summary>Sweeps behind the mean.</summary>
    public int SweepCount => _noise.Length + 1;

    /// <summary>The noise as floor sweeps of its own, one fewer than there are.</summary>
    /// <param name="floor">The sweeps that it comes from.</param>
    public SweepBlock NoiseSweeps(SweepBlock floor) =>
        new(floor.Sweeps[..^1], floor.PointCount, floor.Store, [.. _noise.Select(powers => floor.Store.Keep(Levels(powers)))]);

    private static double[] Levels(double[] powers) =>
        [.. powers.Select(power => 10 * Math.Log10(Math.Max(power, LeastPower)))];

    /// <summary>Power of the noise at each frequency, pooled over its neighbours.</summary>
    public double[] NoisePower()
    {
        double[] own = [.. Enumerable.Range(0, _mean.Length).Select(f => _noise.Average(row => row[f]))];
        return [.. Enumerable.Range(0, own.Length).Select(f => Windowed(own, f).Average())];
    }

    /// <summary>
    /// Power of half the change of the leakage from earlier to later sweeps, beyond noise, pooled over neighbours; 0 where all
    /// are of one time.
    /// </summary>
    public double[] MotionPower(ImmutableArray<bool> later)
    {
        if (later.IsEmpty)
        {
            return new double[_mean.Length];
        }

        Complex[][] after = [.. _sweeps.Where((_, j) => later[j])], before = [.. _sweeps.Where((_, j) => !later[j])];
        double[] apart = [.. Term(after, 0).Zip(Term(before, 0), (a, b) => (a - b).Magnitude * (a - b).Magnitude / 4)];
        double[] chance = [.. NoisePower().Select(power => power * ((1.0 / after.Length) + (1.0 / before.Length)) / 4)];
        return [.. Enumerable.Range(0, apart.Length)
            .Select(f => Math.Max(0, Windowed(apart, f).Average() - Windowed(chance, f).Average()))];
    }

    /// <summary>Level of the leakage in dB at each frequency; −∞ where none shows.</summary>
    public ImmutableArray<double> LeakageDb()
    {
        double[] steady = [.. _mean.Select(z => SweepCount * z.Magnitude * z.Magnitude)];
        double[] noise = [.. Enumerable.Range(0, steady.Length).Select(f => _noise.Average(row => row[f]))];
        double share = Math.Min(FalseAlarm, FalseAlarm * PointsOfAWindow / steady.Length);
        double Level(int f)
        {
            double[] mean = Windowed(steady, f), about = Windowed(noise, f);
            var ratio = new VarianceRatio(mean.Sum(), 2 * mean.Length, about.Sum() * _noise.Length,
                2 * mean.Length * _noise.Length);
            double chance = about.Average();
            return ratio.Probability < share ? 10 * Math.Log10(Math.Max(steady[f] - chance, chance) / SweepCount)
                : double.NegativeInfinity;
        }

        return SteadyLeakage.Filled([.. Enumerable.Range(0, steady.Length).Select(Level)]);
    }

    private static double[] Windowed(double[] values, int f)
    {
        int first = Math.Max(0, f - HalfWidth), end = Math.Min(values.Length, f + HalfWidth + 1);
        return values[first..end];
    }

    // Term 0 is the mean; the others are divided by the root of n, so that each has the power of one sweep's noise.
    private static Complex[] Term(Complex[][] sweeps, int k)
    {
        Complex[] turns = [.. Enumerable.Range(0, sweeps.Length)
            .Select(j => Complex.FromPolarCoordinates(1, -2 * Math.PI * j * k / sweeps.Length))];
        var term = new Complex[sweeps[0].Length];
        for (int f = 0; f < term.Length; f++)
        {
            for (int j = 0; j < sweeps.Length; j++)
            {
                term[f] += sweeps[j][f] * turns[j] / sweeps.Length;
            }
        }

        return term;
    }

    private static double[] Powers(Complex[] term, int sweeps) => [.. term.Select(z => sweeps * z.Magnitude * z.Magnitude)];
}
