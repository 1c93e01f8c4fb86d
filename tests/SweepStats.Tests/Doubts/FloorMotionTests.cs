using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Doubts;
using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Doubts;

public sealed class FloorMotionTests
{
    private static readonly DetectorNoise Noise = new(100);

    // 100 dB behind 70 dB of range: nothing but noise; its power mean lies 0.1 dB over its log mean of 20 looks.
    private static readonly RehearsalPlan Hidden =
        Rehearsed.Plan with { ShieldingStartDb = 100, ShieldingStopDb = 100, Looks = 20, Averaging = Averaging.Power };

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void NoiseThatRoseAfterTheFloorWasMeasuredIsFoundAndGivesBounds(double rise)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            AnalysisResult result = Analysed(Hidden with { Seed = seed }, rise);
            FloorMotion motion = Assert.Single(result.Doubts.Motions);
            Assert.InRange(motion.RiseDb, rise - 0.4, rise + 0.4);
            Assert.InRange(result.Curves[0].Readings.Count(r => r is ShieldingReading.Measured), 0, 3);
            Assert.Contains(result.Findings, f => f.Code == "floor-moved");
        }
    }

    // Within the decibel that is allowed for, nothing is said.
    [Fact]
    public void AFloorThatStayedIsNotSuspected() => Assert.InRange(
        Draws.Seeds(100).Count(seed => Analysed(Hidden with { Seed = seed }, 0).Doubts.Motions.Length > 0), 0, 1);

    // A signal follows the reference and the specimen: from 55 to 80 dB it sinks through the floor.
    [Theory]
    [InlineData(55, 80)]
    [InlineData(65, 75)]
    public void ASignalThatSinksIntoTheFloorIsNoPile(double start, double stop)
    {
        RehearsalPlan sinking = Hidden with { Points = 201, ShieldingStartDb = start, ShieldingStopDb = stop };
        Assert.InRange(Draws.Seeds(60).Count(seed => Analysed(sinking with { Seed = seed }, 0).Doubts.Motions.Length > 0), 0, 1);
    }

    // 401 readings from −2 to +2 standard errors about a rise of 4 dB, as 2·sign(u)·|u|ᵃ of even u: they deviate by 2/√(2a + 1).
    // Noise cut off there deviates by 0.88, evenly spread readings by 1.15; told from 1.05 on.
    [Theory]
    [InlineData(1.6, 1)]
    [InlineData(1.15, 0)]
    public void APileThatIsWiderThanNoiseIsNone(double power, int piles) => Assert.Equal(piles, Piled(power).Length);

    // A floor that is declared has no error of its own: that of one sweep of noise, over the root of the readings.
    [Fact]
    public void TheRiseIsAsSureAsItsReadingsAreMany()
    {
        FloorMotion motion = Assert.Single(Piled(1.6));
        Assert.Equal((4.0, Noise.LogStandardDeviation / Math.Sqrt(motion.Points.Length)),
            (Math.Round(motion.RiseDb, 2), motion.ErrorDb));
    }

    private static ImmutableArray<FloorMotion> Piled(double power)
    {
        double[] even = [.. Enumerable.Range(-200, 401).Select(i => i / 200.0)];
        AlignedCampaign campaign = Aligner.Align(Rehearsed.Campaign(
            Rehearsed.Sweeps(SweepRole.Reference, [.. even.Select(_ => 0.0)]),
            Rehearsed.Sweeps(SweepRole.Covered, [.. even.Select(u =>
                -96 + (1.999 * Noise.LogStandardDeviation * Math.Sign(u) * Math.Pow(Math.Abs(u), power)))])), null);
        NoiseFloor floor = NoiseFloorEstimator.Declare(-100, even.Length, Averaging.Power) with
        {
            Noise = [Noise],
            HalfWidthDb = 1,
        };
        var once = new FloorHistory { Bracketed = false, IsKnown = true, ChangeDb = null, HalfWidthDb = 1 };
        return FloorMotion.Of(campaign, floor, once);
    }

    private static AnalysisResult Analysed(RehearsalPlan plan, double rise)
    {
        Campaign campaign =
            Rehearsed.Changed(Rehearser.Draw(plan).Campaign, (s, _, level) => s.Role == SweepRole.Floor ? level - rise : level);
        return Analysis.Run(campaign with { FloorTaking = SweepTaking.Once }, new AnalysisPlan { Averaging = plan.Averaging });
    }
}
