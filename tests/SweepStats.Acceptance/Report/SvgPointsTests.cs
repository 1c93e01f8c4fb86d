using System.Globalization;
using System.Text;
using OxyPlot;
using SweepStats.Report.Drawing;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Acceptance.Report;

public sealed class SvgPointsTests
{
    [Theory]
    [InlineData(0.0)]
    [InlineData(-0.00001)]
    [InlineData(0.00005)]
    [InlineData(1.00005)]
    [InlineData(2.675)]
    [InlineData(899.99995)]
    [InlineData(-12.34)]
    [InlineData(100)]
    [InlineData(1e9)]
    [InlineData(-1.7e300)]
    [InlineData(double.NaN)]
    public void ACoordinateIsWrittenAsTheRuntimeWritesIt(double value) => Assert.Equal(Plain(value), Written(value));

    [Fact]
    public void ZeroKeepsTheSignThatTheRuntimeShows() => Assert.Equal(Plain(-0.0), Written(-0.0));

    [Fact]
    public void SoAreManyThousandOthersAndTheirTies()
    {
        var random = new RandomSource(7);
        for (int i = 0; i < 20_000; i++)
        {
            double value = (random.Uniform() - 0.1) * Math.Pow(10, (12 * random.Uniform()) - 5);
            double tie = Math.Round(value, 4) + 0.00005;
            Assert.Equal(Plain(value), Written(value));
            Assert.Equal(Plain(tie), Written(tie));
            Assert.Equal(Plain(Math.BitDecrement(tie)), Written(Math.BitDecrement(tie)));
        }
    }

    [Fact]
    public void PointsStandBesideEachOther()
    {
        using var to = new MemoryStream();
        SvgPoints.Append(to, [new ScreenPoint(1, 2.5), new ScreenPoint(-3.25, 0)]);
        Assert.Equal("1,2.5 -3.25,0", Encoding.UTF8.GetString(to.ToArray()));
    }

    private static string Plain(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    private static string Written(double value)
    {
        var bytes = new byte[350];
        return Encoding.UTF8.GetString(bytes, 0, SvgPoints.Coordinate(value, bytes));
    }
}
