using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class LagrangeTests
{
    [Fact]
    public void APolynomialOfDegreeFiveIsMetExactly()
    {
        static double Polynomial(double x) => 3 + (x * (-2 + (x * (0.5 + (x * (1 + (x * (-0.25 + (x * 0.125)))))))));
        double[] values = [.. Enumerable.Range(0, 6).Select(i => Polynomial(i))];
        foreach (double place in (double[])[0, 0.7, 2, 2.5, 2.99, 5])
        {
            Agreement.Within(1e-12, Polynomial(place), Lagrange.SixPoint(values, place), place);
        }
    }

    [Fact]
    public void SixNeighboursAreNeeded()
    {
        Assert.Throws<ArgumentException>(() => Lagrange.SixPoint([1, 2, 3], 1));
    }
}
