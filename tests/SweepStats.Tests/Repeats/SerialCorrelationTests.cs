using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.StudyRuns.Lasting;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Repeats;

public sealed class SerialCorrelationTests
{
    private static readonly LastingCell Lasting = new(LastingKind.EachFrequency, 8, 0.6) { Points = 60 };

    [Theory]
    [InlineData(LastingKind.EachFrequency)]
    [InlineData(LastingKind.FineRipple)]
    [InlineData(LastingKind.WholeAndEachFrequency)]
    public void SweepsThatLastAreFoundAndWorthAsMuchAsTheyWereDrawnWith(LastingKind kind)
    {
        SerialCorrelation[] found = [.. Enumerable.Range(1, 20)
            .Select(seed => Of(LastingStudy.Draw(Lasting with { Kind = kind }, (ulong)seed)))];
        Assert.InRange(found.Count(f => f.Found.Any()), 18, 20);
        RepeatWorth[] worth = [.. found.Select(f => f.Worth(RepeatKind.Reference, 8)).OfType<RepeatWorth>()];
        SerialCovariance truth = new SerialModel(0.6, 1).Of(8);
        Assert.InRange(worth.Average(w => w.Independent), 0.75 * truth.Worth, 1.25 * truth.Worth);
        Assert.InRange(worth.Average(w => w.DegreesOfFreedom), 0.85 * truth.DegreesOfFreedom(), 1.15 * truth.DegreesOfFreedom());
        Assert.All(worth, w => Assert.True(w.Factor > 1 && w.Widening > 1 && w.FigureFactor >= w.Factor && w.Independent < 8
            && w.Count == 8));
    }

    [Fact]
    public void IndependentSweepsAreLeftAlone()
    {
        int found = Draws.Seeds(150).Count(seed => Of(LastingStudy.Draw(Lasting with { Strength = 0 }, seed)).Found.Any());
        Often.AtMost(found, Draws.Of(150), 0.003, whenFull: 2);
    }

    [Fact]
    public void WhereNothingIsFoundRepeatsHaveNoWorthOfTheirOwn()
    {
        SerialCorrelation found = Of(LastingStudy.Draw(Lasting with { Strength = 0 }, 1));
        Assert.Empty(found.Found);
        Assert.Single(found.Levels);
        Assert.Null(found.Worth(RepeatKind.Reference, 8));
        Assert.Null(SerialCorrelation.Untested.Worth(RepeatKind.Covered, 5));
    }

    [Fact]
    public void ListedInAnyOrderTheTimesTellTheOrder()
    {
        Campaign taken = LastingStudy.Draw(Lasting, 3);
        Campaign timed = taken with { Sweeps = [.. taken.Sweeps.Select((s, i) => At(s, i))] };
        Campaign mixed = timed with { Sweeps = [.. timed.Sweeps.OrderBy(s => s.Levels[5])] };
        Assert.Equal(Of(taken).Levels[0].Ratio, Of(mixed).Levels[0].Ratio, 1e-9);
        // Without times the list is all there is to go by, and that order says nothing.
        Assert.NotEqual(Of(taken).Levels[0].Ratio,
            Of(taken with { Sweeps = [.. taken.Sweeps.OrderBy(s => s.Levels[5])] }).Levels[0].Ratio, 1e-3);
    }

    [Fact]
    public void BackwardsItIsTheSame()
    {
        Campaign taken = LastingStudy.Draw(Lasting, 4);
        SerialLevel forth = Of(taken).Levels[0], back = Of(taken with { Sweeps = [.. taken.Sweeps.Reverse()] }).Levels[0];
        Assert.Equal(forth.Ratio, back.Ratio, 1e-9);
        Assert.Equal(forth.WholeRatio, back.WholeRatio, 1e-9);
    }

    [Fact]
    public void ATwiceAsLoudBenchOrAnotherLevelChangesNothing()
    {
        Campaign taken = LastingStudy.Draw(Lasting, 5);
        Campaign louder = Rehearsed.Changed(taken, (s, f, level) => s.Role == SweepRole.Floor ? level : level + 3 + (0.1 * f));
        Assert.Equal(Of(taken).Worth(RepeatKind.Covered, 8)!.Factor, Of(louder).Worth(RepeatKind.Covered, 8)!.Factor, 1e-6);
    }

    [Fact]
    public void TwoSweepsSayNothing() => Assert.Empty(Of(LastingStudy.Draw(Lasting with { Sweeps = 2 }, 6)).Levels);

