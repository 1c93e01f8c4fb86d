using System.Numerics;

namespace SweepStats.Statistics;

/// <summary>A seeded stream of random numbers that gives the same draws on every machine and runtime.</summary>
/// <remarks>
/// xoshiro256** seeded through splitmix64 (Blackman and Vigna 2018, public domain, from memory). Normal variables by the polar
/// method (Marsaglia and Bray 1964), gamma variables by squeeze and rejection (Marsaglia and Tsang 2000). Not for secrets. Not
/// thread-safe: one stream a thread, see <see cref="Fork"/>.
/// </remarks>
public sealed class RandomSource
{
    // By Marsaglia and Tsang.
    private const double Squeeze = 0.0331;

    private readonly ulong _seed;
    private ulong _a, _b, _c, _d;
    private double _spareNormal = double.NaN;

    /// <summary>Starts the stream of a seed.</summary>
    public RandomSource(ulong seed)
    {
        _seed = seed;
        ulong state = seed;
        _a = Mix(ref state);
        _b = Mix(ref state);
        _c = Mix(ref state);
        _d = Mix(ref state);
    }

    /// <summary>
    /// An independent stream that depends only on this stream's seed and the number given, not on draws made so far.
    /// </summary>
    public RandomSource Fork(ulong number)
    {
        ulong state = unchecked(_seed ^ (number * 0xD1342543DE82EF95));
        return new RandomSource(Mix(ref state));
    }

    /// <summary>Uniform between 0 (included) and 1 (excluded), 53 random bits.</summary>
    public double Uniform() => (Next() >> 11) * (1.0 / (1ul << 53));

    /// <summary>Standard normal.</summary>
    public double Normal()
    {
        if (!double.IsNaN(_spareNormal))
        {
            double spare = _spareNormal;
            _spareNormal = double.NaN;
            return spare;
        }

        while (true)
        {
            double x = (2 * Uniform()) - 1;
            double y = (2 * Uniform()) - 1;
            double square = (x * x) + (y * y);
            if (square is > 0 and < 1)
            {
                double scale = Math.Sqrt(-2 * Math.Log(square) / square);
                _spareNormal = y * scale;
                return x * scale;
            }
        }
    }

    /// <summary>Gamma variable of unit scale.</summary>
    /// <param name="shape">Positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">The shape is not positive.</exception>
    public double Gamma(double shape)
    {
        if (!(shape > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(shape), shape, "A gamma shape is positive.");
        }

        if (shape < 1)
        {
            return Gamma(shape + 1) * Math.Pow(1 - Uniform(), 1 / shape);
        }

        double d = shape - (1.0 / 3);
        double c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            double x = Normal();
            double v = 1 + (c * x);
            if (v <= 0)
            {
                continue;
            }

            v = v * v * v;
            double u = 1 - Uniform();
            // The squeeze lies below the curve that the logarithms draw, and mostly saves them.
            if (u < 1 - (Squeeze * x * x * x * x) || Math.Log(u) < (0.5 * x * x) + d - (d * v) + (d * Math.Log(v)))
            {
                return d * v;
            }
        }
    }

    private static ulong Mix(ref ulong state)
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15;
            ulong z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }

    private ulong Next()
    {
        unchecked
        {
            ulong result = BitOperations.RotateLeft(_b * 5, 7) * 9;
            ulong t = _b << 17;
            _c ^= _a;
            _d ^= _b;
            _b ^= _c;
            _a ^= _d;
            _c ^= t;
            _d = BitOperations.RotateLeft(_d, 45);
            return result;
        }
    }
}
