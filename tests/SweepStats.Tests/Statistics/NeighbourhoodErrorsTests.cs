using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class NeighbourhoodErrorsTests
{
    private static readonly double[] Row = [0.3, 0.1, 0.5, 0.2, 0.9, 0.4, 0.05, 0.6, 0.35, 0.7];

    // Worked by hand: mean squares within two places of 1, 1, 5, 1, 1 are 27/3, 28/4, 29/5, 28/4, 27/3; their roots 3, √7, √5.8,
    // √7, 3, the median of them √7.
    [Fact]
    public void TheLargestOfItselfItsNeighboursAndTheMedianNeighbourhoodIsTaken()
    {
        double[] found = NeighbourhoodErrors.Of([1, 1, 5, 1, 1]);
        Assert.Equal([3, Math.Sqrt(7), 5, Math.Sqrt(7), 3], found, (a, b) => Math.Abs(a - b) < 1e-12);
    }

    [Fact]
    public void ErrorsThatAreAlikeStayAsTheyAre() =>
    Assert.All(NeighbourhoodErrors.Of([0.7, 0.7, 0.7, 0.7, 0.7, 0.7]), e => Assert.Equal(0.7, e, 1e-12));

    [Fact]
    public void NoErrorGetsSmallerAndMeetingRepeatsKnowNothing()
    {
        double[] found = NeighbourhoodErrors.Of(Row);
        Assert.All(Row.Zip(found), e => Assert.True(e.Second >= e.First));
        Assert.True(found[6] > 0.4);
        Assert.Equal(0.9, found[4]);
    }

    [Fact]
    public void AnotherUnitScalesAndTheOtherWayRoundIsTheSame()
    {
        double[] found = NeighbourhoodErrors.Of(Row);
        Assert.All(NeighbourhoodErrors.Of([.. Row.Select(e => 3 * e)]).Zip(found),
            e => Assert.Equal(3 * e.Second, e.First, 1e-12));
        Assert.All(NeighbourhoodErrors.Of([.. Row.Reverse()]).Reverse().Zip(found), e => Assert.Equal(e.Second, e.First, 1e-12));
    }

    [Fact]
    public void PlacesWithoutAnErrorCountForNothingAndStaySo()
    {
        double[] found = NeighbourhoodErrors.Of([1, double.NaN, 5, double.NaN, 1]);
        // Within two places of the first: 1 and 5.
        Assert.Equal([Math.Sqrt(13), double.NaN, 5, double.NaN, Math.Sqrt(13)], found,
            (a, b) => a.Equals(b) || Math.Abs(a - b) < 1e-12);
        Assert.All(NeighbourhoodErrors.Of([double.NaN, double.NaN]), e => Assert.True(double.IsNaN(e)));
        Assert.Empty(NeighbourhoodErrors.Of([]));
    }
}
