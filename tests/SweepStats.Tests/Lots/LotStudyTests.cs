using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.StudyRuns;
using SweepStats.StudyRuns.Lots;
using Xunit;

namespace SweepStats.Tests.Lots;

/// <summary>A seeded part of the study of lots; the whole is run by the studies program, see the pages under reports/.</summary>
public sealed class LotStudyTests
{
    private const double Promised = 0.05;

    [Theory]
    [InlineData(Capping.None)]
    [InlineData(Capping.Quarter)]
    [InlineData(Capping.Specimens)]
    public void LotsThatAreAlikeAreSeldomTakenForDifferent(Capping capping)
    {
        LotSizeRow row = LotSizeStudy.Run(new LotCell([2, 3, 4]) { Capping = capping }, campaigns: Draws.Of(80), seed: 4_000);
        Assert.Equal(Draws.Of(80), row.Band.Of);
        AtMostPromised(row.Band);
        AtMostPromised(row.Adjusted);
        // Frequencies of a campaign go together: as many independent ones as campaigns.
        AtMostPromised(
            row.Frequencies with { Count = row.Frequencies.Count / LotCell.Points, Of = row.Frequencies.Of / LotCell.Points });
        Assert.InRange(row.Capped.Share, capping == Capping.None ? 0 : 0.15, capping == Capping.None ? 0 : 0.6);
    }

    // Were the lots taken to scatter alike, two specimens of three times the scatter of six others would be found different in 25
    // %.
    [Fact]
    public void LotsOfUnequalScatterAreSeldomTakenForDifferent()
    {
        LotSizeRow row = LotSizeStudy.Run(new LotCell([2, 6]) { Spreads = [3, 1] }, campaigns: Draws.Of(150), seed: 4_000);
        AtMostPromised(row.Band);
        AtMostPromised(row.Curves);
        AtMostPromised(
            row.Frequencies with { Count = row.Frequencies.Count / LotCell.Points, Of = row.Frequencies.Of / LotCell.Points });
        Assert.InRange(row.Equal.Share, 0.15, 0.4);
    }

    [Theory]
    [InlineData(Capping.None, 0.9)]
    [InlineData(Capping.Half, 0.8)]
    public void ALotThatIsOffIsFoundAndNamed(Capping capping, double atLeast)
    {
        LotPowerRow row = LotPowerStudy.Run(capping, OffWhere.Everywhere, deviations: 4, new(40, 4_000));
        Assert.True(row.Band.Share >= atLeast, $"{row.Band}");
        Assert.True(row.Right.Share >= 0.9, $"{row.Right}");
    }

    [Fact]
    public void LotsTheMarginApartAreSeldomSaidToBeTheSame()
    {
        (LotCell cell, double apart) =
            SameWithinMarginStudy.Cells.First(c => c.Cell.Specimens[0] == 6 && c.ApartDb == SameWithinMarginStudy.MarginDb);
        AtMostPromised(SameWithinMarginStudy.Run(cell, apart, new(Draws.Of(60), 4_000)).Same);
        // The test must be able to say it.
        Assert.True(SameWithinMarginStudy.Run(cell, 0, new(Draws.Of(20), 4_000)).Same.Share > 0.8);
    }

    [Fact]
    public void LotsOfTwoCampaignsThatAreAlikeAreSeldomTakenForDifferent()
    {
        HistoryRow row = LotHistoryStudy.Run(new HistoryCell(1, 5, 0.1, 3, 1), campaigns: Draws.Of(150), seed: 4_000);
        AtMostPromised(row.Between);
        Assert.True(row.Ignored.Share > 0.15, $"{row.Ignored}, {row.Between}");
    }

    // Two reference sweeps that differ by 1 dB, as a whole or as a ripple: at some frequency they meet by chance.
    [Theory]
    [InlineData(1, 0)]
    [InlineData(0.3, 1)]
    public void NoStretchIsClaimedOutOfOneErrorOfTheReference(double offset, double ripple)
    {
        HistoryRow row =
            LotHistoryStudy.Run(new HistoryCell(1, 4, 0.3, 2, 0.2)
            {
                Reference = new ReferenceScatter(offset, ripple),
                Points = 51,
            }, campaigns: Draws.Of(120), seed: 4_000);
        AtMostPromised(row.Any);
        AtMostPromised(row.Somewhere);
        Assert.True(row.Ignored.Share > 0.15, $"{row.Ignored}");
    }

    [Fact]
    public void ALotOfAnotherCampaignThatIsOffInAPartOfTheBandIsFoundThere()
    {
        var worse = new LotStep("A", new Decibels(-4), new FrequencyBand(new Hertz(300e6), new Hertz(600e6)));
        var cell = new HistoryCell(1, 4, 0.5, 2, 0.1) { Steps = [worse], Points = 51 };
        LotHistory[] found = [.. Enumerable.Range(0, 30).Select(i => LotHistoryStudy.Compare(cell, 4_000 + (ulong)i))];
        Assert.True(found.Count(f => f.Differ(f.Pairs[0])) >= 27);
        HistoryStretch[] strongest = [.. found.Where(f => !f.Stretches.IsEmpty).Select(f => f.Stretches[0])];
        Assert.True(strongest.Length >= 24, $"{strongest.Length}");
        // Within three of the 51 points, each 7 % from the next.
        bool Near(HistoryStretch s) => s.Band.Start.Value is > 240e6 and < 370e6 && s.Band.Stop.Value is > 480e6 and < 750e6;
        Assert.True(strongest.Count(Near) >= 0.8 * strongest.Length, string.Join(", ", strongest.Select(s => s.Band)));
    }

    [Theory]
    [InlineData(3, 0)]
    [InlineData(10, 0)]
    [InlineData(5, 3)]
    public void NinetyFivePercentOfTheSpecimensKeepTheLimitOfTheirLot(int specimens, int placements)
    {
        ToleranceRow row = ToleranceStudy.Run(new ToleranceCell(specimens) { Placements = placements, PlacementDb = 1 },
            campaigns: Draws.Of(150), seed: 4_000);
        Assert.Equal(Draws.Of(150), row.Stated.Count);
        AtMostPromised(row.Broken);
        // A limit that is never broken would promise too little; a quarter of the campaigns is too few to tell.
        Assert.True(!Draws.Full || placements > 0 || row.Broken.Count > 0);
    }

    [Fact]
    public void TheyKeepTheLimitOfAFrequencyWhereSpecimensAreCapped()
    {
        ToleranceRow row =
            ToleranceStudy.Run(new ToleranceCell(10) { ByFrequency = true, ShieldingDb = 71 }, campaigns: 15, seed: 4_000);
        Assert.InRange(row.Capped.Share, 0.2, 0.6);
        Assert.True(row.Stated.Share > 0.9, $"{row.Stated}");
        AtMostPromised(row.Broken);
    }

    // Of the full number no more than three binomial standard deviations.
    private static void AtMostPromised(Tally tally) =>
        Often.AtMost(tally.Count, tally.Of, Promised,
            whenFull: (int)((Promised * tally.Of) + (3 * Math.Sqrt(Promised * (1 - Promised) * tally.Of))));
}
