using SweepStats.Planning;
using SweepStats.Repeats;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Planning;

public sealed class PlannedRepeatsTests
{
    // Nothing told: all models as likely as before anything is seen.
    private static readonly LastingScatter Lasting = LastingScatter.Of(
        [RepeatSeries.Of(RepeatKind.Reference, [[1, 2], [2, 4], [1.5, 3], [3, 2], [2.5, 1]])], SerialLikelihood.Nothing,
            SerialLikelihood.Nothing);

    [Fact]
    public void IndependentRepeatsAsEver()
    {
        PlannedRepeats repeats = PlannedRepeats.Independent;
        Assert.Equal(0.7 / 49, repeats.OfMean(0.7, 49));
        Assert.Equal(1.0, repeats.OfPilot(49));
        Assert.Equal(1.0, repeats.Factor(49));
        Assert.Equal(48.0, repeats.Freedom(49));
        Assert.Null(repeats.Root(1, 3));
    }

    [Fact]
    public void MoreRepeatsThatLastHelpLess()
    {
        var repeats = new PlannedRepeats(Lasting);
        Assert.True(repeats.OfMean(1, 5) > 1.0 / 5);
        Assert.InRange(repeats.OfMean(1, 10) / repeats.OfMean(1, 5), 0.5, 1);
        Assert.InRange(repeats.Freedom(10), repeats.Freedom(5), 9);
        Assert.Equal(0, repeats.Freedom(1));
        // At the pilot's own number both ways of saying it are one.
        Assert.Equal(repeats.Factor(5) / 5, repeats.OfMean(1, 5), 1e-12);
        Assert.Equal(repeats.OfPilot(5), repeats.Factor(5), 1e-12);
    }

    [Fact]
    public void TheRootMakesTheCovariance()
    {
        double[,] root = new PlannedRepeats(Lasting).Root(2, 6)!;
        SerialCovariance seen = Lasting.Level(5), wanted = Lasting.Level(6);
        for (int i = 0; i < 6; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double product = Enumerable.Range(0, j + 1).Sum(k => root[i, k] * root[j, k]);
                Assert.Equal(2 * wanted.Lag(i - j) / seen.SampleVariance, product, 1e-12);
            }
        }
    }
}
