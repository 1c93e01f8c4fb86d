using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Bands;

/// <summary>Means over the band of levels that a display shows in coarse steps.</summary>
public sealed class RoundedDisplayTests
{
    private const int Points = 21;

    // Levels and truths drawn by R: fixtures/oracles/rounding.R.
    private static readonly double[][] Drawn = Fixtures.Numbers("oracles/rounding.csv");

    [Theory]
    [InlineData(0.1)]
    [InlineData(1)]
    public void TheMeanHoldsTheTruthBehindCoarseSteps(double stepDb)
    {
        BandFigure[] means =
            [.. Drawn.Where(row => row[1] == stepDb).GroupBy(row => row[0]).Select(campaign => Mean([.. campaign]))];
        double[] truths =
            [.. Drawn.Where(row => row[1] == stepDb).GroupBy(row => row[0]).Select(campaign => campaign.First()[2])];
        Assert.InRange(means.Count(m => m is { Low: not null, High: not null }), 10, 27);
        // 95 % of 27 is 25.7; three binomial standard deviations are 3.4.
        Assert.InRange(means.Zip(truths).Count(p => !(p.First.Low > p.Second) && !(p.First.High < p.Second)), 23, 27);
    }

    // Weights 1/4, 1/2, 1/4. Two sweeps of -20, -20, -21 and -20, -21, -21: the level -20 has weight (3/4 + 1/4)/2 = 1/2, the
    // level -21 as much. u = 1/√12 · √(1/4 + 1/4) = 0.204124.
    [Fact]
    public void EachShownLevelHasOneErrorWorkedByHand()
    {
        SweepBlock block = Rehearsed.Floor([-20, -20, -21], [-20, -21, -21]);
        Assert.Equal(0.204124, ShownRounding.Of(block, 1 / Math.Sqrt(12), [0.25, 0.5, 0.25]), 6);
    }

    [Fact]
    public void ShiftAndOrderMakeNoDifferenceAndScaleItsOwn()
    {
        double[] weights = [0.1, 0.2, 0.3, 0.25, 0.15];
        double[] a = [3, 4, 4, 5, 3], b = [4, 4, 5, 5, 3];
        double plain = ShownRounding.Of(Rehearsed.Floor(a, b), 0.3, weights);
        Assert.Equal(plain, ShownRounding.Of(Rehearsed.Floor(b, a), 0.3, weights), 1e-12);
        Assert.Equal(plain,
            ShownRounding.Of(Rehearsed.Floor([.. a.Select(l => l - 70)], [.. b.Select(l => l - 70)]), 0.3, weights), 1e-12);
        Assert.Equal(2 * plain,
            ShownRounding.Of(Rehearsed.Floor([.. a.Select(l => 2 * l)], [.. b.Select(l => 2 * l)]), 0.6, weights), 1e-12);
        Assert.Equal(plain,
            ShownRounding.Of(Rehearsed.Floor([.. a.Reverse()], [.. b.Reverse()]), 0.3, [.. weights.Reverse()]), 1e-12);
    }

    [Fact]
    public void ASteadyLevelHasTheWholeErrorAndStepsOfAThousandthHaveNone()
    {
        SweepBlock steady = Rehearsed.Floor([-40, -40, -40], [-40, -40, -40]);
        Assert.Equal(0.2, ShownRounding.Of(steady, 0.2, [0.25, 0.5, 0.25]), 1e-12);
        Assert.Equal(0, ShownRounding.Of(steady, 0.001 / Math.Sqrt(12), [0.25, 0.5, 0.25]));
    }

    private static BandFigure Mean(double[][] sweeps)
    {
        FrequencyGrid grid =
            new([.. Enumerable.Range(0, Points).Select(i => Math.Round(30e3 * Math.Pow(1e9 / 30e6, i / (Points - 1.0))) * 1e3)]);
        IEnumerable<Sweep> taken = sweeps.Select((row, j) => new Sweep(
            $"{j}", row[3] == 1 ? SweepRole.Covered : SweepRole.Reference, grid,
            [.. row.Skip(4).Select(steps => Math.Round(steps * row[1], 6))], SweepStats.Quantities.LevelScale.DecibelMilliwatts));
        return Analysis.Run(new Campaign("rounded", [.. taken]),
            new AnalysisPlan { DeclaredFloorDb = -300, Averaging = Averaging.Power }).Bands[0].MeanDb;
    }
}
