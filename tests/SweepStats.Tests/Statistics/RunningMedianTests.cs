using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class RunningMedianTests
{
    [Fact]
    public void AWindowOfThreeDropsASpikeAndIsCutAtTheEnds()
    {
        // Windows: (1, 9) (1, 9, 2) (9, 2, 3) (2, 3, 4) (3, 4).
        Assert.Equal([5, 2, 3, 3, 3.5], RunningMedian.Of([1, 9, 2, 3, 4], 1));
    }

    [Fact]
    public void EveryWindowAgreesWithSortingIt()
    {
        var random = new RandomSource(5);
        // Rounded, so that equal values occur and have to be taken out one at a time.
        double[] values = [.. Enumerable.Range(0, 400).Select(_ => Math.Round(random.Normal() * 4) / 2)];
        foreach (int half in (int[])[0, 1, 7, 50, 399, 1000])
        {
            double[] medians = RunningMedian.Of(values, half);
            for (int i = 0; i < values.Length; i++)
            {
                int first = Math.Max(0, i - half);
                int last = Math.Min(values.Length - 1, i + half);
                Assert.Equal(Sample.Median(values.AsSpan(first, last - first + 1)), medians[i]);
            }
        }
    }

    [Fact]
    public void ARisingRowStaysRisingAndAStepStaysAStep()
    {
        Assert.Equal([0, 0, 0, 0, 5, 5, 5, 5], RunningMedian.Of([0, 0, 0, 0, 5, 5, 5, 5], 2));
        Assert.Empty(RunningMedian.Of([], 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => RunningMedian.Of([1], -1));
    }
}
