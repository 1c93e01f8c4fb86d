using System.Numerics;

namespace SweepStats.Fields;

/// <summary>The even times and frequencies on which a pulse is sent through a curve, and the pulse there.</summary>
/// <remarks>
/// Thirty-two steps in the time 1/β of the rise, so that lines between samples miss its figures by less than 1e-4. As long as 25
/// times the decay 1/α, and as 400 periods of the lowest measured frequency: what an edge there leaves behind has then died away
/// to less than 1e-6 of the peak before it comes round. Where the lowest frequency lies below some 7 MHz for the pulse of IEC
/// 61000-2-9, the length stops at 2²⁰ samples, and more comes round. The spectrum is that of the samples: a geometric series for
/// each exponential, exact.
/// </remarks>
internal sealed class PulseGrid
{
    private const double StepsInRise = 32;
    private const double DecaysHeld = 25;
    private const double PeriodsHeld = 400;
    private const int Fewest = 1 << 17, Most = 1 << 20;

    private readonly Complex[] _spectrum;
    private readonly double[] _amplitudes;

    /// <param name="pulse">The pulse.</param>
    /// <param name="lowestHertz">Lowest measured frequency above 0.</param>
    public PulseGrid(DoubleExponential pulse, double lowestHertz)
    {
        Pulse = pulse;
        StepSeconds = 1 / (StepsInRise * pulse.RisePerSecond);
        double periods = PeriodsHeld / (lowestHertz * StepSeconds), needed = DecaysHeld / (pulse.DecayPerSecond * StepSeconds);
        double wanted = Math.Clamp(periods, Fewest, Most);
        EndsEarly = periods > Most;
        Count = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Ceiling(Math.Max(wanted, needed)));
        _spectrum = new Complex[Bins];
        for (int k = 0; k < Bins; k++)
        {
            var turn = Complex.FromPolarCoordinates(1, -2 * Math.PI * k / Count);
            _spectrum[k] = pulse.AmplitudeVoltsPerMetre * (
                Series(pulse.DecayPerSecond, turn) - Series(pulse.RisePerSecond, turn));
        }

        _amplitudes = Array.ConvertAll(_spectrum, Complex.Abs);
    }

    /// <summary>The pulse.</summary>
    public DoubleExponential Pulse { get; }

    /// <summary>Whether it is shorter than the lowest measured frequency asks for.</summary>
    public bool EndsEarly { get; }

    /// <summary>Step in seconds.</summary>
    public double StepSeconds { get; }

    /// <summary>Samples, a power of two.</summary>
    public int Count { get; }

    /// <summary>Frequencies from 0 Hz on, both ends included; the others are their mirror images.</summary>
    public int Bins => (Count / 2) + 1;

    /// <summary>Frequency of a place in Hz.</summary>
    public double HertzAt(int k) => k / (Count * StepSeconds);

    /// <summary>Sum over the samples of E(n)·e^(−2πi·kn/N), in V/m.</summary>
    public Complex SpectrumAt(int k) => _spectrum[k];

    /// <summary>Its size, in V/m.</summary>
    public double AmplitudeAt(int k) => _amplitudes[k];

    /// <summary>How often a frequency stands in the whole transform: the ends once, the others with their mirror image.</summary>
    public int Times(int k) => k == 0 || k == Count / 2 ? 1 : 2;

    private Complex Series(double rate, Complex turn) => 1 / (1 - (Math.Exp(-rate * StepSeconds) * turn));
}
