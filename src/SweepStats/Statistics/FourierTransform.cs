using System.Runtime.Intrinsics;

namespace SweepStats.Statistics;

/// <summary>Discrete Fourier transform X(k) = Σ x(f)·e^(−2πi·fk/n), of two series beside each other.</summary>
/// <remarks>
/// By halves, n a power of two. Registers of two numbers on every machine, so that none has other digits; MathNet's transform of
/// one series takes two to three times as long and makes threads of its own. Error: some 1e-16·log₂ n of the root of the sum of
/// squares. Half by half: each is finished while the fastest memory holds it, and the sums are the same in any order of the
/// halves. Source: Cooley and Tukey 1965, Mathematics of Computation 19, 297; for results in reversed order Gentleman and Sande
/// 1966, AFIPS Fall Joint Computer Conference 29, 563 (both from memory).
/// </remarks>
internal sealed class FourierTransform
{
    private readonly double[] _cosines, _sines;
    private readonly int[] _reversed;

    /// <param name="count">n, a power of two.</param>
    public FourierTransform(int count)
    {
        (_cosines, _sines, _reversed) = (new double[count / 2], new double[count / 2], new int[count]);
        for (int k = 0; k < _cosines.Length; k++)
        {
            (_sines[k], _cosines[k]) = Math.SinCos(-2 * Math.PI * k / count);
        }

        for (int f = 1; f < count; f++)
        {
            _reversed[f] = (_reversed[f / 2] / 2) + (f % 2 * count / 2);
        }
    }

    /// <summary>Numbers in a series.</summary>
    public int Count => _reversed.Length;

    /// <summary>Transforms in place.</summary>
    /// <param name="real">Real parts, n of them.</param>
    /// <param name="imaginary">Imaginary parts.</param>
    public void Apply(Vector128<double>[] real, Vector128<double>[] imaginary)
    {
        Reverse(real);
        Reverse(imaginary);
        FromReversed(real, imaginary);
    }

    /// <summary>
    /// Transforms in place, and leaves the results in the order of their binary digits read backwards: whoever looks at each by
    /// itself needs no other.
    /// </summary>
    /// <inheritdoc cref="Apply"/>
    public void ToReversed(Span<Vector128<double>> real, Span<Vector128<double>> imaginary)
    {
        if (real.Length < 2)
        {
            return;
        }

        int half = real.Length / 2;
        Part(real, imaginary);
        ToReversed(real[..half], imaginary[..half]);
        ToReversed(real[half..], imaginary[half..]);
    }

    /// <summary>Transforms in place what lies in that order; the results have their usual one.</summary>
    /// <inheritdoc cref="Apply"/>
    public void FromReversed(Span<Vector128<double>> real, Span<Vector128<double>> imaginary)
    {
        if (real.Length < 2)
        {
            return;
        }

        int half = real.Length / 2;
        FromReversed(real[..half], imaginary[..half]);
        FromReversed(real[half..], imaginary[half..]);
        Join(real, imaginary);
    }

    // Sums and turned differences of both halves: their transforms are the even places and the odd ones of that of both.
    private void Part(Span<Vector128<double>> real, Span<Vector128<double>> imaginary)
    {
        int half = real.Length / 2, step = Count / real.Length;
        Span<Vector128<double>> re = real[..half], laterRe = real[half..], im = imaginary[..half], laterIm = imaginary[half..];
        for (int k = 0, turn = 0; k < re.Length; k++, turn += step)
        {
            double cos = _cosines[turn], sin = _sines[turn];
            Vector128<double> apartRe = re[k] - laterRe[k], apartIm = im[k] - laterIm[k];
            (re[k], im[k]) = (re[k] + laterRe[k], im[k] + laterIm[k]);
            (laterRe[k], laterIm[k]) = ((apartRe * cos) - (apartIm * sin), (apartRe * sin) + (apartIm * cos));
        }
    }

    // The transform of the even places and that of the odd ones, one behind the other, make that of both.
    private void Join(Span<Vector128<double>> real, Span<Vector128<double>> imaginary)
    {
        int half = real.Length / 2, step = Count / real.Length;
        Span<Vector128<double>> re = real[..half], oddRe = real[half..], im = imaginary[..half], oddIm = imaginary[half..];
        for (int k = 0, turn = 0; k < re.Length; k++, turn += step)
        {
            double cos = _cosines[turn], sin = _sines[turn];
            Vector128<double> turnedRe = (oddRe[k] * cos) - (oddIm[k] * sin), turnedIm = (oddRe[k] * sin) + (oddIm[k] * cos);
            (oddRe[k], oddIm[k]) = (re[k] - turnedRe, im[k] - turnedIm);
            (re[k], im[k]) = (re[k] + turnedRe, im[k] + turnedIm);
        }
    }

    // The places in the order of their binary digits read backwards: even ones first, and so in each half.
    private void Reverse(Vector128<double>[] values)
    {
        for (int f = 0; f < values.Length; f++)
        {
            if (_reversed[f] > f)
            {
                (values[f], values[_reversed[f]]) = (values[_reversed[f]], values[f]);
            }
        }
    }
}
