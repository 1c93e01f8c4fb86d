using System.Collections.Immutable;
using System.Numerics;
using SweepStats.Alignment;
using SweepStats.Leakage;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Leaking;

public sealed class CoherentFloorTests
{
    // Two sweeps of 3 + 4i and 1 + 0i: the mean is 2 + 2i; the other term, half their difference with the power of one sweep's
    // noise, is 2·|1 + 2i|² = 10. By hand.
    [Fact]
    public void TwoSweepsAreTakenApartByHand()
    {
        var floor = CoherentFloor.Of(Block([new Complex(3, 4)], [new Complex(1, 0)]))!;
        Assert.Equal(2, floor.Mean[0].Real, 12);
        Assert.Equal(2, floor.Mean[0].Imaginary, 12);
        Assert.Equal(10, floor.NoisePower()[0], 12);
    }

    [Fact]
    public void TheOrderOfTheSweepsChangesNeitherMeanNorNoise()
    {
        Complex[][] sweeps = [[new(1, 2), new(0, 1)], [new(3, -1), new(2, 2)], [new(0, 4), new(-1, 0)]];
        CoherentFloor forward = CoherentFloor.Of(Block(sweeps))!, back = CoherentFloor.Of(Block([.. sweeps.Reverse()]))!;
        Assert.Equal(forward.Mean[1].Magnitude, back.Mean[1].Magnitude, 12);
        Assert.Equal(forward.NoisePower()[0], back.NoisePower()[0], 12);
    }

    // Level −60 dB and noise −100 dB as drawn; the mean of five sweeps of noise adds 10⁻¹⁰/5 of power.
    [Fact]
    public void LeakageAndNoiseComeOutAsDrawn()
    {
        SweepBlock block = new Analyser { Points = 401 }.Floor();
        CoherentFloor floor = CoherentFloor.Of(block)!;
        double power = floor.LeakageDb().Average(level => Math.Pow(10, level / 10));
        Assert.InRange(10 * Math.Log10(power), -61, -59);
        Assert.InRange(10 * Math.Log10(floor.NoisePower().Average()), -100.5, -99.5);
    }

    // Five in a thousand clean floors are allowed for.
    [Fact]
    public void NoiseAloneIsNoLeakage()
    {
        int found = Draws.Seeds(400).Count(seed =>
            CoherentFloor.Of(new Analyser { LeakageDb = double.PositiveInfinity, Sweeps = 3, Seed = seed }.Floor())!.LeakageDb()
                .Any(double.IsFinite));
        Often.AtMost(found, Draws.Of(400), 0.005, whenFull: 8);
    }

    [Fact]
    public void WithoutPhaseOrRepeatsNothingIsTakenApart()
    {
        Assert.Null(CoherentFloor.Of(new Analyser { WithPhase = false }.Floor()));
        Assert.Null(CoherentFloor.Of(new Analyser { Sweeps = 1 }.Floor()));
    }

    private static SweepBlock Block(params Complex[][] sweeps)
    {
        Sweep Taken(Complex[] voltages, int number, SweepRole role) =>
            new($"{role}{number}", role, Rehearsed.Grid(voltages.Length), [.. voltages.Select(v => 20 * Math.Log10(v.Magnitude))],
                LevelScale.DecibelRatio)
            {
                Phases = [.. voltages.Select(v => v.Phase * 180 / Math.PI)],
            };
        ImmutableArray<Sweep> all =
        [
            .. sweeps.Select((s, i) => Taken(s, i, SweepRole.Floor)),
            Taken([.. sweeps[0].Select(v => v + 100)], 0, SweepRole.Reference),
            Taken([.. sweeps[0].Select(v => v + 10)], 0, SweepRole.Covered),
        ];
        return Aligner.Align(new Campaign("t", all), null).Floor!;
    }
}
