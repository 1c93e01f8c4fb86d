using System.Numerics;
using System.Runtime.Intrinsics;
using SweepStats.Statistics;

namespace SweepStats.Fields;

/// <summary>
/// Sends a pulse through curves of which the size is known and the phase is the least that such a size can have.
/// </summary>
/// <remarks>
/// Minimum phase by the real cepstrum: the transform of ln|S| is folded onto positive times, and its transform is ln S (Oppenheim
/// and Schafer, Discrete-Time Signal Processing, from memory). A response with minimum phase begins with the pulse, at once and
/// as concentrated as its size allows. The weights of the peak are exact derivatives: with c(m) the folded cepstrum, ∂y(n)/∂c(m)
/// = y(n−m), so that the peak at n answers to ln|S(k)| by (y(n) + 2·Re Σ y(n−m)·e^(−2πi·km/N))/N, the transform of what came
/// before it, turned round in time.
/// Error: what of a response outlasts the grid comes round and shows before the pulse, below 1e-6 of the peak for a measurement
/// from 10 MHz on; where a curve still rises at the highest frequency of the grid (9.5 GHz for the pulse of IEC 61000-2-9), the
/// peak errs by up to 1 %. Two curves go beside each other, as <see cref="FourierTransform"/> takes them, which measured two to
/// three times as fast as the library's transform. For one thread.
/// </remarks>
internal sealed class PulseFilter
{
    private static readonly double NepersPerDb = Math.Log(10) / 20;

    private readonly FourierTransform _transform;
    private readonly Vector128<double>[] _real, _imaginary;

    public PulseFilter(PulseGrid grid)
    {
        Grid = grid;
        _transform = new FourierTransform(grid.Count);
        (_real, _imaginary) = (new Vector128<double>[grid.Count], new Vector128<double>[grid.Count]);
    }

    /// <summary>Times and frequencies.</summary>
    public PulseGrid Grid { get; }

    /// <summary>The pulse behind each curve.</summary>
    public FilteredPulse[] Through(IReadOnlyList<FilteredCurve> curves)
    {
        var behind = new FilteredPulse[curves.Count];
        for (int first = 0; first < curves.Count; first += 2)
        {
            FilteredCurve right = curves[Math.Min(first + 1, curves.Count - 1)];
            FilteredPulse[] pair = Pair(curves[first], right);
            behind[first] = pair[0];
            behind[Math.Min(first + 1, curves.Count - 1)] = pair[first + 1 < curves.Count ? 1 : 0];
        }

        return behind;
    }

    private FilteredPulse[] Pair(FilteredCurve left, FilteredCurve right)
    {
        Fill(k => Vector128.Create(left.AttenuationDb[k], right.AttenuationDb[k]) * -NepersPerDb);
        _transform.Apply(_real, _imaginary);
        Fold();
        _transform.Apply(_real, _imaginary);
        double[] leftSizes = new double[Grid.Bins], rightSizes = new double[Grid.Bins];
        Multiply(left, right, leftSizes, rightSizes);
        _transform.Apply(_real, _imaginary);
        double[] leftSamples = Samples(0), rightSamples = Samples(1);
        Weights(leftSamples, rightSamples);
        return [new FilteredPulse(leftSamples, leftSizes, PeakWeights(0, leftSamples)),
            new FilteredPulse(rightSamples, rightSizes, PeakWeights(1, rightSamples))];
    }

    // Real and the same in its mirror image.
    private void Fill(Func<int, Vector128<double>> value)
    {
        Array.Clear(_imaginary);
        for (int k = 0; k < Grid.Bins; k++)
        {
            Vector128<double> here = value(k);
            _real[k] = here;
            _real[(Grid.Count - k) % Grid.Count] = here;
        }
    }

    private void Fold()
    {
        int half = Grid.Count / 2;
        Array.Clear(_imaginary);
        for (int n = 0; n < Grid.Count; n++)
        {
            _real[n] *= n == 0 || n == half ? 1.0 / Grid.Count : n < half ? 2.0 / Grid.Count : 0;
        }
    }

    // The conjugate of the field's spectrum: its transform is N times the field turned back to time.
    private void Multiply(FilteredCurve left, FilteredCurve right, double[] leftSizes, double[] rightSizes)
    {
        for (int k = 0; k < Grid.Bins; k++)
        {
            Complex y0 = Behind(left, k, 0), y1 = Behind(right, k, 1);
            (leftSizes[k], rightSizes[k]) = (Grid.Times(k) * y0.Magnitude, Grid.Times(k) * y1.Magnitude);
            int mirror = (Grid.Count - k) % Grid.Count;
            Vector128<double> re = Vector128.Create(y0.Real, y1.Real), im = Vector128.Create(y0.Imaginary, y1.Imaginary);
            (_real[mirror], _imaginary[mirror]) = (re, im);
            (_real[k], _imaginary[k]) = (re, mirror == k ? Vector128<double>.Zero : -im);
        }
    }

    private Complex Behind(FilteredCurve curve, int k, int lane)
    {
        double size = Math.Exp(_real[k][lane]);
        Complex turn = curve.Turns is { } turns && turns[k] != Complex.Zero ? turns[k]
            : Complex.FromPolarCoordinates(1, _imaginary[k][lane]);
        Complex behind = Grid.SpectrumAt(k) * size * turn;
        return k == 0 || k == Grid.Count / 2 ? behind.Real : behind;
    }

    private double[] Samples(int lane)
    {
        var samples = new double[Grid.Count];
        for (int n = 0; n < samples.Length; n++)
        {
            samples[n] = _real[n][lane] / Grid.Count;
        }

        return samples;
    }

    private void Weights(double[] left, double[] right)
    {
        Array.Clear(_real);
        Array.Clear(_imaginary);
        int leftAt = Waveform.HighestAt(left), rightAt = Waveform.HighestAt(right);
        for (int m = 0; m <= Math.Max(leftAt, rightAt); m++)
        {
            double times = m == 0 ? 1 : 2;
            _real[m] = times * Vector128.Create(m <= leftAt ? left[leftAt - m] : 0, m <= rightAt ? right[rightAt - m] : 0);
        }

        _transform.Apply(_real, _imaginary);
    }

    private double[] PeakWeights(int lane, double[] samples)
    {
        double whole = Grid.Count * samples[Waveform.HighestAt(samples)];
        var weights = new double[Grid.Bins];
        for (int k = 0; k < weights.Length; k++)
        {
            weights[k] = Grid.Times(k) * _real[k][lane] / whole;
        }

        return weights;
    }
}
