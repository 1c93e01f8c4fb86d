using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class BestCandidatesTests
{
    // Student's t at 0.95 with 8 degrees of freedom: 1.8595 (tables, from memory); two candidates of equal error and 4 degrees
    // each.
    [Theory]
    [InlineData(1.859, true)]
    [InlineData(1.860, false)]
    public void OfTwoItIsStudentsOneSidedTest(double t, bool stays) =>
        Assert.Equal([stays, true],
            BestCandidates.Among([new(50, 1, 4, false), new(50 + (t * Math.Sqrt(2)), 1, 4, false)], 0.05));

    [Fact]
    public void OfTwoUnequalItIsWelchs()
    {
        CandidateMean[] two = [new(50, 0.5, 4, false), new(51.2, 0.4, 6, false)];
        double tail = StudentT.UpperTail(1.2 / Math.Sqrt(0.41), 0.41 * 0.41 / ((0.0625 / 4) + (0.0256 / 6)));
        Assert.Equal([true, true], BestCandidates.Among(two, tail * 0.999));
        Assert.Equal([false, true], BestCandidates.Among(two, tail * 1.001));
    }

    // One-sided critical values against k others (fixtures/published/many-to-one: probability, degrees of freedom, k = 1 to 9),
    // to half of the last digit printed.
    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(9)]
    public void AgainstSeveralItIsTheTableOfManyToOne(int others)
    {
        foreach (double[] row in Fixtures.Numbers("published/many-to-one/critical.csv"))
        {
            // The others lie far below but for one, which tops the first by the critical value.
            bool Stays(double t) => BestCandidates.Among(
                [new(50, 1, row[1] / 2, false), new(50 + (t * Math.Sqrt(2)), 1, row[1] / 2, false),
                    .. Enumerable.Repeat(new CandidateMean(49, 1, row[1] / 2, false), others - 1)], 1 - row[0])[0];
            Assert.True(Stays(row[others + 1] - 0.006), $"{row[0]}, {row[1]}, {others}");
            Assert.False(Stays(row[others + 1] + 0.006), $"{row[0]}, {row[1]}, {others}");
        }
    }

    [Fact]
    public void WhatIsKnownFromBelowStaysAndSpeaksAgainstTheOthers()
    {
        CandidateMean[] three = [new(50, 0.2, 6, false), new(30, 0.2, 6, true), new(53, 0.2, 6, true)];
        Assert.Equal([false, true, true], BestCandidates.Among(three, 0.05));
        Assert.Equal([false, false, true], BestCandidates.Among([three[0], three[1] with { Open = false }, three[2]], 0.05));
        Assert.Equal([true, true], BestCandidates.Among(three[..2], 0.05));
    }

    [Fact]
    public void ErrorsInCommonCancelWhereTheyAreEqualAndShiftsWiden()
    {
        CandidateMean[] two = [new(50, 0.3, 6, false), new(51.2, 0.3, 6, false)];
        Assert.Equal([false, true], BestCandidates.Among(two, 0.05));
        Assert.Equal([false, true], BestCandidates.Among([.. two.Select(c => c with { Shared = 5, Shift = 4 })], 0.05));
        Assert.Equal([true, true], BestCandidates.Among([two[0] with { Shared = 1 }, two[1]], 0.05));
        Assert.Equal([true, true], BestCandidates.Among([two[0] with { Shift = 0.6 }, two[1]], 0.05));
    }

    [Fact]
    public void ShiftScaleAndOrderChangeNothing()
    {
        CandidateMean[] many = [.. Enumerable.Range(0, 9)
            .Select(i => new CandidateMean(50 + (0.35 * i), 0.3 + (0.05 * (i % 3)), 4 + i, i == 2) { Shared = 0.1 * (i % 2),
                Shift = 0.05 * i })];
        bool[] stays = BestCandidates.Among(many, 0.05);
        Assert.Contains(true, stays.Where((_, i) => i != 2));
        Assert.Contains(false, stays);
        Assert.Equal(stays, BestCandidates.Among([.. many.Select(c => c with { Value = c.Value + 100 })], 0.05));
        Assert.Equal(stays,
            BestCandidates.Among(
                [.. many.Select(c => new CandidateMean(4 * c.Value, 4 * c.StandardError, c.DegreesOfFreedom,
                    c.Open) { Shared = 4 * c.Shared, Shift = 4 * c.Shift })], 0.05));
        Assert.Equal(stays.Reverse(), BestCandidates.Among([.. many.Reverse()], 0.05));
    }

    [Fact]
    public void TheHighestStaysAndAStricterLevelKeepsMore()
    {
        CandidateMean[] many = [.. Enumerable.Range(0, 12).Select(i => new CandidateMean(50 + (0.2 * i), 0.3, 22, false))];
        bool[] five = BestCandidates.Among(many, 0.05), one = BestCandidates.Among(many, 0.01);
        Assert.True(five[^1]);
        Assert.All(five.Zip(one), pair => Assert.True(!pair.First || pair.Second));
        Assert.True(one.Count(s => s) > five.Count(s => s));
    }

    [Fact]
    public void ALoneCandidateStaysAndNoLevelIsRefused()
    {
        Assert.Equal([true], BestCandidates.Among([new(50, 1, 4, false)], 0.05));
        Assert.Empty(BestCandidates.Among([], 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => BestCandidates.Among([new(50, 1, 4, false)], 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => BestCandidates.Among([new(50, 1, 4, false)], 1));
    }
}
