using SweepStats.Checks;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Tests.Checks;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Leaking;

/// <summary>
/// A small seeded part of the study of plates: a leakage that the noise of the plate sweeps hides stands in the intervals.
/// </summary>
public sealed class PlateCoverageTests
{
    private const int Points = 51;
    private const double NoiseDb = 100;
    private static readonly int Campaigns = Draws.Of(24);

    // Noise of single looks at −100 dB, the leakage so far over it, the signal through the specimen so far over the leakage.
    [Theory]
    [InlineData(-6, 3, 10)]
    [InlineData(-3, 0, 10)]
    [InlineData(-3, 3, 10)]
    [InlineData(-3, 6, 10)]
    [InlineData(-3, 10, 3)]
    [InlineData(-3, 20, 10)]
    [InlineData(0, 6, 10)]
    [InlineData(0, 10, 10)]
    [InlineData(0, 20, 3)]
    public void TheIntervalHoldsTheTruthWhereThePlateShowsNoise(double overNoise, double overLeakage, int sweeps)
    {
        double shielding = NoiseDb - overNoise - overLeakage;
        Analyser bench = Bench(sweeps) with { LeakageDb = NoiseDb - overNoise, ShieldingDb = shielding };
        int held = Drawn(bench).Sum(r => r.Curves[0].Readings.Count(reading => Holds(reading, shielding)));
        // The phases of neighbouring frequencies go together: 51 count for some seven.
        int counted = Campaigns * 20 / 3;
        Often.AtLeast((int)Math.Round((double)counted * held / (Campaigns * Points)), counted, 0.95);
    }

    // 50 dB under the signal a leakage moves it by 0.03 dB.
    [Fact]
    public void WhereItIsFarBelowTheIntervalHardlyWidens()
    {
        Analyser bench = Bench(5) with { LeakageDb = double.PositiveInfinity, ShieldingDb = 45, ScatterDb = 0.3 };
        Assert.InRange(Width(bench) / Width(bench with { PlateSweeps = 0 }), 0.99, 1.03);
    }

    [Fact]
    public void WhatStandsInTheIntervalsIsNotSaidToBeUntested()
    {
        AnalysisResult result = Analysis.Run((Bench(5) with { LeakageDb = 103, ShieldingDb = 85 }).Draw(), new AnalysisPlan());
        Assert.DoesNotContain(UntestedDoubt.Leakage, result.Verdict.Untested);
        Finding told = Assert.Single(result.Findings, f => f.Code == "leakage");
        Assert.StartsWith("Take more plate sweeps", told.NextStep, StringComparison.Ordinal);
        Assert.Contains("The intervals allow for it", told.Message, StringComparison.Ordinal);
    }

    // It follows the same voltage into the budget, so that budget and shielding.csv agree.
    [Fact]
    public void TheBudgetNamesIt()
    {
        AnalysisResult result = Analysis.Run((Bench(10) with { LeakageDb = 110, ShieldingDb = 80 }).Draw(), new AnalysisPlan());
        Assert.Contains(result.Budgets[0].Frequencies,
            b => b.LeakageBehindPlate && b.Lines.Any(l => l.Source == "leakage" && l.StandardUncertaintyDb > 0.1));
    }

    [Fact]
    public void LevelsThatAllRiseTogetherChangeNothing()
    {
        Campaign drawn = (Bench(5) with { LeakageDb = 103, ShieldingDb = 85 }).Draw();
        Campaign raised = drawn with { Sweeps = [.. drawn.Sweeps.Select(s => s.Shifted(7))] };
        (ShieldingReading Before, ShieldingReading After)[] pairs =
            [.. Analysis.Run(drawn,
                new AnalysisPlan()).Curves[0].Readings.Zip(Analysis.Run(raised, new AnalysisPlan()).Curves[0].Readings)];
        Assert.All(pairs, p => Assert.Equal(Low(p.Before), Low(p.After), 1e-6));
    }

    private static double Low(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured m => m.Shielding.Low.Value,
        ShieldingReading.AtLeast a => a.Bound.Value,
        _ => double.NegativeInfinity,
    };

    private static Analyser Bench(int sweeps) =>
        new() { WithPhase = false, Points = Points, NoiseDb = NoiseDb, Sweeps = sweeps, PlateSweeps = sweeps };

    private static double Width(Analyser bench) =>
        Drawn(bench).SelectMany(r => r.Curves[0].Readings).OfType<ShieldingReading.Measured>()
        .Average(m => m.Shielding.High.Value - m.Shielding.Low.Value);

    private static IEnumerable<AnalysisResult> Drawn(Analyser bench) => Enumerable.Range(1, Campaigns)
        .Select(seed =>
            Analysis.Run((bench with { Seed = (ulong)seed }).Draw(), new AnalysisPlan { Averaging = Averaging.Sample }));

    private static bool Holds(ShieldingReading reading, double truth) => reading switch
    {
        ShieldingReading.Measured m => m.Shielding.Low.Value <= truth && m.Shielding.High.Value >= truth,
        ShieldingReading.AtLeast a => a.Bound.Value <= truth,
        _ => true,
    };
}
