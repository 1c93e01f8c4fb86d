using SweepStats.Checks;
using SweepStats.Linearity;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class DuplicateSweepsTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with
    {
        LinearitySourcesDbm = [-10],
        LinearitySweeps = 3,
        PlateSweeps = 3,
        PlateDb = 100,
        Placements = 3,
        CoveredSweeps = 2,
    };

    [Fact]
    public void WhereEverythingIsCopiedThatIsSaidFirstWithItsNumber()
    {
        Taken drawn = Taken.With(Plan);
        AnalysisResult result = drawn.But(s => s.As(levels: drawn.Campaign.Sweeps
            .First(k => (k.Role, k.Specimen, k.Placement) == (s.Role, s.Specimen, s.Placement)).Levels)).Analysed();
        Finding told = result.Findings.First(f => f.Severity == Severity.Warning);
        Assert.Equal(("duplicate-sweep", true), (told.Code, told.Misleads));
        // Floor and reference 5 each, linearity and plate 3 each, covered 3 times 2: of each kind all but one, of each placement
        // too.
        Assert.StartsWith("15 of 22 sweeps hold exactly the levels of another (", told.Message, StringComparison.Ordinal);
        Assert.Contains("2 linearity, ", told.Message, StringComparison.Ordinal);
        Assert.Contains("the first floor/floor-02", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void CopiesOfLinearitySweepsAreNoRepeats()
    {
        Taken drawn = Taken.With(Plan);
        Sweep first = drawn.First(SweepRole.Linearity);
        AnalysisResult result = drawn.But(s => s.Role == SweepRole.Linearity ? s.As(levels: first.Levels) : s).Analysed();
        Assert.Equal(2, result.Findings.Count(f => f is { Code: "duplicate-sweep", Severity: Severity.Warning }));
        Assert.Equal(1, result.Linearity!.Steps[0].LowSweeps);
        Assert.Null(result.Linearity.Steps[0].Interval);
    }

    [Theory]
    [InlineData(SweepRole.Linearity)]
    [InlineData(SweepRole.Plate)]
    public void ASweepThatStandsForTwoThingsIsAFault(SweepRole role)
    {
        Taken drawn = Taken.With(Plan);
        Sweep reference = drawn.First(SweepRole.Reference), other = drawn.First(role);
        Finding told = drawn.But(s => s == other ? s.As(levels: reference.Levels) : s).Analysed().Findings[0];
        Assert.Equal(("duplicate-sweep", Severity.Fault), (told.Code, told.Severity));
        Assert.Contains($"{other.Name} holds exactly the levels of {reference.Name}", told.Message, StringComparison.Ordinal);
    }

    // The highest step of the source is the reference itself: whoever takes its files for both has mistaken nothing.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void AReferenceThatIsAStepOfTheSourceTooIsLeftAlone(bool stated)
    {
        Taken drawn = Taken.With(Plan with { LinearitySourcesDbm = [-10, 10] });
        Assert.Equal(10, ReferenceSource.Of(drawn.First(SweepRole.Reference), null));
        Sweep[] references = [.. drawn.Campaign.Sweeps.Where(s => s.Role == SweepRole.Reference)];
        Sweep[] steps = [.. drawn.Campaign.Sweeps.Where(s => s is { Role: SweepRole.Linearity, SourceDbm: 10 })];
        Taken twice = drawn.But(s => Array.IndexOf(steps, s) is >= 0 and var i ? s.As(levels: references[i].Levels)
            : s.Role == SweepRole.Reference && !stated ? Rehearsed.Copy(s, s.Levels) : s);
        Assert.DoesNotContain(
            (twice with { Stated = twice.Stated with { SourceDbm = 10 } }).Analysed().Findings, f => f.Code == "duplicate-sweep");
    }
}
