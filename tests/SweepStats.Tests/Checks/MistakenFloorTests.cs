using System.Collections.Immutable;
using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

/// <summary>A floor that is none of the covered sweeps': the next step asks for it, and none asks for more range.</summary>
public sealed class MistakenFloorTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with
    {
        Lots = 2,
        SpecimensPerLot = 3,
        CoveredSweeps = 5,
        PlateSweeps = 3,
        PlateDb = 75,
    };

    private static readonly AnalysisPlan Asking = new()
    {
        Averaging = Averaging.Power,
        Requirement = SweepStats.Bands.Requirement.Constant(new SweepStats.Quantities.Decibels(60)),
    };

    [Fact]
    public void FloorAndCoveredExchangedAsAWholeAreAskedAboutFirst()
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            Taken drawn = Taken.With(Plan with { Seed = seed }, Asking);
            ImmutableArray<double>[] floors = Levels(drawn, SweepRole.Floor), covered = Levels(drawn, SweepRole.Covered);
            int floor = 0, place = 0;
            Sweep Exchanged(Sweep s) => s.Role == SweepRole.Floor ? s.As(levels: covered[floor++])
                : s.Role == SweepRole.Covered ? s.As(levels: Other(floors[place % floors.Length], 0.7, ++place)) : s;
            AnalysisResult result = drawn.But(Exchanged).Analysed();
            Assert.Equal(("settings-changed", Severity.Fault), (result.Findings[0].Code, result.Findings[0].Severity));
            Assert.StartsWith("Look whether floor and covered sweeps were exchanged", result.Findings[0].NextStep,
                StringComparison.Ordinal);
            AssertNothingOfRange(result);
        }
    }

    [Fact]
    public void AFloorTakenWithTheSourceOnIsAskedAboutFirst()
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            Taken drawn = Taken.With(Plan with { Seed = seed, PlateSweeps = 0 }, Asking);
            ImmutableArray<double>[] references = Levels(drawn, SweepRole.Reference);
            int place = 0;
            AnalysisResult result = drawn.But(s => s.Role == SweepRole.Floor
                ? s.As(levels: Other(references[place], 0.3, ++place)) : s).Analysed();
            Assert.StartsWith("Look whether the source was on while the floor was taken: it reads like the reference.",
                result.Findings[0].NextStep, StringComparison.Ordinal);
            AssertNothingOfRange(result);
        }
    }

    // A cloth that shields nothing leaves only the reference to tell.
    [Fact]
    public void WhereReferenceAndFloorReadAlikeTheSourceIsAskedForBeforeRange()
    {
        Taken drawn = Taken.With(Plan with { PlateSweeps = 0, ShieldingStartDb = 1, ShieldingStopDb = 1 });
        ImmutableArray<double>[] references = Levels(drawn, SweepRole.Reference);
        int place = 0;
        AnalysisResult result = drawn.But(s => s.Role == SweepRole.Floor
            ? s.As(levels: Other(references[place], 0.3, ++place)) : s).Analysed();
        Assert.All(result.Findings.Where(f => f.Code == "under-ranged"), f => Assert.StartsWith(
            "Look first whether the source was off for the floor and on for the reference", f.NextStep,
            StringComparison.Ordinal));
        Assert.Contains(result.Findings, f => f.Code == "under-ranged");
    }

    // No copy: as far from it as another sweep.
    private static ImmutableArray<double> Other(ImmutableArray<double> levels, double scatterDb, int place) =>
        [.. levels.Select((l, f) => l + (scatterDb * Math.Sin(place * (f + 1))))];

    // What was not looked at is not said to be clear.
    private static void AssertNothingOfRange(AnalysisResult result)
    {
        Assert.DoesNotContain(result.Findings, f => f.Code is "under-ranged" or "capped");
        Assert.All(result.Checks.Where(c => c.Code is "under-ranged" or "capped"),
            c => Assert.StartsWith("levels are wrong first (", c.UntestedBecause, StringComparison.Ordinal));
    }

    private static ImmutableArray<double>[] Levels(Taken taken, SweepRole role) =>
        [.. taken.Campaign.Sweeps.Where(s => s.Role == role).Select(s => s.Levels)];
}
