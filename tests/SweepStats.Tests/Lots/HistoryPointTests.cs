using System.Collections.Immutable;
using SweepStats.Lots;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Lots;

/// <summary>Two lots of two campaigns at single frequencies, against values made elsewhere.</summary>
public sealed class HistoryPointTests
{
    private static readonly Contribution[]?[] Exact = [[Contribution.None, Contribution.None, Contribution.None]];

    // By hand: variances of the means 1/3 (40, 41, 42) and 5/12 (38 to 41), of the references 0.01 (two sweeps) and 0.03 (three):
    // 0.79 together, ν = 0.79²/(1/18 + 25/432 + 0.0001 + 0.00045) = 5.4757; p by R's pt.
    [Fact]
    public void TheErrorHoldsBothLotsAndBothReferences()
    {
        HistoryPoint found = Assert.Single(HistoryPairComparer.Points(Hand(0), Hand(1), sameCampaign: false));
        Assert.Equal(1.5, found.DifferenceDb, 1e-12);
        Assert.Equal(Math.Sqrt(0.79), found.ErrorDb, 1e-12);
        Assert.Equal(5.475717744163, found.DegreesOfFreedom, 1e-9);
        Assert.Equal(0.147177153590, found.Probability!.Value, 1e-9);
        Assert.Equal(found.Probability, found.Adjusted);
        Interval interval = found.Interval(Confidence.NinetyFive)!.Value;
        Assert.Equal(1.5, (interval.Low + interval.High) / 2, 1e-12);
        Assert.True(interval.Contains(0));
    }

    [Fact]
    public void WithinACampaignTheReferenceDropsOut()
    {
        HistoryPoint found = Assert.Single(HistoryPairComparer.Points(Hand(0), Hand(1), sameCampaign: true));
        Assert.Equal(Math.Sqrt(0.75), found.ErrorDb, 1e-12);
    }

    // R, pt and p.adjust (fixtures/oracles/two-campaigns.R): 24 frequencies, a step of 3 dB over eight, references of two and
    // three sweeps.
    [Fact]
    public void EveryFrequencyAgreesWithR()
    {
        double[][] expected = Fixtures.Numbers("oracles/two-campaigns.csv");
        ImmutableArray<HistoryPoint> found =
            HistoryPairComparer.Points(FromR("first", (1, 12)), FromR("second", (2, 20)), sameCampaign: false);
        Assert.Equal(expected.Length, found.Length);
        foreach ((double[] row, HistoryPoint point) in expected.Zip(found))
        {
            Agreement.Within(1e-9, row[1], point.DifferenceDb, row);
            Agreement.Relative(1e-10, row[2], point.ErrorDb, row);
            Agreement.Relative(1e-10, row[3], point.DegreesOfFreedom, row);
            Agreement.Relative(1e-9, row[4], point.Probability!.Value, row);
            Agreement.Relative(1e-9, row[5], point.Adjusted!.Value, row);
        }
    }

    [Fact]
    public void ACappedSpecimenLeavesTheFrequencyOut()
    {
        LotOverFrequency capped = LotOverFrequency.Of([[40, 40], [41, 41], [60, 42]],
            [[false, false], [false, false], [true, false]], [Exact[0], Exact[0]]);
        LotOverFrequency other = LotOverFrequency.Of([[40, 40], [41, 41], [40.5, 42]],
            [[false, false], [false, false], [false, false]], [Exact[0], Exact[0]]);
        ImmutableArray<HistoryPoint> found = HistoryPairComparer.Points(capped, other, sameCampaign: false);
        Assert.True(found[0].Hidden);
        Assert.Equal((1, 0), (found[0].CappedFirst, found[0].CappedSecond));
        Assert.True(double.IsNaN(found[0].DifferenceDb));
        Assert.Null(found[0].Probability);
        Assert.Null(found[0].Adjusted);
        Assert.Null(found[0].Interval(Confidence.NinetyFive));
        // One frequency is left, and its p-value needs no allowance.
        Assert.False(found[1].Hidden);
        Assert.Equal(found[1].Probability, found[1].Adjusted);
    }

    [Fact]
    public void AReferenceSweptOnceTellsTheDifferenceButNotItsError()
    {
        LotOverFrequency once = LotOverFrequency.Of([[40], [41]], [[false], [false]], [null]);
        HistoryPoint found = Assert.Single(HistoryPairComparer.Points(once, Hand(1), sameCampaign: false));
        Assert.Equal(1, found.DifferenceDb, 1e-12);
        Assert.Null(found.Probability);
        Assert.NotNull(Assert.Single(HistoryPairComparer.Points(once, Hand(1), sameCampaign: true)).Probability);
    }

    [Fact]
    public void ThePriceOfEachQuestionThatIsAnsweredIsPaid()
    {
        Assert.Equal(0.04, HistoryPairComparer.Together(0.02, 0.5)!.Value, 1e-15);
        Assert.Equal(0.06, HistoryPairComparer.Together(0.3, 0.02, 0.5)!.Value, 1e-15);
        Assert.Equal(0.02, HistoryPairComparer.Together(null, 0.02, null)!.Value, 1e-15);
        Assert.Equal(1, HistoryPairComparer.Together(0.7, 0.9));
        Assert.Null(HistoryPairComparer.Together(null, null));
    }

    private static LotOverFrequency Hand(int campaign) => campaign == 0
        ? LotOverFrequency.Of([[40], [41], [42]], [[false], [false], [false]],
            [[new(0.1, 1), Contribution.None, Contribution.None]])
        : LotOverFrequency.Of([[38], [39], [40], [41]], [[false], [false], [false], [false]],
            [[new(Math.Sqrt(0.03), 2), Contribution.None, Contribution.None]]);

    private static LotOverFrequency FromR(string part, (double Reference, double Floor) freedom)
    {
        double[][] values = [.. Fixtures.Cells("oracles/two-campaigns-values.csv").Where(r => r[0] == part).GroupBy(r => r[1])
            .Select(u => u.Select(r => Number(r[3])).ToArray())];
        Contribution[]?[] shared = [.. Fixtures.Cells("oracles/two-campaigns-shared.csv").Where(r => r[0] == part).Select(r =>
            (Contribution[])[new(Number(r[2]), freedom.Reference), new(Number(r[3]), freedom.Floor),
                new(Number(r[4]), double.PositiveInfinity)])];
        return LotOverFrequency.Of(values, [.. values.Select(v => new bool[v.Length])], shared);
    }

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
