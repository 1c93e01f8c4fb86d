using SweepStats.Rehearsal;
using Xunit;

namespace SweepStats.Tests;

/// <summary>What holds of the flow as a whole.</summary>
public sealed class AnalysisTests
{
    [Fact]
    public void EachSpecimenMovesTheShareDoneByItsPart()
    {
        var told = new Told();
        _ = Analysis.Run(Rehearser.Draw(Rehearsed.Plan with { SpecimensPerLot = 4 }).Campaign, new AnalysisPlan(), told);
        Assert.Equal([0.25, 0.5, 0.75, 1], told.Shares);
    }

    [Fact]
    public void OneThreadWorksUnlessMoreAreAskedFor() => Assert.Equal(1, new AnalysisPlan().Threads);

    // Another one would move every figure of the budgets and of the choice that people have written down.
    [Fact]
    public void TheDrawsBeginAtOneUnlessAnotherSeedIsStated() => Assert.Equal(1UL, new AnalysisPlan().Seed);

    private sealed class Told : IProgress<double>
    {
        public List<double> Shares { get; } = [];

        public void Report(double value) => Shares.Add(value);
    }
}
