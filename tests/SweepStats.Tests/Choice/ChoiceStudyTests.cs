using SweepStats.StudyRuns;
using SweepStats.StudyRuns.Choice;
using Xunit;

namespace SweepStats.Tests.Choice;

/// <summary>
/// A seeded part of the study of choices; the whole is run by the studies program, see the pages under reports/.
/// </summary>
public sealed class ChoiceStudyTests
{
    private const double Promised = 0.95;

    [Theory]
    [InlineData(2, 0)]
    [InlineData(9, 0)]
    [InlineData(9, 1)]
    public void TheFirstGroupHoldsTheTrulyBestOne(int candidates, double spread)
    {
        ChoiceRow row = ChoiceStudy.Run(new ChoiceCell("", candidates, 3, spread), campaigns: 80, seed: 4_000);
        Assert.Equal(80, row.Held.Of);
        Holds(row.Held);
        // All of them would hold it too.
        Assert.True(spread == 0 || row.MedianSize <= 6, $"{row.MedianSize}");
        Assert.True(spread == 0 || row.Named.Share < 0.9, $"{row.Named}");
    }

    [Fact]
    public void ItDoesWhereTheBestOneIsCappedOverAPartOfTheBand()
    {
        ChoiceRow row =
            ChoiceStudy.Run(ChoiceCell.Cells.First(c => c.Name == "capped over the upper third"), campaigns: 50, seed: 4_000);
        Assert.InRange(row.ComparedShare, 0.4, 0.8);
        Holds(row.Held);
        Assert.True(row.MedianSize <= 7);
    }

    [Theory]
    [InlineData(9, 1)]
    [InlineData(9, 3)]
    [InlineData(4, 3)]
    public void ItDoesWhereTheBestOneScattersMore(int candidates, double times)
    {
        RepeatsRow[] rows = [.. BestCandidatesStudy.Run(new RepeatsCell(candidates, 3, 0, times), sets: 600, seed: 4_000)];
        Holds(rows.Single(r => r.Rule == ScatterRule.Larger).Held);
        Tally usual = rows.Single(r => r.Rule == ScatterRule.Usual).Held;
        // What the usual scatter alone would do, and why it is not taken.
        Assert.True(times == 1 ? usual.Share > 0.91 : usual.Share < 0.91, $"{usual}");
    }

    [Fact]
    public void AProbabilityOfBeingTheBestComesTrueAsOftenAsItSays()
    {
        var classes = ChoiceStudy.Calibrated(new ChoiceCell("", 5, 3, 3) { PlacementDb = 1.5 }, campaigns: 120, seed: 4_000);
        foreach ((double stated, Tally best) in classes.Where(c => c.Best.Of >= 20))
        {
            Assert.True(Math.Abs(best.Share - stated) <= 3 * Math.Sqrt(Math.Max(stated * (1 - stated), 0.01) / best.Of),
                $"{stated:P1}: {best}");
        }

        Assert.True(classes.Count(c => c.Best.Of >= 20) >= 4);
    }

    // Three binomial standard deviations.
    private static void Holds(Tally tally) =>
        Assert.True(tally.Share >= Promised - (3 * Math.Sqrt(Promised * (1 - Promised) / tally.Of)),
            $"{tally.Count} of {tally.Of}");
}
