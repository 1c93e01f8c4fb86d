using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Alignment;

public sealed class AlignerTests
{
    private static readonly double[] Ten = [.. Enumerable.Range(0, 10).Select(i => -40.0 - i)];

    [Fact]
    public void ACopiedSweepCountsOnce()
    {
        double[] fine = [.. Ten.Select((l, i) => l + (0.0137 * i))];
        AlignedCampaign aligned = Aligner.Align(Rehearsed.Campaign(
            Rehearsed.Sweeps(SweepRole.Reference, new double[10], [.. Ten.Select(l => l + 40)]),
            Rehearsed.Sweeps(SweepRole.Covered, fine, fine)), null);
        Assert.Equal(1, aligned.Covered[0].Block.SweepCount);
        DuplicateSweep twin = Assert.Single(aligned.Duplicates);
        Assert.Equal("Covered-1", twin.Kept.Name);
        Assert.Equal("Covered-2", twin.Copy.Name);
    }

    [Fact]
    public void ACopyThatStandsForSomethingElseIsReportedAndBothCount()
    {
        AlignedCampaign aligned = Aligner.Align(
            Rehearsed.Campaign(Rehearsed.Sweeps(SweepRole.Reference, Ten), Rehearsed.Sweeps(SweepRole.Covered, Ten)), null);
        Assert.False(Assert.Single(aligned.Duplicates).SameKind);
        Assert.Equal(1, aligned.Covered[0].Block.SweepCount);
    }

    [Fact]
    public void CoarseLevelsThatAgreeAreNoCopies()
    {
        double[] coarse = [.. Enumerable.Range(0, 100).Select(i => -40.0 - (i / 20))];
        AlignedCampaign aligned =
            Aligner.Align(Rehearsed.Campaign(Rehearsed.Sweeps(SweepRole.Reference, new double[100]),
                Rehearsed.Sweeps(SweepRole.Covered, coarse, coarse)), null);
        Assert.Empty(aligned.Duplicates);
        Assert.Equal(2, aligned.Covered[0].Block.SweepCount);
    }

    [Fact]
    public void FrequenciesACloseStepApartAreNotTakenForEachOther()
    {
        var shifted = new Sweep("shifted", SweepRole.Reference, new FrequencyGrid([1e9 + 50, 1e9 + 150]), [10, 20],
            LevelScale.DecibelMilliwatts);
        var fine = new Sweep("fine", SweepRole.Covered, new FrequencyGrid([1e9, 1e9 + 100]), [-1, -2],
            LevelScale.DecibelMilliwatts);
        Assert.Throws<AlignmentException>(() => Aligner.Align(Rehearsed.Campaign([shifted], [fine]), null));
    }

    [Fact]
    public void AFewRoundedPointsMayAgreeByChanceAndAreNoCopy()
    {
        AlignedCampaign aligned = Aligner.Align(Rehearsed.Campaign(
            Rehearsed.Sweeps(SweepRole.Reference, [-1, -2], [-1.1, -2]),
            Rehearsed.Sweeps(SweepRole.Covered, [-30, -31], [-30, -31])), null);
        Assert.Equal(2, aligned.Covered[0].Block.SweepCount);
        Assert.Empty(aligned.Duplicates);
    }

    [Fact]
    public void OnlySharedFrequenciesAreKeptAndTheRestIsReported()
    {
        Sweep longer = Rehearsed.Sweeps(SweepRole.Reference, [.. Enumerable.Range(0, 12).Select(i => (double)i)]).Single();
        AlignedCampaign aligned = Aligner.Align(Rehearsed.Campaign([longer], Rehearsed.Sweeps(SweepRole.Covered, Ten)), null);
        Assert.Equal(10, aligned.Grid.Count);
        GridDifference difference = Assert.Single(aligned.GridDifferences);
        Assert.Equal(longer, difference.Sweep);
        Assert.Equal(2, difference.PointsLeftOut);
    }

