using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class RandomSourceTests
{
    private const int Draws = 100_000;
    private const double Slack = 4.5;

    [Fact]
    public void OneSeedGivesOneStreamAndAnotherSeedAnother()
    {
        double[] first = Many(7, random => random.Normal(), 50);
        Assert.Equal(first, Many(7, random => random.Normal(), 50));
        Assert.NotEqual(first, Many(8, random => random.Normal(), 50));
    }

    [Fact]
    public void AForkDependsOnSeedAndNumberOnly()
    {
        var fresh = new RandomSource(7);
        var used = new RandomSource(7);
        _ = used.Normal();
        _ = used.Uniform();
        Assert.Equal(fresh.Fork(3).Uniform(), used.Fork(3).Uniform());
        Assert.NotEqual(fresh.Fork(3).Uniform(), fresh.Fork(4).Uniform());
        Assert.NotEqual(fresh.Fork(0).Uniform(), new RandomSource(7).Uniform());
    }

    [Fact]
    public void ForksAreNotCorrelatedWithTheirNeighbours()
    {
        var source = new RandomSource(11);
        double[] first = [.. Enumerable.Range(0, 20_000).Select(i => source.Fork((ulong)i).Uniform())];
        Assert.InRange(Autocorrelation.Lag1(first), -Slack / Math.Sqrt(first.Length), Slack / Math.Sqrt(first.Length));
        Moments(first, 0.5, Math.Sqrt(1.0 / 12), 1.8);
    }

    [Fact]
    public void UniformsFillTheirRangeEvenly()
    {
        double[] drawn = Many(1, random => random.Uniform(), Draws);
        Assert.All(drawn, value => Assert.InRange(value, 0, Math.BitDecrement(1)));
        Moments(drawn, 0.5, Math.Sqrt(1.0 / 12), 1.8);
        Assert.InRange(Autocorrelation.Lag1(drawn), -Slack / Math.Sqrt(Draws), Slack / Math.Sqrt(Draws));
        for (int cell = 0; cell < 20; cell++)
        {
            double share = drawn.Count(value => (int)(value * 20) == cell) / (double)Draws;
            Agreement.Within(Slack * Math.Sqrt(0.05 * 0.95 / Draws), 0.05, share, cell);
        }
    }

    [Fact]
    public void NormalsHaveTheMomentsAndTailsOfTheNormal()
    {
        double[] drawn = Many(2, random => random.Normal(), Draws);
        Moments(drawn, 0, 1, 3);
        Assert.InRange(Autocorrelation.Lag1(drawn), -Slack / Math.Sqrt(Draws), Slack / Math.Sqrt(Draws));
        foreach ((double z, double tail) in new[] { (1.0, 0.158655253931457), (1.959963984540054, 0.025),
            (3.0, 0.001349898031630) })
        {
            double slack = Slack * Math.Sqrt(tail / Draws);
            Agreement.Within(slack, tail, drawn.Count(value => value > z) / (double)Draws, z);
            Agreement.Within(slack, tail, drawn.Count(value => value < -z) / (double)Draws, -z);
        }
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(2.5)]
    [InlineData(40)]
    public void GammasHaveTheMomentsAndQuantilesOfTheGamma(double shape)
    {
        double[] drawn = Many(3, random => random.Gamma(shape), Draws);
        // Mean and variance are the shape, excess kurtosis 6/shape.
        Moments(drawn, shape, Math.Sqrt(shape), 3 + (6 / shape));
        foreach (double share in (double[])[0.01, 0.25, 0.5, 0.9, 0.999])
        {
            double below = GammaDistribution.Quantile(shape, share);
            Agreement.Within(Slack * Math.Sqrt(share * (1 - share) / Draws), share,
                drawn.Count(value => value < below) / (double)Draws, shape, share);
        }
    }

    [Fact]
    public void AShapeThatIsNotPositiveIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new RandomSource(1).Gamma(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RandomSource(1).Gamma(double.NaN));
    }

    private static void Moments(double[] drawn, double mean, double deviation, double kurtosis)
    {
        Agreement.Within(Slack * deviation / Math.Sqrt(drawn.Length), mean, Sample.Mean(drawn), mean, deviation);
        Agreement.Relative(Slack * Math.Sqrt((kurtosis - 1) / drawn.Length) / 2, deviation, Sample.StandardDeviation(drawn),
            mean, deviation);
    }

    private static double[] Many(ulong seed, Func<RandomSource, double> draw, int count)
    {
        var random = new RandomSource(seed);
        var drawn = new double[count];
        for (int i = 0; i < count; i++)
        {
            drawn[i] = draw(random);
        }

        return drawn;
    }
}
