using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class PlacementOffTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with
    {
        Placements = 3,
        CoveredSweeps = 3,
        SpecimensPerLot = 3,
        SweepDeviationDb = 0.1,
        PlacementDeviationDb = 0.2,
    };

    [Theory]
    [InlineData(10, "above")]
    [InlineData(-10, "below")]
    [InlineData(4, "above")]
    public void APlacementThatLiesOffIsNamed(double offDb, string side)
    {
        AnalysisResult result = Analysed(Plan, s => s.Shifted(offDb));
        Finding told = Assert.Single(result.Findings, f => f.Code == "stray-placement");
        Assert.Equal((Severity.Warning, new SpecimenName("A", "A02")), (told.Severity, told.Specimen));
        Assert.StartsWith("Placement p2 of A/A02 reads ", told.Message, StringComparison.Ordinal);
        Assert.Contains($" dB {side} the other 2", told.Message, StringComparison.Ordinal);
        Assert.InRange(told.Size!.Value.Value, Math.Abs(offDb) - 1, Math.Abs(offDb) + 1);
        Assert.Equal(told, result.Findings[0]);
        Assert.NotEqual(Trust.Trustworthy, result.Verdict.Trust);
        // What is claimed of the specimen without it: a third of the distance less or more.
        Assert.InRange(Math.Max(told.Bias!.Value.HigherByDb, told.Bias.Value.LowerByDb), (Math.Abs(offDb) - 1) / 3,
            (Math.Abs(offDb) + 1) / 3);
        Assert.Equal(offDb < 0, told.Bias.Value.LowerByDb > 0);
    }

    [Fact]
    public void ALostSignIsAFaultThatComesBeforeWhatFollows()
    {
        AnalysisResult result = Analysed(Plan, s => s.As(levels: [.. s.Levels.Select(l => -l)]));
        Assert.Equal(("stray-placement", Severity.Fault), (result.Findings[0].Code, result.Findings[0].Severity));
        Assert.Contains("less their sign", result.Findings[0].Message, StringComparison.Ordinal);
        Assert.StartsWith("Give the levels of placement p2 their minus sign again", result.Findings[0].NextStep,
            StringComparison.Ordinal);
    }

    [Fact]
    public void APlacementSweptWithoutItsSpecimenReadsLikeTheReference()
    {
        AnalysisResult result = Analysed(Plan, s => s.Shifted(40));
        Assert.Equal(("stray-placement", Severity.Fault), (result.Findings[0].Code, result.Findings[0].Severity));
        Assert.Contains("like the reference", result.Findings[0].Message, StringComparison.Ordinal);
        Assert.StartsWith("Look whether the specimen was in place at placement p2", result.Findings[0].NextStep,
            StringComparison.Ordinal);
    }

    // Its interval reaches below the floor; no range mends that.
    [Fact]
    public void NothingIsSaidOfTheRangeOfASpecimenWithAPlacementWithoutIt()
    {
        AnalysisPlan asking = new()
        {
            Averaging = Averaging.Power,
            Requirement = SweepStats.Bands.Requirement.Constant(new SweepStats.Quantities.Decibels(60)),
        };
        Taken drawn = Taken.With(Plan, asking);
        AnalysisResult result = drawn
            .But(s => s is { Specimen: "A02", Placement: "p2" } ? s.Shifted(40) : s).Analysed();
        Assert.Equal(("stray-placement", Severity.Fault), (result.Findings[0].Code, result.Findings[0].Severity));
        Assert.DoesNotContain(result.Findings, f => f.Code is "under-ranged" or "capped");
        CheckRun run = result.Checks.Single(c => c.Code == "under-ranged");
        Assert.Equal((null, "levels of A/A02 are wrong first (stray-placement)"), (run.UntestedBecause, run.LeftBecause));
    }

    // A cover that is capped at the floor in two placements: what was read there, and not a bound, is what the third is held
    // against.
    [Fact]
    public void APlacementThatStandsOutOfTheFloorIsNamed()
    {
        RehearsalPlan deep = Plan with { ShieldingStartDb = 90, ShieldingStopDb = 90 };
        Assert.DoesNotContain(Rehearsed.Analysed(deep).Findings, f => f.Code == "stray-placement");
        Finding told = Assert.Single(Analysed(deep, s => s.Shifted(30)).Findings, f => f.Code == "stray-placement");
        Assert.InRange(told.Size!.Value.Value, 29, 31);
    }

    [Fact]
    public void OfTwoPlacementsNeitherIsSingledOut()
    {
        Finding told =
            Assert.Single(Analysed(Plan with { Placements = 2 }, s => s.Shifted(10)).Findings, f => f.Code == "stray-placement");
        Assert.Contains("p2 above, p1 below. Neither can be singled out", told.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("the other", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void OneOddSweepIsNotItsPlacement()
    {
        Campaign drawn = Rehearser.Draw(Plan).Campaign;
        Sweep odd = drawn.Sweeps.First(s => s is { Specimen: "A02", Placement: "p2" });
        Campaign changed = drawn with { Sweeps = [.. drawn.Sweeps.Select(s => s == odd ? s.Shifted(15) : s)] };
        Assert.DoesNotContain(Analysis.Run(changed, new AnalysisPlan()).Findings, f => f.Code == "stray-placement");
    }

    [Theory]
    [InlineData(0.2, 3, 3)]
    [InlineData(0.5, 4, 5)]
    [InlineData(1, 3, 8)]
    [InlineData(1, 5, 1)]
    [InlineData(1, 2, 4)]
    public void CleanPlacementsAreLeftAlone(double spreadDb, int placements, int specimens)
    {
        RehearsalPlan plan =
            Plan with { PlacementDeviationDb = spreadDb, Placements = placements, SpecimensPerLot = specimens, Points = 21 };
        int alarms = Draws.Seeds(60)
            .Count(seed => Rehearsed.Analysed(plan with { Seed = seed }).Findings.Any(f => f.Code == "stray-placement"));
        Often.AtMost(alarms, Draws.Of(60), 0.005, whenFull: 1);
    }

    [Fact]
    public void WithoutNamesOfPlacementsItIsSaidThatNothingWasLookedAt() =>
        Assert.NotNull(Rehearsed.Analysed(Rehearsed.Plan).Checks.Single(c => c.Code == "stray-placement").UntestedBecause);

    private static AnalysisResult Analysed(RehearsalPlan plan, Func<Sweep, Sweep> change) => Taken.With(plan)
        .But(s => s is { Role: SweepRole.Covered, Specimen: "A02", Placement: "p2" } ? change(s) : s).Analysed();
}
