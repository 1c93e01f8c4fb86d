namespace SweepStats.Statistics;

/// <summary>
/// A smooth curve of a positive number, kept as polynomials on even pieces of each octave: a few nanoseconds a value. May be used
/// from many threads.
/// </summary>
/// <remarks>
/// A piece is fitted when it is first asked for: small campaigns ask for few. It has the same bits whoever fits it.
/// A piece is as narrow as its place is small, so that logarithms and powers keep their digits down to the first octave. Each
/// polynomial is of the fifth degree, through the Chebyshev nodes of its piece. Error: for a logarithm 3e-13 with 32 pieces an
/// octave, 2^6 times more with half as many. Source: Chebyshev's interpolation, Press et al., Numerical Recipes, 5.8 (from
/// memory).
/// </remarks>
internal sealed class OctavePieces
{
    private const int Terms = 6;
    private const int MantissaBits = 52;

    private static readonly double[] Nodes = [.. Enumerable.Range(0, Terms).Select(Node)];

    private readonly Func<double, double> _curve;
    private readonly int _shift;
    private readonly long _first;

    // Of each piece side by side; not a number in the first place until it is fitted.
    private readonly double[] _coefficients;

    /// <summary>Takes up a curve.</summary>
    /// <param name="curve">The curve, finite and smooth over all octaves; may be used from many threads.</param>
    /// <param name="from">Where the first octave begins: a power of two.</param>
    /// <param name="octaves">How many there are.</param>
    /// <param name="piecesLog">Binary logarithm of the pieces of an octave.</param>
    public OctavePieces(Func<double, double> curve, double from, int octaves, int piecesLog)
    {
        _curve = curve;
        _shift = MantissaBits - piecesLog;
        _first = BitConverter.DoubleToInt64Bits(from) >> _shift;
        _coefficients = new double[(octaves << piecesLog) * Terms];
        Array.Fill(_coefficients, double.NaN);
    }

    /// <summary>Reads the curve.</summary>
    /// <returns>False outside the octaves, where there is no value.</returns>
    public bool TryAt(double x, out double value)
    {
        long bits = BitConverter.DoubleToInt64Bits(x) >> _shift;
        long place = (bits - _first) * Terms;
        if (place < 0 || place >= _coefficients.Length)
        {
            value = double.NaN;
            return false;
        }

        // Exact: both lie within one octave.
        double off = x - BitConverter.Int64BitsToDouble((bits << _shift) | (1L << (_shift - 1)));
        ReadOnlySpan<double> c = _coefficients.AsSpan((int)place, Terms);
        if (double.IsNaN(Volatile.Read(in c[0])))
        {
            Fit((int)place);
        }

        value = (((((((((c[5] * off) + c[4]) * off) + c[3]) * off) + c[2]) * off) + c[1]) * off) + c[0];
        return true;
    }

    private void Fit(int place)
    {
        double start = Edge(place / Terms), half = (Edge((place / Terms) + 1) - start) / 2;
        Span<double> values = stackalloc double[Terms], fitted = stackalloc double[Terms];
        for (int i = 0; i < Terms; i++)
        {
            values[i] = _curve(start + half + (half * Nodes[i]));
        }

        Fit(values, half, fitted);
        fitted[1..].CopyTo(_coefficients.AsSpan(place + 1));
        // Last, for by it others see that the piece is whole.
        Volatile.Write(ref _coefficients[place], fitted[0]);
    }

    private double Edge(int piece) => BitConverter.Int64BitsToDouble((_first + piece) << _shift);

    private static double Node(int i) => Math.Cos(Math.PI * (i + 0.5) / Terms);

    // Chebyshev's terms first, then the powers of the distance from the middle.
    private static void Fit(ReadOnlySpan<double> values, double half, Span<double> coefficients)
    {
        Span<double> t = stackalloc double[Terms];
        for (int k = 0; k < Terms; k++)
        {
            t[k] = 0;
            for (int i = 0; i < Terms; i++)
            {
                t[k] += (k == 0 ? 1.0 : 2.0) / Terms * values[i] * Math.Cos(Math.PI * k * (i + 0.5) / Terms);
            }
        }

        ReadOnlySpan<double> powers =
            [t[0] - t[2] + t[4], t[1] - (3 * t[3]) + (5 * t[5]), (2 * t[2]) - (8 * t[4]), (4 * t[3]) - (20 * t[5]),
                8 * t[4], 16 * t[5]];
        double scale = 1;
        for (int k = 0; k < Terms; k++, scale /= half)
        {
            coefficients[k] = powers[k] * scale;
        }
    }
}
