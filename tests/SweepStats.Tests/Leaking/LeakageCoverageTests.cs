using SweepStats.Leakage;
using SweepStats.Shielding;
using Xunit;

namespace SweepStats.Tests.Leaking;

/// <summary>
/// A small seeded part of the study of benches: the interval holds the truth where steady leakage of any phase stands beside the
/// signal.
/// </summary>
public sealed class LeakageCoverageTests
{
    private const int Points = 51;
    private static readonly int Campaigns = Draws.Of(30);

    [Theory]
    [InlineData(true, 30)]
    [InlineData(true, 50)]
    [InlineData(true, 60)]
    [InlineData(true, 75)]
    [InlineData(false, 40)]
    [InlineData(false, 50)]
    [InlineData(false, 60)]
    [InlineData(false, 75)]
    public void TheIntervalHoldsTheTruthAtAnyShielding(bool withPhase, double shielding)
    {
        int held = Drawn(new Analyser { WithPhase = withPhase, Points = Points, ShieldingDb = shielding }, false)
            .Sum(r => r.Curves[0].Readings.Count(reading => Holds(reading, shielding)));
        HoldsAsPromised(held);
    }

    [Fact]
    public void TenDecibelsAboveTheLeakageItIsTwoSided()
    {
        int two = Drawn(new Analyser { Points = Points, ShieldingDb = 50 }, false)
            .Sum(r => r.Curves[0].Readings.Count(reading => reading is ShieldingReading.Measured));
        Assert.InRange(two / (double)(Campaigns * Points), 0.9, 1);
    }

    // What is left of it is the noise of the floor's mean: with as few floor sweeps as covered ones it is as large as the covered
    // mean's own, but known.
    [Theory]
    [InlineData(50)]
    [InlineData(65)]
    [InlineData(75)]
    public void SubtractedItHoldsAndIsHardlyWiderThanWithoutLeakage(double shielding)
    {
        var leaking = new Analyser { Points = Points, ShieldingDb = shielding };
        AnalysisResult[] subtracted = [.. Drawn(leaking, true)];
        int held = subtracted.Sum(r => r.Curves[0].Readings.Count(reading => Holds(reading, shielding)));
        HoldsAsPromised(held);
        double Width(IEnumerable<AnalysisResult> results) =>
            results.SelectMany(r => r.Curves[0].Readings).OfType<ShieldingReading.Measured>()
                .Average(m => m.Shielding.High.Value - m.Shielding.Low.Value);
        Assert.InRange(Width(subtracted) / Width(Drawn(leaking with { LeakageDb = double.PositiveInfinity }, false)), 0.9, 1.2);
        Assert.All(subtracted, r => Assert.True(r.Leakages[0].Subtracted));
    }

    [Fact]
    public void ANarrowerBandwidthIsNeverAdvisedWhereLeakageRules()
    {
        AnalysisResult result = Drawn(new Analyser { Points = Points, ShieldingDb = 62 }, false).First();
        Assert.Equal(LeakageSource.FloorPhase, result.Leakages[0].Source);
        Assert.Contains(result.Findings,
            f => f.Code == "leakage" && f.NextStep.Contains("does not help", StringComparison.Ordinal));
        Assert.DoesNotContain(result.Findings,
            f => f.NextStep.Contains("narrower resolution bandwidth", StringComparison.Ordinal));
    }

    // 95 % are promised. The phases of neighbouring frequencies go together, so that 30 campaigns of 51 count for some 200
    // readings.
    private static void HoldsAsPromised(int held)
    {
        int counted = Campaigns * 20 / 3;
        Often.AtLeast((int)Math.Round((double)counted * held / (Campaigns * Points)), counted, 0.95);
        Assert.True(!Draws.Full || held >= 0.90 * Campaigns * Points, $"{held} of {Campaigns * Points}");
    }

    private static IEnumerable<AnalysisResult> Drawn(Analyser analyser, bool same) => Enumerable.Range(1, Campaigns)
        .Select(seed => Analysis.Run((analyser with { Seed = (ulong)seed }).Draw(), new AnalysisPlan { SameLeakage = same }));

    private static bool Holds(ShieldingReading reading, double truth) => reading switch
    {
        ShieldingReading.Measured m => m.Shielding.Low.Value <= truth && m.Shielding.High.Value >= truth,
        ShieldingReading.AtLeast a => a.Bound.Value <= truth,
        _ => true,
    };
}
