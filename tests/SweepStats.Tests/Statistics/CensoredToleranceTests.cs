using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class CensoredToleranceTests
{
    private static readonly double[] Values = [61.2, 63.5, 60.1, 64.0, 62.8, 66.0, 65.5, 63.1];
    private static readonly bool[] Bounds = [false, false, false, false, false, true, true, false];

    // R, survreg of survival on draws of its own (fixtures/oracles/capped.R): between its factors at 94 and 96 % confidence.
    [Fact]
    public void FactorsAgreeWithDrawsOfR()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/capped.csv"))
        {
            Assert.InRange(CensoredTolerance.Factor((int)row[0], (int)row[1], row[2], row[3]), row[4], row[6]);
        }
    }

    // To the digits of the machine's own logarithm: drawing is the same elsewhere, its last digit need not be.
    [Theory]
    [InlineData(3, 1)]
    [InlineData(10, 3)]
    [InlineData(17, 15)]
    [InlineData(58, 1)]
    [InlineData(58, 56)]
    public void TheTableHoldsWhatIsDrawn(int count, int capped) => Agreement.Relative(
        1e-9, CensoredTolerance.Drawn(count, capped, CensoredToleranceTable.Share, CensoredToleranceTable.Confidence),
        CensoredToleranceTable.Factor(count, capped), count, capped);

    [Fact]
    public void TheTableHoldsEveryPairUpToItsMost()
    {
        // A factor one place off would break the order: more capped of as many specimens are never known better, but for the
        // looseness of a draw.
        for (int count = CensoredToleranceTable.Fewest; count <= CensoredToleranceTable.Most; count++)
        {
            double[] factors =
                [.. Enumerable.Range(0, count - 1).Select(capped => CensoredTolerance.Factor(count, capped, 0.95, 0.95))];
            Assert.All(Enumerable.Range(1, count - 2),
                capped => Assert.True(factors[capped] > 0.98 * factors[capped - 1], $"{count}, {capped}"));
        }

        // Nor do more specimens, as many of them seen, need a larger one.
        for (int seen = 2; seen < CensoredToleranceTable.Most; seen++)
        {
            double[] factors = [.. Enumerable.Range(seen + 1, CensoredToleranceTable.Most - seen)
                .Select(count => CensoredToleranceTable.Factor(count, count - seen))];
            Assert.All(factors.Skip(1).Zip(factors),
                pair => Assert.True(pair.First < 1.025 * pair.Second, $"{seen} seen: {pair}"));
        }

        Assert.False(CensoredToleranceTable.Holds(59, 1, 0.95, 0.95));
        Assert.False(CensoredToleranceTable.Holds(10, 3, 0.9, 0.95));
        Assert.False(CensoredToleranceTable.Holds(10, 3, 0.95, 0.9));
    }

    [Fact]
    public void WithoutBoundsItIsTheExactFactor()
    {
        // ISO 16269-6, n = 10, 95/95: 2.911 (from memory), for a scatter divided by n − 1.
        Assert.Equal(2.911 * Math.Sqrt(10.0 / 9), CensoredTolerance.Factor(10, 0, 0.95, 0.95), 0.0006);
        double exact = Sample.Mean(Values) - (ToleranceLimit.NormalFactor(8, 0.95, 0.95) * Sample.StandardDeviation(Values));
        Assert.Equal(exact, CensoredTolerance.LowerLimit(Values, new bool[8], 0.95, 0.95)!.Value, 1e-9);
    }

    [Fact]
    public void TheQuickFitIsTheFitOfTheGroups()
    {
        var random = new RandomSource(3);
        for (int run = 0; run < 300; run++)
        {
            int count = 3 + (run % 15), seen = 2 + (run % (count - 2));
            double[] sample = [.. Enumerable.Range(0, count).Select(_ => random.Normal()).Order()];
            (double mean, double deviation) = CappedNormalFit.Of(sample.AsSpan(0, seen), sample[seen - 1], count - seen);
            Array.Fill(sample, sample[seen - 1], seen, count - seen);
            CensoredGroups fit =
                CensoredGroups.Of(sample, [.. Enumerable.Range(0, count).Select(i => i >= seen)], new int[count])!;
            Agreement.Within(1e-9 * fit.Deviation, fit.Means[0], mean, count, seen);
            Agreement.Relative(1e-9, fit.Deviation, deviation, count, seen);
        }
    }

    [Fact]
    public void EachBoundMoreMakesTheFactorLarger()
    {
        double[] factors = [.. Enumerable.Range(0, 9).Select(capped => CensoredTolerance.Factor(10, capped, 0.95, 0.95))];
        Assert.Equal(factors.Order(), factors);
        Assert.True(factors[8] > 15 && factors[8] < ToleranceLimit.NormalFactor(2, 0.95, 0.95) * Math.Sqrt(2));
        Assert.True(CensoredTolerance.Factor(10, 3, 0.99, 0.95) > factors[3]);
        Assert.True(CensoredTolerance.Factor(10, 3, 0.95, 0.99) > factors[3]);
    }

    [Fact]
    public void ManyThreadsMakeTheSameFactor()
    {
        double[] factors = new double[8];
        Parallel.For(0, factors.Length, i => factors[i] = CensoredTolerance.Factor(7, 2, 0.9, 0.95));
        Assert.All(factors, factor => Assert.Equal(factors[0], factor));
    }

    // The bound cuts off 30 or 60 % of normal specimens, or says nothing of half of them (−3). Held more often than 95 % by
    // design; never less beyond chance.
    [Theory]
    [InlineData(10, 1, 0.5244)]
    [InlineData(20, 1, -0.2533)]
    [InlineData(20, 0.5, -3)]
    [InlineData(10, 0.3, -1.5)]
    public void TheLimitHoldsAsOftenAsPromised(int count, double share, double bound)
    {
        const int samples = 2000;
        double quantile = StudentT.Quantile(0.05, double.PositiveInfinity);
        var random = new RandomSource(8);
        int held = 0;
        for (int sample = 0; sample < samples; sample++)
        {
            double[] truth = [.. Enumerable.Range(0, count).Select(_ => random.Normal())];
            bool[] bounds = [.. truth.Select(x => random.Uniform() < share && x > bound)];
            double[] values = [.. truth.Select((x, i) => bounds[i] ? bound : x)];
            held += CensoredTolerance.LowerLimit(values, bounds, 0.95, 0.95) is { } limit && limit > quantile ? 0 : 1;
        }

        Assert.True(held >= samples * (0.95 - (3 * Math.Sqrt(0.95 * 0.05 / samples))), $"{held} of {samples}");
        Assert.True(held < samples);
    }

    [Fact]
    public void ShiftScaleAndOrderDoAsTheyShould()
    {
        double limit = CensoredTolerance.LowerLimit(Values, Bounds, 0.95, 0.95)!.Value;
        Assert.Equal((2 * limit) + 100,
            CensoredTolerance.LowerLimit([.. Values.Select(v => (2 * v) + 100)], Bounds, 0.95, 0.95)!.Value, 1e-8);
        Assert.Equal(limit, CensoredTolerance.LowerLimit([.. Values.Reverse()], [.. Bounds.Reverse()], 0.95, 0.95)!.Value, 1e-9);
        Assert.True(limit < Values.Min());
    }

    [Fact]
    public void ABoundBelowEveryValueIsAsIfTheSpecimenWereNotThere()
    {
        double without = CensoredTolerance.LowerLimit(Values, Bounds, 0.95, 0.95)!.Value;
        Assert.Equal(without,
            CensoredTolerance.LowerLimit([.. Values, 30, 60.1], [.. Bounds, true, true], 0.95, 0.95)!.Value, 1e-9);
    }

    [Fact]
    public void WhereNothingTellsTheScatterThereIsNoLimit()
    {
        Assert.Null(CensoredTolerance.LowerLimit([60, 61, 62], [false, true, true], 0.95, 0.95));
        Assert.Null(CensoredTolerance.LowerLimit([60, 61], [true, true], 0.95, 0.95));
        Assert.Null(CensoredTolerance.LowerLimit([60, 60, 62], [false, false, true], 0.95, 0.95));
        Assert.NotNull(CensoredTolerance.LowerLimit([60, 61, 62], [false, false, true], 0.95, 0.95));
    }

    [Fact]
    public void WithoutADistributionABoundStandsForItsValue()
    {
        double[] many = [.. Enumerable.Range(0, 93).Select(i => 60 + ((i * 37 % 93) / 10.0))];
        Assert.Equal(60.1, CensoredTolerance.LowerLimitWithoutDistribution(many, 0.95, 0.95)!.Value, 1e-12);
        Assert.Equal(many[..59].Min(), CensoredTolerance.LowerLimitWithoutDistribution(many.AsSpan(0, 59), 0.95, 0.95));
        Assert.Null(CensoredTolerance.LowerLimitWithoutDistribution(many.AsSpan(0, 58), 0.95, 0.95));
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CensoredTolerance.Factor(10, 9, 0.95, 0.95));
        Assert.Throws<ArgumentOutOfRangeException>(() => CensoredTolerance.Factor(10, -1, 0.95, 0.95));
        Assert.Throws<ArgumentOutOfRangeException>(() => CensoredTolerance.Factor(10, 2, 1, 0.95));
        Assert.Throws<ArgumentException>(() => CensoredTolerance.LowerLimit([1, 2], [true], 0.95, 0.95));
        Assert.Throws<ArgumentException>(() => CensoredTolerance.LowerLimit([1, double.NaN], [false, false], 0.95, 0.95));
        Assert.Throws<ArgumentOutOfRangeException>(() => CensoredTolerance.LowerLimit([1, 2], [false, false], 0, 0.95));
    }
}
