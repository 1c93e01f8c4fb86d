using MathNet.Numerics;
using SweepStats.Statistics;

namespace SweepStats.Floor;

/// <summary>
/// Rise of the log mean of a reading over that of noise alone, for power averaged over M looks, and its inverse.
/// </summary>
/// <remarks>
/// A reading is (signal + noise power) averaged over M looks: M times its ratio to the noise power is a noncentral gamma variable
/// with shape M and noncentrality λ = Mγ, where γ is the signal-to-noise power ratio. Its log mean stands above that of noise
/// alone by g(γ) = K·(E ψ(M + J) − ψ(M)), J ~ Poisson(Mγ), K = 10/ln 10 (the Poisson mixture of gamma variables, and E ln
/// Gamma(a) = ψ(a)). Written as an integral, g(γ) = K·∫₀¹ (1−u)^(M−1)·(1 − e^(−λu))/u du; with u = 1/(1+e^(−v)) the integrand is
/// analytic in |Im v| &lt; π/2 and falls off exponentially, so the trapezoid rule with step 0.3 is exact to about 1e-14. It
/// serves every M, whole or not, and every γ: the sum over J loses its footing for long averages, the closed form for whole M
/// cancels. Units: dB for rises, power ratio for γ. Error: below 1e-9 dB from −40 to +60 dB and M from 1 to 1 000
/// (fixtures/oracles/rise.R).
/// </remarks>
internal sealed class RiseCurve
{
    private const double Step = 0.3;
    private const double HighestSnr = 1e8;

    // From here on the series in 1/λ leaves 1e-17 out, and what falls off with e^(−λ) less.
    private const double SeriesFromSnr = 10;
    private const double SeriesFromLambda = 1000;
    private const int SeriesTerms = 16;

    private const double TableStart = -60;
    private const double TableEnd = 80;
    private const double TableStep = 0.2;

    // Rises from 0.008 to 128 dB: below, a reading says nothing of its signal; above, there is no receiver.
    private const double LeastPieceRise = 1.0 / 128;
    private const int PieceOctaves = 14;
    private const int PiecesLog = 5;

    private readonly double _looks;
    private readonly double _logMeanOffset;
    private readonly OctavePieces _pieces;

    // Not a number until it is asked for; whoever finds a value finds the same bits.
    private readonly double[] _table;
    private readonly double[] _u;
    private readonly double[] _weight;

    /// <summary>The curve of so many looks, 1 or more, +∞ for noise without scatter; the offset is K(ψ(M) − ln M), dB.</summary>
    public RiseCurve(double looks, double logMeanOffset)
    {
        _looks = looks;
        _logMeanOffset = logMeanOffset;
        _table = new double[(int)Math.Round((TableEnd - TableStart) / TableStep) + 1];
        Array.Fill(_table, double.NaN);
        _pieces = new OctavePieces(TabledSnrInDecibels, LeastPieceRise, PieceOctaves, PiecesLog);
        (_u, _weight) = double.IsPositiveInfinity(looks) ? ([], []) : Nodes(looks);
    }

    /// <summary>Rise in dB for a power ratio of 0 or more.</summary>
    public double Rise(double snr) => snr >= SeriesFromSnr && _looks * snr >= SeriesFromLambda && double.IsFinite(_looks * snr)
        ? RiseFarAbove(snr) : RiseAndSlope(snr).Rise;

    /// <summary>The inverse, in dB; −∞ where there is no rise.</summary>
    /// <remarks>It stands in every limit of every reading several times, so that its table is kept as polynomials.</remarks>
    public double SnrInDecibels(double rise) => _pieces.TryAt(rise, out double snr) ? snr : TabledSnrInDecibels(rise);

    /// <remarks>
    /// The distance from the closed form for noise without scatter, K·ln(e^(rise/K) − 1), changes by a few dB over the whole
    /// range and is read from a table by six-point interpolation: 1e-9 dB from the exact inverse, at a hundredth of its time.
    /// </remarks>
    private double TabledSnrInDecibels(double rise)
    {
        if (!(rise > 0))
        {
            return double.NegativeInfinity;
        }

        double smooth = LevelWithoutScatter(rise);
        if (double.IsPositiveInfinity(_looks))
        {
            return smooth;
        }

        if (smooth > TableEnd - 1)
        {
            return FarAbove(rise);
        }

        double place = (smooth - TableStart) / TableStep;
        int left = (int)Math.Floor(place) - 2;
        return !(place >= 2) || left + 6 > _table.Length ? ExactSnrInDecibels(rise)
            : smooth + Lagrange.SixPoint(Tabled(left, 6), place - left);
    }

    private ReadOnlySpan<double> Tabled(int first, int count)
    {
        Span<double> values = _table.AsSpan(first, count);
        for (int i = 0; i < count; i++)
        {
            values[i] = double.IsNaN(values[i]) ? TableValue(first + i) : values[i];
        }

        return values;
    }

