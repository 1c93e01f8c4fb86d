using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Storage;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class StandardisedRestsTests
{
    [Theory]
    [InlineData(30)]
    [InlineData(41)]
    [InlineData(203)]
    public void EachIsARestAgainstTheScatterOfTwentyPointsToEitherSide(int points)
    {
        var random = new RandomSource(7);
        double[][] rests = [.. Enumerable.Range(0, 3)
            .Select(_ => Deviations.FromMean([.. Enumerable.Range(0, points).Select(p => (1 + (p / 50.0)) * random.Normal())]))];
        var all = new StandardisedRests(Group(rests), coarsest: 0);
        Assert.Equal(3 * points, all.Count);
        for (int p = 0; p < points; p++)
        {
            double[] squares = [.. Enumerable.Range(0, points).Where(q => Math.Abs(q - p) <= 20)
                .SelectMany(q => rests.Select(r => Math.Pow(r[q] - rests.Average(o => o[q]), 2)))];
            for (int j = 0; j < 3; j++)
            {
                double expected = (rests[j][p] - rests.Average(r => r[p])) / Math.Sqrt(squares.Average());
                Assert.Equal(expected, all[(3 * p) + j], 1e-12);
            }
        }

        Assert.Equal(all[7], all.All()[7]);
    }

    [Fact]
    public void PointsThatScatterNoMoreThanTheStepsHideAreLeftOut()
    {
        double[] rests = [.. Enumerable.Range(0, 100).Select(p => (p % 2 == 0 ? 1 : -1) * (p < 50 ? 0.01 : 1.0))];
        var kept = new StandardisedRests(Group([rests, [.. rests.Select(r => -r)]]), coarsest: 0.1);
        Assert.InRange(kept.Count, 2 * 50, 2 * 70);
    }

    private static RepeatGroup Group(double[][] rests)
    {
        SweepBlock block = Rehearsed.Floor(rests);
        ImmutableArray<int> points = [.. Enumerable.Range(0, block.PointCount)];
        return new RepeatGroup
        {
            Role = SweepRole.Reference,
            Specimen = null,
            Placement = null,
            Points = points,
            Sweeps = [.. block.Sweeps.Select((s, j) => new RepeatedSweep(s, new Decibels(0), new Decibels(1),
                new SweepRests(block, j, points, new KeptRows([new double[points.Length]]))))],
        };
    }
}
