using SweepStats.Leakage;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Leaking;

public sealed class ShapedFloorTests
{
    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(10)]
    public void ASteadySignalIsRecognisedByItsScatter(int sweeps)
    {
        int found = Enumerable.Range(1, 40)
            .Count(seed => ShapedFloor.Of(
                new Analyser { WithPhase = false, Points = 201, Sweeps = sweeps, Seed = (ulong)seed }.Floor()) is not null);
        Assert.InRange(found, 38, 40);
    }

    // Three in ten thousand are allowed for.
    [Theory]
    [InlineData(Averaging.Sample, 1, 3)]
    [InlineData(Averaging.Power, 3, 5)]
    [InlineData(Averaging.Power, 100, 3)]
    [InlineData(Averaging.Log, 10, 5)]
    public void NoiseIsNot(Averaging averaging, double looks, int sweeps)
    {
        RehearsalPlan plan = Rehearsed.Plan with { Points = 201, Averaging = averaging, Looks = looks, FloorSweeps = sweeps };
        int found = Draws.Seeds(150)
            .Count(seed => ShapedFloor.Of(
                SweepStats.Alignment.Aligner.Align(Rehearser.Draw(plan with { Seed = seed }).Campaign, null).Floor!) is not null);
        Often.AtMost(found, Draws.Of(150), 0.0003, whenFull: 2);
    }

    [Fact]
    public void ASlopingOrRipplingFloorOfNoiseIsNot()
    {
        RehearsalPlan plan = Rehearsed.Plan with { Points = 201, Averaging = Averaging.Power, Looks = 200 };
        foreach (Func<int, double> shape in new Func<int, double>[] { f => 20 * Math.Log10(1 + (f / 20.0)),
            f => Math.Sin(2 * Math.PI * f / 40), f => Math.Sin(2 * Math.PI * f / 10), f => f > 100 ? 5 : 0 })
        {
            Campaign campaign = Rehearsed.Changed(Rehearser.Draw(plan).Campaign,
                (s, f, level) => s.Role == SweepRole.Floor ? level + shape(f) : level);
            Assert.Null(ShapedFloor.Of(SweepStats.Alignment.Aligner.Align(campaign, null).Floor!));
        }
    }
}
