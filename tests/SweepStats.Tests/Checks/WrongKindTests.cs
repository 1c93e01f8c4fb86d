using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class WrongKindTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with
    {
        SpecimensPerLot = 2,
        Placements = 2,
        CoveredSweeps = 4,
        ReferenceSweeps = 5,
        SpecimenDeviationDb = 6,
        PlateDb = 90,
        PlateSweeps = 3,
        ReferenceRippleDb = 3,
    };

    [Fact]
    public void TwoFilesExchangedAreNamedTogether()
    {
        Taken drawn = Taken.With(Plan);
        Sweep reference = drawn.First(SweepRole.Reference), covered = drawn.First(SweepRole.Covered),
            floor = drawn.First(SweepRole.Floor);
        foreach ((Sweep one, Sweep other) in new[] { (reference, covered), (floor, reference), (floor, covered) })
        {
            AnalysisResult result =
                drawn.But(s => s == one ? s.As(levels: other.Levels) : s == other ? s.As(levels: one.Levels) : s).Analysed();
            Finding told = result.Findings[0];
            Assert.Equal(("wrong-kind", Severity.Fault), (told.Code, told.Severity));
            Assert.Contains(one.Name, told.Message, StringComparison.Ordinal);
            Assert.Contains(other.Name, told.Message, StringComparison.Ordinal);
            Assert.EndsWith("the two files look exchanged.", told.Message, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(4)]
    public void ReferencesWithTheSpecimenOnAreNamedWereTheyTheMost(int wrong)
    {
        Taken drawn = Taken.With(Plan);
        Sweep[] references = [.. drawn.Campaign.Sweeps.Where(s => s.Role == SweepRole.Reference).TakeLast(wrong)];
        Sweep[] covered = [.. drawn.Campaign.Sweeps.Where(s => s is { Specimen: "A02", Role: SweepRole.Covered })];
        AnalysisResult result =
            drawn.But(s => Array.IndexOf(references, s) is >= 0 and var i ? s.As(levels: Like(covered[i], i)) : s).Analysed();
        Finding told = result.Findings[0];
        Assert.Equal(("wrong-kind", Severity.Fault), (told.Code, told.Severity));
        Assert.Contains(references[0].Name, told.Message, StringComparison.Ordinal);
        Assert.Contains(wrong == 1 ? "reads like a covered sweep of A/A02" : "read like covered sweeps of A/A02", told.Message,
            StringComparison.Ordinal);
        Assert.Contains("whether the specimen was left on", told.NextStep, StringComparison.Ordinal);
    }

    // All of them: only less source power with nothing in the way shows it.
    [Fact]
    public void AReferenceBelowLinearitySweepsOfLessPowerIsNoOverload()
    {
        Taken drawn = Taken.With(Plan with { LinearitySourcesDbm = [-10] });
        Sweep[] covered = [.. drawn.Campaign.Sweeps.Where(s => s is { Specimen: "A01", Role: SweepRole.Covered })];
        int next = 0;
        AnalysisResult result = drawn.But(
            s => s.Role == SweepRole.Reference ? s.As(levels: Like(covered[next % covered.Length], next++)) : s).Analysed();
        Assert.Equal(("wrong-kind", Severity.Fault), (result.Findings[0].Code, result.Findings[0].Severity));
        Assert.Contains("like covered sweeps of A/A01", result.Findings[0].Message, StringComparison.Ordinal);
        Assert.DoesNotContain(result.Findings, f => f.Code == "saturation-step");
    }

    [Fact]
    public void APlateWithTheSpecimenOnIsAskedAboutBeforeTheEdges()
    {
        Taken drawn = Taken.With(Plan);
        Sweep[] covered = [.. drawn.Campaign.Sweeps.Where(s => s is { Specimen: "A01", Role: SweepRole.Covered })];
        int next = 0;
        AnalysisResult result =
            drawn.But(s => s.Role == SweepRole.Plate ? s.As(levels: Like(covered[next], next++)) : s).Analysed();
        Assert.Equal("wrong-kind", result.Findings[0].Code);
        Assert.StartsWith("The plate reads like covered sweeps of A/A01", result.Findings[0].Message, StringComparison.Ordinal);
        Assert.Contains(result.Findings, f => f.Code == "leakage");
    }

    // Behind a specimen that reads 25 dB lower the plate cannot leak what it shows.
    [Fact]
    public void APlateThatASpecimenReadsFarBelowIsAFault()
    {
        Taken drawn = Taken.With(Plan with { SpecimenDeviationDb = 0 });
        Taken apart = drawn.But(s => s.Specimen == "A02" ? s.Shifted(-25) : s);
        Sweep[] covered = [.. drawn.Campaign.Sweeps.Where(s => s is { Specimen: "A01", Role: SweepRole.Covered })];
        int next = 0;
        AnalysisResult result =
            apart.But(s => s.Role == SweepRole.Plate ? s.As(levels: Like(covered[next], next++)) : s).Analysed();
        Assert.Equal(("wrong-kind", Severity.Fault), (result.Findings[0].Code, result.Findings[0].Severity));
        Assert.Contains("A/A02 reads far lower", result.Findings[0].Message, StringComparison.Ordinal);
        Assert.Equal(Trust.Untrustworthy, result.Verdict.Trust);
    }

    // What shields nothing reads like the reference, and what shields all like the floor: that is no mistake.
    [Theory]
    [InlineData(0, 0.2)]
    [InlineData(3, 1)]
    [InlineData(40, 1)]
    [InlineData(100, 0.5)]
    public void CleanSweepsAreLeftAlone(double shieldingDb, double placedDb)
    {
        RehearsalPlan plan = Plan with
        {
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
            PlacementDeviationDb = placedDb,
            Points = 21,
            PlateDb = 110,
        };
        int alarms = Draws.Seeds(60)
            .Count(seed => Rehearsed.Analysed(plan with { Seed = seed }).Findings.Any(f => f.Code == "wrong-kind"));
        Assert.Equal(0, alarms);
    }

    // A source that falls off by as much as a poor specimen shields is a drift, and nobody left a specimen on.
    [Fact]
    public void ASourceThatDriftsIsNotTakenForASpecimen() => Assert.DoesNotContain(
        Rehearsed.Analysed(Plan with
        {
            ShieldingStartDb = 4,
            ShieldingStopDb = 4,
            SpecimenDeviationDb = 0,
            DriftDb = -4,
        }).Findings, f => f.Code == "wrong-kind");

    // The same path swept once more.
    private static System.Collections.Immutable.ImmutableArray<double> Like(Sweep sweep, int draw)
    {
        var random = new RandomSource((ulong)(77 + draw));
        return [.. sweep.Levels.Select(l => l + (0.15 * random.Normal()))];
    }
}
