using SweepStats.Quantities;
using Xunit;

namespace SweepStats.Tests.Quantities;

public sealed class VoltageSumTests
{
    [Fact]
    public void TheLimitsOfMismatchAreThoseOfTheTable()
    {
        foreach (string[] cells in Fixtures.Cells("published/mismatch/limits.csv"))
        {
            double[] row = [.. cells.Select(c => double.Parse(c, System.Globalization.CultureInfo.InvariantCulture))];
            Reflection source = Reflection.OfStandingWaveRatio(row[0]);
            Reflection load = Reflection.OfStandingWaveRatio(row[1]);
            var sum = VoltageSum.Mismatch(source, load);
            Agreement.Within(0.51 * Math.Pow(10, -(cells[2].Length - 1 - cells[2].IndexOf('.', StringComparison.Ordinal))),
                row[2], source.Magnitude * load.Magnitude, row);
            Agreement.Within(0.000051, row[3], sum.High.Value, row);
            Agreement.Within(0.000051, row[4], sum.Low.Value, row);
        }
    }

    // 1 ± 10^(−Δ/20) by hand: 1.1 and 0.9; 1.316228 and 0.683772; 1.5 and 0.5 (6.0206 dB apart).
    [Theory]
    [InlineData(20, 0.8279, -0.9151)]
    [InlineData(10, 2.3866, -3.3018)]
    [InlineData(6.0205999132796, 3.5218, -6.0206)]
    public void TwoVoltagesApartAddAsByHand(double apart, double high, double low)
    {
        var sum = VoltageSum.Apart(new Decibels(apart));
        Assert.Equal(high, sum.High.Value, 4);
        Assert.Equal(low, sum.Low.Value, 4);
    }

    [Fact]
    public void EqualVoltagesMayCancelAndOneAloneStays()
    {
        var equal = VoltageSum.Apart(new Decibels(0));
        Assert.Equal(20 * Math.Log10(2), equal.High.Value, 12);
        Assert.Equal(double.NegativeInfinity, equal.Low.Value);
        Assert.Equal(new VoltageSum(new Decibels(0), new Decibels(0)), VoltageSum.Apart(new Decibels(double.PositiveInfinity)));
        Assert.Throws<ArgumentOutOfRangeException>(() => VoltageSum.Apart(new Decibels(double.NaN)));
    }

    [Fact]
    public void ItMattersNotWhichOfTheTwoIsTheLarger()
    {
        // The same sum, over the other voltage: 7 dB more.
        var over = VoltageSum.Apart(new Decibels(7));
        var under = VoltageSum.Apart(new Decibels(-7));
        Assert.Equal(over.High.Value + 7, under.High.Value, 12);
        Assert.Equal(over.Low.Value + 7, under.Low.Value, 12);
    }

    [Fact]
    public void NoPhaseLeavesTheLimitsAndSomePhaseReachesThem()
    {
        var sum = VoltageSum.Apart(new Decibels(8));
        double[] levels = [.. Enumerable.Range(0, 361).Select(degree =>
            20 * Math.Log10(
                (1 + System.Numerics.Complex.FromPolarCoordinates(Math.Pow(10, -8.0 / 20), degree * Math.PI / 180)).Magnitude))];
        Assert.Equal(sum.High.Value, levels.Max(), 12);
        Assert.Equal(sum.Low.Value, levels.Min(), 12);
    }
}
