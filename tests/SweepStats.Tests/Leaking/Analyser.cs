using System.Collections.Immutable;
using System.Numerics;
using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Tests.Leaking;

/// <summary>
/// A network analyser: voltages through the specimen, a steady voltage round it, complex Gaussian noise. Reference 0 dB.
/// </summary>
internal sealed record Analyser
{
    public int Points { get; init; } = 101;

    public int Sweeps { get; init; } = 5;

    /// <summary>Of the steady voltage, in dB below the reference; infinite for none.</summary>
    public double LeakageDb { get; init; } = 60;

    public double NoiseDb { get; init; } = 100;

    public double ShieldingDb { get; init; } = 50;

    public double ScatterDb { get; init; } = 0.05;

    /// <summary>
    /// Sweeps of a plate; the leakage then goes round the specimen and not through the receiver, so that the floor has none of
    /// it.
    /// </summary>
    public int PlateSweeps { get; init; }

    public bool WithPhase { get; init; } = true;

    public ulong Seed { get; init; } = 1;

    public Campaign Draw()
    {
        var random = new RandomSource(Seed);
        Complex[] leakage = Smooth(random, Math.Pow(10, -LeakageDb / 20));
        Complex[] turn = [.. Enumerable.Range(0, Points).Select(f => Complex.FromPolarCoordinates(1, 0.7 * f))];
        IEnumerable<Sweep> Role(SweepRole role, double signal, int sweeps) => Enumerable.Range(1, sweeps).Select(j =>
        {
            double leaks = role == SweepRole.Floor && PlateSweeps > 0 ? 0 : 1;
            double scattered = signal * Math.Pow(10, ScatterDb * random.Normal() / 20);
            return Sweep(role, j, [.. turn.Select((t, f) => (scattered * t) + (leaks * leakage[f]) + Noise(random))]);
        });
        return new Campaign("analyser",
        [
            .. Role(SweepRole.Floor, 0, Sweeps), .. Role(SweepRole.Reference, 1, Sweeps),
            .. Role(SweepRole.Covered, Math.Pow(10, -ShieldingDb / 20), Sweeps), .. Role(SweepRole.Plate, 0, PlateSweeps),
        ])
        {
            FloorTaking = SweepTaking.BeforeAndAfter,
        };
    }

    public SweepBlock Floor() => Aligner.Align(Draw(), null).Floor!;

    private Complex Noise(RandomSource random) =>
        new Complex(random.Normal(), random.Normal()) * Math.Pow(10, -NoiseDb / 20) / Math.Sqrt(2);

    // A sum of seven ways whose phases turn differently over frequency.
    private Complex[] Smooth(RandomSource random, double size)
    {
        (double Phase, double Turn)[] ways =
            [.. Enumerable.Range(0, 7).Select(_ => (2 * Math.PI * random.Uniform(), 0.3 * random.Normal()))];
        return [.. Enumerable.Range(0, Points)
            .Select(f => ways.Aggregate(Complex.Zero,
                (sum, w) => sum + Complex.FromPolarCoordinates(size / Math.Sqrt(7), w.Phase + (w.Turn * f))))];
    }

    private Sweep Sweep(SweepRole role, int number, ImmutableArray<Complex> voltages) => new(
        $"{role}-{number}", role, Rehearsed.Grid(Points), [.. voltages.Select(v => 20 * Math.Log10(v.Magnitude))],
        LevelScale.DecibelRatio)
    {
        Phases = WithPhase ? [.. voltages.Select(v => v.Phase * 180 / Math.PI)] : [],
        Lot = role == SweepRole.Covered ? "A" : null,
        Specimen = role == SweepRole.Covered ? "A01" : null,
    };
}
