using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Sweeps;

public sealed class FrequencyGapsTests
{
    [Fact]
    public void EvenSweepsHaveNone()
    {
        Assert.Empty(Gaps([.. Enumerable.Range(0, 161).Select(i => 30e6 * Math.Pow(1e9 / 30e6, i / 160.0))]));
        // The first step of a linear sweep from 9 kHz is 70 times its start, and as wide as all others.
        Assert.Empty(Gaps([.. Enumerable.Range(0, 1601).Select(i => 9e3 + (i * 625e3))]));
        Assert.Empty(Gaps([0, .. Enumerable.Range(1, 100).Select(i => i * 1e6)]));
        Assert.Empty(Gaps([1e6]));
        Assert.Empty(Gaps([0, 1e6]));
    }

    [Fact]
    public void WhatIsCutOutOfASweepIsOne()
    {
        double[] whole = [.. Enumerable.Range(0, 161).Select(i => 30e6 * Math.Pow(1e9 / 30e6, i / 160.0))];
        FrequencyGap(whole.Where(f => f is < 99e6 or > 601e6), whole.Last(f => f < 99e6), whole.First(f => f > 601e6));
        double[] even = [.. Enumerable.Range(0, 971).Select(i => (30 + i) * 1e6)];
        FrequencyGap(even.Where(f => f is < 600e6 or > 650e6), 599e6, 651e6);
        // Half the steps missing here and there is how people thin a list.
        Assert.Empty(Gaps([.. even.Where((_, i) => i % 7 != 3)]));
    }

    [Fact]
    public void TwoFrequenciesFarApartSayNothingOfWhatLiesBetween() => FrequencyGap([30e6, 1e9], 30e6, 1e9);

    [Fact]
    public void UnitsDoNotMatter() =>
    Assert.Equal(Gaps([1, 2, 3, 50, 51, 52]).Length, Gaps([1e6, 2e6, 3e6, 50e6, 51e6, 52e6]).Length);

    private static double[][] Gaps(double[] hertz) =>
        [.. FrequencyGaps.Of(new FrequencyGrid([.. hertz])).Select(g => new[] { g.Start.Value, g.Stop.Value })];

    private static void FrequencyGap(IEnumerable<double> hertz, double from, double to) =>
        Assert.Equal([from, to], Assert.Single(Gaps([.. hertz])));
}
