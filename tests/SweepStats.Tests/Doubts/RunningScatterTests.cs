using SweepStats.Doubts;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Doubts;

public sealed class RunningScatterTests
{
    [Theory]
    [InlineData(0, 40)]
    [InlineData(7, 90)]
    [InlineData(100, 160)]
    public void AWindowScattersAsItsStraightenedRowsDo(int start, int end)
    {
        var random = new RandomSource(6);
        double[] shared = [.. Enumerable.Range(0, 160).Select(_ => random.Normal())];
        double[][] rows = [.. Enumerable.Range(0, 5).Select(j => shared.Select((s, p) => -80 + j + (0.1 * p) + s + (0.3 * random.Normal())).ToArray())];
        var plain = new StraightenedRows(rows, start..end);
        double running = new RunningScatter(rows).In(start..end);
        Assert.Equal(plain.MeanSquare - plain.SharedVariance, running, 1e-9);
        Assert.InRange(running, 0.05, 0.15);
    }

    [Fact]
    public void RowsThatAreAlikeShowNothingThatCanBeTold()
    {
        double[] row = [.. Enumerable.Range(0, 160).Select(p => -80 + Math.Sin(p / 7.0))];
        Assert.InRange(new RunningScatter([row, row, row]).In(20..100), -RunningScatter.Tellable, RunningScatter.Tellable);
    }
}
