using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Doubts;

public sealed class DriftAllowanceTests
{
    private static readonly RehearsalPlan Steady =
        Rehearsed.Plan with { SweepDeviationDb = 0.1, StartsAt = new DateTimeOffset(2026, 3, 5, 18, 0, 0, TimeSpan.Zero) };

    [Fact]
    public void WithoutAClearDriftNothingIsAllowedFor() => Assert.Null(Rehearsed.Analysed(Steady).Doubts.Drift);

    // 2 dB over a day without any order of the roles stated: the whole of it.
    [Fact]
    public void WithoutTimesTheWholeDriftIsAllowedFor()
    {
        AnalysisResult result = Rehearsed.Analysed(Steady with { StartsAt = null, DriftDb = 3 });
        double clear = result.Drifts.Where(d => d.IsClear).Max(d => Math.Abs(d.Size));
        Assert.Equal(clear, result.Doubts.Drift!.HalfWidthDb, 12);
    }

    // Three specimens of five sweeps after five reference sweeps: from the middle of the reference to that of the last specimen
    // are 2.5 + 5 + 5 + 2.5 sweeps, and the drift of a group takes four steps.
    [Fact]
    public void WithoutTimesAndWithTheReferenceOnOneSideTheDriftGoesOnAtItsPace()
    {
        RehearsalPlan three = Steady with { StartsAt = null, DriftDb = 6, SpecimensPerLot = 3 };
        AnalysisResult result = Analysis.Run(Rehearser.Draw(three).Campaign,
            new AnalysisPlan { Averaging = three.Averaging, ReferenceTaking = SweepTaking.Once });
        double clear = result.Drifts.Where(d => d.IsClear).Max(d => Math.Abs(d.Size));
        Assert.Equal(clear * 15 / 4, result.Doubts.Drift!.HalfWidthDb, 1e-9);
    }

    // References on both sides of one specimen: their middle and its middle lie close together, so little of the drift is left.
    [Fact]
    public void WithTimesOnlyWhatLiesBetweenReferenceAndSpecimenIsAllowedForAndTheTruthIsHeld()
    {
        int held = 0, all = 0;
        foreach (ulong seed in Draws.Seeds(20))
        {
            AnalysisResult result = Rehearsed.Analysed(Steady with { DriftDb = 2, Seed = seed });
            Assert.InRange(result.Doubts.Drift!.HalfWidthDb, 0.01, 1);
            foreach (ShieldingReading.Measured reading in result.Curves[0].Readings.OfType<ShieldingReading.Measured>())
            {
                all++;
                held += reading.Shielding.Low.Value <= 40 && reading.Shielding.High.Value >= 40 ? 1 : 0;
            }
        }

        Assert.InRange(held / (double)all, 0.93, 1);
    }
}
