using SweepStats.Checks;
using SweepStats.Repeats;
using SweepStats.StudyRuns.Lasting;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class SweepsAlikeTests
{
    private static readonly LastingCell Cell = new(LastingKind.EachFrequency, 10, 0.5) { Points = 80 };

    [Fact]
    public void ItSaysWhatSweepsAreWorthAndHowMuchWiderIntervalsAre()
    {
        AnalysisResult result = Analysed(Cell, 1);
        Finding found = Assert.Single(result.Findings, f => f.Code == "sweeps-alike");
        Assert.Equal(Severity.Warning, found.Severity);
        RepeatWorth reference = result.SerialCorrelation.Worth(RepeatKind.Reference, 10)!;
        Assert.Contains(
            FormattableString.Invariant($"10 reference sweeps are worth {reference.Independent:0.0} independent ones"),
            found.Message, StringComparison.Ordinal);
        Assert.Contains("10 covered sweeps are worth", found.Message, StringComparison.Ordinal);
        Assert.Contains("20 sweeps in 2 groups", found.Basis, StringComparison.Ordinal);
        Assert.Contains("at most 0.0002", found.Basis, StringComparison.Ordinal);
        Assert.Null(result.Checks.Single(c => c.Code == "sweeps-alike").UntestedBecause);
    }

    [Fact]
    public void WhereLittleLastsItIsANote()
    {
        Finding[] found = [.. Enumerable.Range(1, 10)
            .Select(seed => Analysed(Cell with { Sweeps = 20, Strength = 0.12 }, (ulong)seed)).SelectMany(r => r.Findings)
            .Where(f => f.Code == "sweeps-alike")];
        // By chance a group may show more than lasts: most are notes.
        Assert.InRange(found.Count(f => f.Severity == Severity.Note), 7, found.Length);
    }

    [Fact]
    public void WithTwoSweepsItCouldNotBeTested() =>
        Assert.NotNull(Analysed(Cell with { Sweeps = 2 }, 1).Checks.Single(c => c.Code == "sweeps-alike").UntestedBecause);

    [Fact]
    public void IndependentSweepsAreNotToldOf() =>
        Assert.InRange(Draws.Seeds(60)
            .Count(seed => Analysed(Cell with { Sweeps = 5, Strength = 0 }, seed).Findings.Any(f =>
            f.Code == "sweeps-alike")), 0, 1);

    private static AnalysisResult Analysed(LastingCell cell, ulong seed) =>
        Analysis.Run(LastingStudy.Draw(cell, seed), new AnalysisPlan { Averaging = Averaging.Power });
}
