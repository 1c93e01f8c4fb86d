using SweepStats.Shielding;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Shielding;

public sealed class CoverageFreedomTests
{
    [Fact]
    public void AFewRepeatsThatHappenToLieCloseDoNotLendDegreesOfFreedom()
    {
        // Own errors of 0.3 dB each: 0.18²/(0.0081/4 + 0.0081/3) = 6.857. Usual ones of 0.1 and 0.8 dB: 0.65²/(0.0001/4 +
        // 0.4096/3) = 3.094.
        Assert.Equal(3.094, CoverageFreedom.Of(new(Level(0.3, 4, 0.1), 1), new(Level(0.3, 3, 0.8), 1)), 1e-3);
        Assert.Equal(6.857, CoverageFreedom.Of(new(Level(0.3, 4, 0), 1), new(Level(0.3, 3, 0.8), 1)), 1e-3);
    }

    [Fact]
    public void RolesThatScatterAlikeKeepWelchsDegreesOfFreedom()
    {
        // Seven degrees of freedom are the most that four and three can give; no usual error takes any away from fewer than that
        // at equal variances.
        double own = CoverageFreedom.Of(new(Level(0.2, 4, 0), 1), new(Level(0.4, 4, 0), 1));
        Assert.Equal(own, CoverageFreedom.Of(new(Level(0.2, 4, 0.3), 1), new(Level(0.4, 4, 0.3), 1)), 1e-12);
    }

    [Fact]
    public void ASlopeCountsWithItsLevel() =>
        Assert.Equal(
            CoverageFreedom.Of(new(Level(0.3, 4, 0.1), 1), new(Level(0.6, 3, 0.8), 1)),
            CoverageFreedom.Of(new(Level(0.3, 4, 0.1), 1), new(Level(0.3, 3, 0.4), 2)), 1e-12);

    [Fact]
    public void FurtherPartsCountAsTheyAre()
    {
        ReadOnlySpan<Contribution> parts = [new(0.3, 4), new(0.3, 3), new(1, double.PositiveInfinity)];
        // (0.65 + 1)²/(0.0001/4 + 0.4096/3).
        Assert.Equal(
            2.7225 / ((0.0001 / 4) + (0.4096 / 3)),
            CoverageFreedom.OfAll(parts, new(Level(0.3, 4, 0.1), 1), new(Level(0.3, 3, 0.8), 1)), 1e-9);
    }

    private static RepeatedLevel Level(double error, double dof, double usual) =>
        new(-40, new Contribution(error, dof)) { UsualErrorDb = usual };
}
