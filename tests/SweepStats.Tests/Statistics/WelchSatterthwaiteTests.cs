using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class WelchSatterthwaiteTests
{
    [Fact]
    public void TwoPartsGiveWhatHandArithmeticGives()
    {
        // u 3 and 4: (9 + 16)²/(81/3 + 256/8) = 625/59.
        Contribution[] parts = [new(3, 3), new(4, 8)];
        Assert.Equal(5, WelchSatterthwaite.Combined(parts), 1e-15);
        Assert.Equal(625.0 / 59, WelchSatterthwaite.DegreesOfFreedom(parts), 1e-14);
    }

    [Fact]
    public void TheEndGaugeOfTheUncertaintyGuideComesOut()
    {
        // JCGM 100:2008, H.1.6, from memory: contributions 25, 9.7, 2.9 and 16.6 nm with 18, 25.6, 50 and 2 degrees of freedom; u
        // 32 nm, ν 16.7 as printed, 31.67 and 16.76 recomputed from these rounded parts.
        Contribution[] parts = [new(25, 18), new(9.7, 25.6), new(2.9, 50), new(16.6, 2)];
        Assert.Equal(31.67, WelchSatterthwaite.Combined(parts), 0.006);
        Assert.Equal(16.7, WelchSatterthwaite.DegreesOfFreedom(parts), 0.1);
    }

    [Fact]
    public void ScaleAndOrderChangeNoDegreesOfFreedom()
    {
        Contribution[] parts = [new(0.3, 2), new(0.7, 9)];
        double plain = WelchSatterthwaite.DegreesOfFreedom(parts);
        Assert.Equal(plain, WelchSatterthwaite.DegreesOfFreedom([.. parts.Select(part => part.Scaled(-2.5))]), 1e-12);
        Assert.Equal(plain, WelchSatterthwaite.DegreesOfFreedom([.. parts.Reverse()]), 1e-12);
        Assert.InRange(plain, 2, 11);
    }

    [Fact]
    public void KnownPartsHaveEndlessDegreesOfFreedom()
    {
        Assert.Equal(double.PositiveInfinity,
            WelchSatterthwaite.DegreesOfFreedom([new(1, double.PositiveInfinity), Contribution.None]));
        Assert.Equal(double.PositiveInfinity, WelchSatterthwaite.DegreesOfFreedom([]));
        Assert.Equal(0, WelchSatterthwaite.Combined([]));
    }
}