    private double TableValue(int place)
    {
        double smooth = TableStart + (place * TableStep);
        double rise = DetectorNoise.DecibelsPerNeper * SpecialFunctions.Log1p(Math.Pow(10, smooth / 10));
        return ExactSnrInDecibels(rise) - smooth;
    }

    /// <summary>The inverse in dB by Newton to the last digits, at a hundred times the cost; −∞ where there is no rise.</summary>
    public double ExactSnrInDecibels(double rise)
    {
        if (!(rise > 0))
        {
            return double.NegativeInfinity;
        }

        double level = LevelWithoutScatter(rise);
        if (level > TableEnd - 1 || double.IsPositiveInfinity(_looks))
        {
            return double.IsPositiveInfinity(_looks) ? level : FarAbove(rise);
        }

        for (int step = 0; step < 50; step++)
        {
            double snr = Math.Pow(10, level / 10);
            (double reached, double slope) = RiseAndSlope(snr);
            double move = (rise - reached) / (slope * snr);
            level += DetectorNoise.DecibelsPerNeper * Math.Clamp(move, -3, 3);
            if (Math.Abs(move) < 1e-13)
            {
                break;
            }
        }

        return level;
    }

    // Eight digits above the noise the curve is straight: g = K(ln Mγ + (M−1)/Mγ − ψ(M)), turned round with one correction.
    private double FarAbove(double rise)
    {
        double level = rise + _logMeanOffset;
        return level - (DetectorNoise.DecibelsPerNeper * (_looks - 1) / _looks * Math.Pow(10, -level / 10));
    }

    // (1−u)^(M−1) in powers of u, integrated term by term: g = K·(ln λ − ψ(M) + Σ (−1)^(k+1)·(M−1)…(M−k)/(k·λ^k)), at a hundredth
    // of the cost.
    private double RiseFarAbove(double snr)
    {
        double lambda = _looks * snr, sum = Math.Log(snr), product = -1;
        for (int k = 1; k <= SeriesTerms; k++)
        {
            product *= (k - _looks) / lambda;
            sum += product / k;
        }

        return (DetectorNoise.DecibelsPerNeper * sum) - _logMeanOffset;
    }

    // Slope is dg/dγ in dB per unit of γ; both sums share the exponentials.
    private (double Rise, double Slope) RiseAndSlope(double snr)
    {
        if (!(snr >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(snr), snr, "A power ratio is not negative.");
        }

        if (double.IsPositiveInfinity(_looks))
        {
            return (DetectorNoise.DecibelsPerNeper * SpecialFunctions.Log1p(snr), DetectorNoise.DecibelsPerNeper / (1 + snr));
        }

        if (snr > HighestSnr)
        {
            // Two terms of the series in 1/λ leave 1e-16 out here.
            double above = Math.Log(_looks * snr) + ((_looks - 1) / (_looks * snr)) - GammaFunctions.Digamma(_looks);
            return (DetectorNoise.DecibelsPerNeper * above, DetectorNoise.DecibelsPerNeper / snr);
        }

        double lambda = _looks * snr;
        double rise = 0;
        double slope = 0;
        for (int i = 0; i < _u.Length; i++)
        {
            double x = lambda * _u[i];
            double decay = x < 740 ? Math.Exp(-x) : 0;
            rise += _weight[i] * (x < 1e-5 ? x * (1 - (x / 2)) : 1 - decay);
            slope += _weight[i] * _u[i] * decay;
        }

        return (DetectorNoise.DecibelsPerNeper * rise, DetectorNoise.DecibelsPerNeper * _looks * slope);
    }

    private static double LevelWithoutScatter(double rise) =>
        rise > 150 ? rise
            : DetectorNoise.DecibelsPerNeper * Math.Log(Exponential.MinusOne(rise / DetectorNoise.DecibelsPerNeper));

    private static (double[] U, double[] Weight) Nodes(double looks)
    {
        // Ends where what is left out is below 1e-15 of the sum: λu on the left, (1−u)^M on the right.
        double first = -Math.Log(looks * HighestSnr) - 34;
        double last = Math.Log(Exponential.MinusOne(36 / looks));
        int count = (int)Math.Ceiling((last - first) / Step) + 1;
        var u = new double[count];
        var weight = new double[count];
        for (int i = 0; i < count; i++)
        {
            double v = first + (i * Step);
            u[i] = 1 / (1 + Math.Exp(-v));
            // (1−u)^M through log(1+e^v), which keeps its digits at both ends.
            double logOneMinusU = v > 0 ? -v - Math.Log(1 + Math.Exp(-v)) : -SpecialFunctions.Log1p(Math.Exp(v));
            weight[i] = Step * Math.Exp(looks * logOneMinusU);
        }

        return (u, weight);
    }
}
