using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class KendallTailTests
{
    [Fact]
    public void ThreeValuesGiveWhatCountingGives()
    {
        // Six orders of three: S = 3, 1, 1, −1, −1, −3.
        Assert.Equal(1.0 / 6, KendallTail.Upper(3, 3), 1e-15);
        Assert.Equal(3.0 / 6, KendallTail.Upper(3, 1), 1e-15);
        Assert.Equal(5.0 / 6, KendallTail.Upper(3, -1), 1e-15);
        Assert.Equal(1, KendallTail.Upper(3, -3));
        Assert.Equal(0, KendallTail.Upper(3, 4));
        Assert.Equal(1, KendallTail.Upper(3, -99));
        Assert.Equal(1.0 / 6, KendallTail.Upper(3, 2), 1e-15);
    }

    [Fact]
    public void TheTableOfThreeToTenValuesComesOut()
    {
        foreach (double[] row in Fixtures.Numbers("published/kendall-tail/upper.csv"))
        {
            Agreement.Within(5.1e-7, row[2], KendallTail.Upper((int)row[0], (long)row[1]), row);
        }
    }

    [Fact]
    public void TailsUpToFiftyValuesAgreeWithR()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/trend-tail.csv"))
        {
            Agreement.Relative(1e-12, row[2], KendallTail.Upper((int)row[0], (long)row[1]), row);
        }
    }

    [Fact]
    public void EveryOrderOfSixValuesIsCounted()
    {
        var counts = new Dictionary<int, int>();
        Permute([1, 2, 3, 4, 5, 6], 0, order =>
        {
            int s = 0;
            for (int j = 1; j < order.Length; j++)
            {
                for (int i = 0; i < j; i++)
                {
                    s += Math.Sign(order[j] - order[i]);
                }
            }

            counts[s] = counts.GetValueOrDefault(s) + 1;
        });
        for (int s = -15; s <= 15; s++)
        {
            Assert.Equal(counts.Where(pair => pair.Key >= s).Sum(pair => pair.Value) / 720.0, KendallTail.Upper(6, s), 1e-14);
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(9)]
    [InlineData(50)]
    public void RisesAndFallsAreAlikeAndTheChancesAddUp(int count)
    {
        int pairs = count * (count - 1) / 2;
        for (int s = -pairs; s <= pairs; s += 2)
        {
            Assert.Equal(1, KendallTail.Upper(count, s) + KendallTail.Upper(count, 2 - s), 1e-13);
        }

        double all = Math.Exp(-Enumerable.Range(1, count).Sum(i => Math.Log(i)));
        Agreement.Relative(1e-12, all, KendallTail.Upper(count, pairs));
    }

    [Fact]
    public void TheCriticalValueIsTheFirstThatIsRareEnough()
    {
        // From the table: 10 values, P(S ≥ 23) = 0.0233, P(S ≥ 21) = 0.0363; 4 values, P(S ≥ 6) = 1/24.
        Assert.Equal(23, KendallTail.Critical(10, 0.025));
        Assert.Equal(21, KendallTail.Critical(10, 0.04));
        Assert.Null(KendallTail.Critical(4, 0.025));
        Assert.Equal(6, KendallTail.Critical(4, 1.0 / 24));
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => KendallTail.Upper(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => KendallTail.Upper(KendallTail.MostValues + 1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => KendallTail.Critical(5, 0));
    }

    private static void Permute(int[] order, int from, Action<int[]> see)
    {
        if (from == order.Length)
        {
            see(order);
            return;
        }

        for (int i = from; i < order.Length; i++)
        {
            (order[from], order[i]) = (order[i], order[from]);
            Permute(order, from + 1, see);
            (order[from], order[i]) = (order[i], order[from]);
        }
    }
}
