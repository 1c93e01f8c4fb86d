using System.Numerics;

namespace SweepStats.Fields;

/// <summary>The even times and frequencies on which a pulse is sent through a curve, and the pulse there.</summary>
/// <remarks>
/// Eighty steps in the time 1/β of the rise, so that lines between samples miss its figures by less than 1e-4; as long as 25 times the decay 1/α, and so many that the response of a
/// curve with steep ends dies away before it comes round (2¹⁷ at least, a hundred times the decay of the pulse of IEC 61000-2-9). The spectrum is that of the samples: a geometric
/// series for each exponential, exact.
/// </remarks>
internal sealed class PulseGrid
{
    private const double StepsInRise = 80;
    private const double DecaysHeld = 25;
    private const int Fewest = 1 << 17;

    private readonly Complex[] _spectrum;

    public PulseGrid(DoubleExponential pulse)
    {
        Pulse = pulse;
        StepSeconds = 1 / (StepsInRise * pulse.RisePerSecond);
        double needed = DecaysHeld / (pulse.DecayPerSecond * StepSeconds);
        Count = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(Fewest, Math.Ceiling(needed)));
        _spectrum = new Complex[Bins];
        for (int k = 0; k < Bins; k++)
        {
            var turn = Complex.FromPolarCoordinates(1, -2 * Math.PI * k / Count);
            _spectrum[k] = pulse.AmplitudeVoltsPerMetre * (Series(pulse.DecayPerSecond, turn) - Series(pulse.RisePerSecond, turn));
        }
    }

    /// <summary>The pulse.</summary>
    public DoubleExponential Pulse { get; }

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

    /// <summary>How often a frequency stands in the whole transform: the ends once, the others with their mirror image.</summary>
    public int Times(int k) => k == 0 || k == Count / 2 ? 1 : 2;

    private Complex Series(double rate, Complex turn) => 1 / (1 - (Math.Exp(-rate * StepSeconds) * turn));
}