    [Fact]
    public void LevelsStayWithTheirFrequencies()
    {
        var odd = new Sweep("odd", SweepRole.Reference, new FrequencyGrid([0.5e6, 1e6, 1.5e6, 2e6]), [5, 10, 15, 20],
            LevelScale.DecibelMilliwatts);
        AlignedCampaign aligned =
            Aligner.Align(Rehearsed.Campaign([odd], Rehearsed.Sweeps(SweepRole.Covered, [-1, -2, -3])), null);
        Assert.Equal([1e6, 2e6], aligned.Grid.Hertz.ToArray());
        Assert.Equal([10, 20], aligned.Reference[0].ToArray());
        Assert.Equal([-1, -2], aligned.Covered[0].Block[0].ToArray());
    }

    [Fact]
    public void FrequenciesThatDifferByRoundingAreTheSame()
    {
        var rounded = new Sweep("rounded", SweepRole.Reference, new FrequencyGrid([1.0000001e6, 2e6]), [10, 20],
            LevelScale.DecibelMilliwatts);
        Assert.Equal(2,
            Aligner.Align(Rehearsed.Campaign([rounded], Rehearsed.Sweeps(SweepRole.Covered, [-1, -2])), null).Grid.Count);
    }

    [Fact]
    public void ABandKeepsWhatLiesInside()
    {
        var band = new FrequencyBand(new Hertz(3e6), new Hertz(5e6));
        AlignedCampaign aligned =
            Aligner.Align(Rehearsed.Campaign(Rehearsed.Sweeps(SweepRole.Reference, new double[10]),
                Rehearsed.Sweeps(SweepRole.Covered, Ten)), band);
        Assert.Equal([3e6, 4e6, 5e6], aligned.Grid.Hertz.ToArray());
        Assert.Empty(aligned.GridDifferences);
    }

    [Fact]
    public void SpecimensAreSortedByLotAndName()
    {
        IEnumerable<Sweep> covered = from name in new[] { ("B", "2"), ("A", "9"), ("B", "1") }
                                     select new Sweep($"{name}", SweepRole.Covered, Rehearsed.Grid(1), [-30],
                                         LevelScale.DecibelMilliwatts)
                                     { Lot = name.Item1, Specimen = name.Item2 };
        AlignedCampaign aligned = Aligner.Align(Rehearsed.Campaign(Rehearsed.Sweeps(SweepRole.Reference, [0]), covered), null);
        Assert.Equal([new("A", "9"), new("B", "1"), new SpecimenName("B", "2")], aligned.Covered.Select(c => c.Name));
    }

    [Fact]
    public void ExcludedSweepsStayInTheRecordAndOutOfTheNumbers()
    {
        var bad = new Sweep("bad", SweepRole.Covered, Rehearsed.Grid(1), [0],
            LevelScale.DecibelMilliwatts)
        { ExcludedBecause = "door was open" };
        AlignedCampaign aligned =
            Aligner.Align(Rehearsed.Campaign(Rehearsed.Sweeps(SweepRole.Reference, [0]),
                Rehearsed.Sweeps(SweepRole.Covered, [-30]), [bad]), null);
        Assert.Equal(1, aligned.Covered[0].Block.SweepCount);
        Assert.Equal(bad, Assert.Single(aligned.Excluded));
    }

    [Fact]
    public void WhatCannotBeComparedIsRefusedWithARemedy()
    {
        IEnumerable<Sweep> reference = Rehearsed.Sweeps(SweepRole.Reference, [0, 0]);
        IEnumerable<Sweep> covered = Rehearsed.Sweeps(SweepRole.Covered, [-30, -30]);
        var ratio = new Sweep("vna", SweepRole.Covered, Rehearsed.Grid(2), [-30, -30], LevelScale.DecibelRatio);
        var elsewhere = new Sweep("high", SweepRole.Covered, new FrequencyGrid([9e9]), [-30], LevelScale.DecibelMilliwatts);
        Assert.Contains("reference", Refused(covered), StringComparison.Ordinal);
        Assert.Contains("covered", Refused(reference), StringComparison.Ordinal);
        Assert.Contains("vna in dB", Refused(reference, [ratio]), StringComparison.Ordinal);
        Assert.Contains("same start, stop and number of points", Refused(reference, [elsewhere]), StringComparison.Ordinal);
    }

    private static string Refused(params IEnumerable<Sweep>[] sweeps) =>
        Assert.Throws<AlignmentException>(() => Aligner.Align(Rehearsed.Campaign(sweeps), null)).Message;
}
