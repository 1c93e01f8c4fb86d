using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class NestedValuesTests
{
    private static readonly double[] Values = [1, 3, 5, 7, 11, 13];
    private static readonly Nesting Groups = Nesting.Of([0, 0, 0, 0, 1, 1], [0, 0, 1, 1, 0, 0]);

    [Fact]
    public void SquaresOfAHandWorkedSet()
    {
        var reduced = NestedValues.Of(Values, Groups);
        // Inner means 2, 6 and 12, outer ones 4 and 12, all of them 20/3.
        Assert.Equal(6, reduced.Within, 1e-12);
        double[] squares = reduced.Squares(Groups);
        Assert.Equal([4 * 64 / 9.0 + (2 * 256 / 9.0), 16, 6], squares, (a, b) => Math.Abs(a - b) < 1e-12);
        // Together they are the squares about the mean.
        Assert.Equal(Sample.SquaredDeviations(Values, Sample.Mean(Values)), squares.Sum(), 1e-12);
    }

    [Fact]
    public void AnyCentreServes()
    {
        var reduced = NestedValues.Of(Values, Groups);
        var moved = new NestedValues(reduced.Centre - 2, [.. reduced.Means.Select(m => m + 2)], reduced.Within);
        NestedComponents fit = NestedReml.Of(reduced, Groups), other = NestedReml.Of(moved, Groups);
        Assert.Equal(fit.Mean, other.Mean, 1e-10);
        Assert.Equal(fit.Total, other.Total, 1e-8);
        Assert.Equal(fit.Mean, NestedReml.Of(Values, Groups).Mean, 1e-12);
    }
}
