using SweepStats.Quantities;
using Xunit;

namespace SweepStats.Tests.Quantities;

public sealed class DecibelsTests
{
    [Fact]
    public void PercentOfFieldAndOfPowerAreThoseOfTheTable()
    {
        foreach (double[] row in Fixtures.Numbers("published/decibels/percent.csv"))
        {
            // Up to 99.99 % the table has three decimals; beyond, as many as it needs and they are exact.
            var shielding = new Decibels(row[0]);
            Agreement.Within(row[1] < 99.9 ? 0.00051 : 1e-12, row[1], 100 * shielding.FieldBlocked, row);
            Agreement.Within(row[0] is 3 or 6 ? 0.00051 : 1e-12, row[2], 100 * shielding.PowerBlocked, row);
        }
    }

    [Fact]
    public void NothingIsBlockedAtZeroAndAllAtInfinity()
    {
        Assert.Equal(0, default(Decibels).FieldBlocked);
        Assert.Equal(0, default(Decibels).PowerBlocked);
        Assert.Equal(1, new Decibels(double.PositiveInfinity).FieldBlocked);
    }

    [Fact]
    public void TwiceTheDecibelsLeaveTheSquareOfTheField()
    {
        foreach (double db in (double[])[1, 7.5, 33])
        {
            double left = 1 - new Decibels(db).FieldBlocked;
            Assert.Equal(left * left, 1 - new Decibels(2 * db).FieldBlocked, 1e-15);
            Assert.Equal(left * left, 1 - new Decibels(db).PowerBlocked, 1e-15);
        }
    }

    [Fact]
    public void SumsOrderAndDifferencesAreThoseOfTheNumbers()
    {
        var low = new Decibels(20);
        var high = new Decibels(30);
        Assert.Equal(new Decibels(50), low + high);
        Assert.Equal(new Decibels(-10), low - high);
        Assert.True(low < high && low <= high && high > low && high >= low && low <= new Decibels(20));
        Assert.True(low.CompareTo(high) < 0);
    }

    [Fact]
    public void FrequenciesAreOrderedByHertz()
    {
        Assert.True(new Hertz(1e6) < new Hertz(2e6) && new Hertz(2e6) >= new Hertz(2e6) && new Hertz(3e6) > new Hertz(2e6));
        Assert.True(new Hertz(1e6) <= new Hertz(1e6));
        Assert.Equal(0, new Hertz(5).CompareTo(new Hertz(5)));
    }
}