    [Fact]
    public void TooFewFrequenciesSayNothing() => Assert.Empty(Of(LastingStudy.Draw(Lasting with { Points = 7 }, 6)).Levels);

    [Fact]
    public void AnOddLastSweepIsNoSlowChange()
    {
        Campaign taken = LastingStudy.Draw(Lasting with { Strength = 0 }, 8);
        Sweep last = taken.Sweeps.Last(s => s.Role == SweepRole.Reference);
        Campaign odd = Rehearsed.Changed(taken, (s, _, level) => s.Name == last.Name ? level + 4 : level);
        AlignedCampaign aligned = Aligner.Align(odd, null);
        NoiseFloor floor = NoiseFloorEstimator.Estimate(aligned.Floor!, Averaging.Power);
        ImmutableArray<OddRepeat> found = OddRepeats.Among(RepeatGroups.Of(aligned, floor));
        Assert.Contains(found, o => o.Sweep.Sweep.Name == last.Name);
        Assert.Equal(15, SerialCorrelation.Of(aligned, floor, found).Levels[0].RepeatCount);
    }

    [Fact]
    public void PlacementsThatLastAreFoundApartFromTheirSweeps()
    {
        // One row of lasting scatter a placement; sweeps of a placement add little of their own.
        var random = new RandomSource(9);
        SerialCorrelation found = Of(Placed(8, 0.8, random));
        Assert.Equal([true], found.Found.Select(l => l.OfPlacements));
        Assert.NotNull(found.Worth(RepeatKind.Placement, 8));
        Assert.Null(found.Worth(RepeatKind.Reference, 6));
        Assert.Empty(Of(Placed(8, 0, random)).Found);
    }

    [Fact]
    public void ASpecimenThatStaysAndOneThatIsPlacedGoByTheirOwnKind()
    {
        SerialCorrelation found = Of(LastingStudy.Draw(Lasting, 10));
        Assert.NotNull(found.Worth(RepeatKind.Covered, 5));
        Assert.NotNull(found.Worth(RepeatKind.WithinPlacement, 5));
        Assert.Null(found.Worth(RepeatKind.Placement, 5));
        Assert.Null(found.Worth(RepeatKind.Covered, 1));
    }

    private static SerialCorrelation Of(Campaign campaign)
    {
        AlignedCampaign aligned = Aligner.Align(campaign, null);
        NoiseFloor floor = NoiseFloorEstimator.Estimate(aligned.Floor!, Averaging.Power);
        return SerialCorrelation.Of(aligned, floor, OddRepeats.Among(RepeatGroups.Of(aligned, floor)));
    }

    private static Sweep At(Sweep sweep, int number) => new(sweep.Name, sweep.Role, sweep.Grid, sweep.Levels, sweep.Scale)
    {
        Lot = sweep.Lot,
        Specimen = sweep.Specimen,
        TakenAt = new DateTimeOffset(2026, 3, 5, 8, 0, 0, TimeSpan.Zero).AddMinutes(number),
    };

    private static Campaign Placed(int placements, double correlation, RandomSource random)
    {
        double[][] lasting = SuccessionRows(placements, 60, correlation, random);
        IEnumerable<Sweep> covered = Enumerable.Range(0, placements).SelectMany(p => Enumerable.Range(0, 2).Select(s => new Sweep(
            $"covered-{p}-{s}", SweepRole.Covered, Rehearsed.Grid(60),
                [.. lasting[p].Select(x => -50 + x + (0.1 * random.Normal()))], LevelScale.DecibelMilliwatts)
        { Lot = "A", Specimen = "A01", Placement = $"p{p}" }));
        double[][] Own(int count, double level, double deviation) =>
            [.. SuccessionRows(count, 60, 0, random).Select(row => row.Select(x => level + (deviation * x)).ToArray())];
        return Rehearsed.Campaign(Rehearsed.Sweeps(SweepRole.Floor, Own(3, -100, 0.5)),
            Rehearsed.Sweeps(SweepRole.Reference, Own(6, -20, 0.2)), covered);
    }

    private static double[][] SuccessionRows(int count, int columns, double correlation, RandomSource random)
    {
        var rows = new double[count][];
        for (int j = 0; j < count; j++)
        {
            rows[j] = [.. Enumerable.Range(0, columns)
                .Select(f => j == 0 ? random.Normal() : (correlation * rows[j - 1][f])
                + (Math.Sqrt(1 - (correlation * correlation)) * random.Normal()))];
        }

        return rows;
    }
}
