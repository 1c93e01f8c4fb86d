using SweepStats.Files.Summaries;
using Xunit;

namespace SweepStats.Acceptance.Files;

public sealed class EstimateTests
{
    [Theory]
    [InlineData(57.94, 56.3, 59.51, "57.9 (56.3 to 59.5)")]
    [InlineData(-0.04, -1.0, 1.0, "0.0 (−1.0 to 1.0)")]
    [InlineData(12.0, null, null, "12.0")]
    [InlineData(null, 57.99, null, "at least 57.9")]
    [InlineData(null, null, 3.01, "at most 3.1")]
    [InlineData(null, null, null, "unknown")]
    public void ItSaysWhatItIs(double? value, double? low, double? high, string told) =>
        Assert.Equal(told, new Estimate(value, low, high).ToString());

    // A bound is apart from an interval that ends below it, and never from another bound of its side.
    [Fact]
    public void ApartIsNothingInCommon()
    {
        Estimate low = new(40, 39, 41), high = new(43, 42, 44), bound = new(null, 41.5, null);
        Assert.Equal((true, true, true), (low.IsApartFrom(high), high.IsApartFrom(low), low.IsApartFrom(bound)));
        Assert.Equal((false, false, false),
            (low.IsApartFrom(new(42, 41, 43)), high.IsApartFrom(bound), bound.IsApartFrom(default)));
        Assert.Equal((3.0, -3.0, null), (high.Above(low), low.Above(high), low.Above(bound)));
        Assert.Equal(1.5, new Estimate(null, 43, null).Above(bound));
    }
}
