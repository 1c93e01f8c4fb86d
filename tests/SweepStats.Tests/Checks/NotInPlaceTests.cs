using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class NotInPlaceTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with
    {
        Points = 41,
        SpecimensPerLot = 3,
        Lots = 2,
        Placements = 2,
        CoveredSweeps = 2,
        SpecimenDeviationDb = 1,
        PlacementDeviationDb = 0.3,
        ReferenceRippleDb = 3,
    };

    // fixtures/oracles/wrong-campaigns.R.
    [Fact]
    public void ASpecimenThatRSweptWithoutItIsAskedAboutFirst()
    {
        AnalysisResult result = Analysis.Run(DrawnByR.Campaign("not-in-place"), Asking(30));
        Finding told = result.Findings[0];
        Assert.Equal(("not-in-place", Severity.Fault, new SpecimenName("A", "s2"), true),
            (told.Code, told.Severity, told.Specimen, told.Misleads));
        Assert.StartsWith("A/s2 reads like the reference, as if swept without it: 2 others of its lot shield 3", told.Message,
            StringComparison.Ordinal);
        Assert.StartsWith("Look whether A/s2 was in place; put it in place and sweep it again.", told.NextStep,
            StringComparison.Ordinal);
        Assert.Equal((Trust.Untrustworthy, false), (result.Verdict.Trust, result.MayPrefer));
        Assert.Equal(
            [RequirementOutcome.Meets, RequirementOutcome.CannotTell, RequirementOutcome.Meets],
            result.Verdict.Specimens.Select(s => s.Outcome));
    }

    [Fact]
    public void WhatIsStatedToShieldNothingIsNotAskedAbout()
    {
        AnalysisResult result = Analysis.Run(DrawnByR.Campaign("not-in-place"),
            Asking(30) with { ShieldNothing = [new SpecimenName("A", "s2")] });
        Assert.DoesNotContain(result.Findings, f => f.Code == "not-in-place");
        Assert.Equal(RequirementOutcome.Fails, result.Verdict.Specimens[1].Outcome);
    }

    // A set-up that moved by a dB or so, and a receiver that scatters, make no cloth of nothing.
    [Theory]
    [InlineData(0, 0.2)]
    [InlineData(1.4, 0.3)]
    [InlineData(-1.4, 0.3)]
    [InlineData(0.5, 1.5)]
    [InlineData(2.5, 0.3)]
    public void ItIsFoundBesideWhatMovesALevel(double movedDb, double scatterDb)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            RehearsalPlan plan = Plan with { Seed = seed, ScatterDb = scatterDb };
            AnalysisResult result = Without(plan, movedDb, s => s is { Lot: "A", Specimen: "A02" });
            Finding told = Assert.Single(result.Findings, f => f.Code == "not-in-place");
            Assert.Equal((Severity.Fault, new SpecimenName("A", "A02")), (told.Severity, told.Specimen));
        }
    }

    // Lots may truly differ, specimens of one lot hardly do; who is alone is held against all.
    [Theory]
    [InlineData(2, 3, 40, "A", "A01", Severity.Fault)]
    [InlineData(2, 3, 14, "A", "A01", Severity.Warning)]
    [InlineData(2, 3, 6, "A", "A01", Severity.Note)]
    [InlineData(2, 3, 40, "A", null, Severity.Warning)]
    [InlineData(2, 3, 14, "A", null, Severity.Note)]
    [InlineData(3, 1, 40, "B", null, Severity.Warning)]
    [InlineData(3, 1, 14, "B", null, Severity.Note)]
    [InlineData(1, 1, 40, "A", null, Severity.Note)]
    public void HowMuchItWeighsIsDecidedByTheOthers(int lots, int specimens, double othersDb, string lot, string? specimen,
        Severity severity)
    {
        RehearsalPlan plan = Plan with
        {
            Lots = lots,
            SpecimensPerLot = specimens,
            ShieldingStartDb = othersDb,
            ShieldingStopDb = othersDb,
            SpecimenDeviationDb = 0.3,
        };
        AnalysisResult result = Without(plan, 0, s => s.Lot == lot && (specimen is null || s.Specimen == specimen));
        Finding told = Assert.Single(result.Findings, f => f.Code == "not-in-place");
        Assert.Equal((severity, severity != Severity.Note), (told.Severity, told.Misleads));
        Assert.Contains(lot + "/", told.NextStep, StringComparison.Ordinal);
    }

    // One piece of the lot that is torn does not vouch for one that is missing.
    [Fact]
    public void APoorSisterDoesNotHideIt()
    {
        Taken drawn = Taken.With(Plan).But(s => s is { Lot: "A", Specimen: "A03" } ? s.Shifted(36) : s);
        AnalysisResult result = Without(drawn, 0, s => s is { Lot: "A", Specimen: "A02" });
        Assert.Equal(Severity.Warning, Assert.Single(result.Findings, f => f.Code == "not-in-place").Severity);
    }

    [Fact]
    public void WhereNothingShieldsTheReferenceIsAskedAboutToo()
    {
        AnalysisResult result = Rehearsed
            .Analysed(Plan with { ShieldingStartDb = 0, ShieldingStopDb = 0, SpecimenDeviationDb = 0.2 });
        Finding told = Assert.Single(result.Findings, f => f.Code == "not-in-place");
        Assert.Equal((result.Findings[0], Severity.Warning, null, false),
            (told, told.Severity, told.Specimen, result.MayPrefer));
        Assert.StartsWith("All 6 specimens read like the reference, as if the bench was never closed: each shows 0.",
            told.Message, StringComparison.Ordinal);
        Assert.StartsWith("Look whether the bench was closed, each specimen in place, and nothing in place for the reference;",
            told.NextStep, StringComparison.Ordinal);
        Assert.NotEqual(Trust.Trustworthy, result.Verdict.Trust);
    }

    // What fails there may have failed for the bench, and not for the cloth.
    [Theory]
    [InlineData(1, 3, 0, 0.5)]
    [InlineData(1, 2, 0, 0.1)]
    [InlineData(3, 1, 0.5, 0.1)]
    public void WhereNothingShieldsNothingFails(int lots, int specimens, double shieldingDb, double deviationDb)
    {
        RehearsalPlan plan = Plan with
        {
            Points = 21,
            Lots = lots,
            SpecimensPerLot = specimens,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
            SpecimenDeviationDb = deviationDb,
        };
        foreach (ulong seed in Draws.Seeds(20))
        {
            AnalysisResult result = Rehearsed.Analysed(plan with { Seed = seed }, Asking(30));
            Assert.True(IsAccused(result));
            Assert.All(result.Verdict.Specimens, s => Assert.Equal(RequirementOutcome.CannotTell, s.Outcome));
        }
    }

    // Useless cloths, too: whoever was there says so of one of them, and the bench is out of question.
    [Fact]
    public void OneThatIsStatedToShieldNothingSettlesItForTheBench()
    {
        Taken nothing = Taken.With(Plan with { ShieldingStartDb = 0, ShieldingStopDb = 0, SpecimenDeviationDb = 0.2 });
        AnalysisResult result = Analysis.Run(nothing.Campaign, nothing.Stated with { ShieldNothing = [new("A", "A01")] });
        Assert.Equal(Severity.Note, Assert.Single(result.Findings, f => f.Code == "not-in-place").Severity);
    }

    // At the very limit of what an untouched set-up moves by, it is alike. The floor is so low that nothing is taken off for it.
    [Theory]
    [InlineData(2, true)]
    [InlineData(2.5, false)]
    public void TwoDecibelsAboveTheReferenceIsStillAlike(double aboveDb, bool isAccused)
    {
        double[] Flat(double level, int sweep) => [.. Enumerable.Range(0, 21).Select(f => level + ((sweep + f) % 3 * 0.25))];
        Campaign campaign = Rehearsed.Campaign(
            Rehearsed.Sweeps(SweepRole.Floor, Flat(-400, 0), Flat(-400, 1), Flat(-400, 2)),
            Rehearsed.Sweeps(SweepRole.Reference, Flat(-30, 0), Flat(-30, 1), Flat(-30, 2)),
            Covered("A01"), Covered("A02"));
        Assert.Equal(isAccused, IsAccused(Analysis.Run(campaign, new AnalysisPlan { Averaging = Averaging.Power })));

        IEnumerable<Sweep> Covered(string specimen) => Rehearsed
            .Sweeps(SweepRole.Covered, Flat(aboveDb - 30, 0), Flat(aboveDb - 30, 1), Flat(aboveDb - 30, 2))
            .Select(s => new Sweep(specimen + s.Name, s.Role, s.Grid, s.Levels, s.Scale) { Lot = "A", Specimen = specimen });
    }

    // A set-up that moved makes more of a lot than the reference had; that is another finding's.
    [Fact]
    public void WhatLiesFarAboveTheReferenceIsNoOpenBench() => Assert.False(IsAccused(
        Taken.With(Plan with { ShieldingStartDb = 0, ShieldingStopDb = 0, SpecimenDeviationDb = 0.2 })
            .But(s => s.Role == SweepRole.Covered ? s.Shifted(5) : s).Analysed()));

    // Poor cloth as it may be, uneven as it may be, and lots of different cloths: no more than a word.
    [Theory]
    [InlineData(1, 1, 0, 0, 0.5)]
    [InlineData(1, 3, 3, 3, 0.2)]
    [InlineData(2, 3, 2, 3, 1)]
    [InlineData(3, 2, 3, 0, 1.5)]
    [InlineData(2, 3, 0, 30, 2)]
    [InlineData(4, 3, 12, 12, 3)]
    public void CleanCampaignsAreNotAccused(int lots, int specimens, double startDb, double stopDb, double deviationDb)
    {
        RehearsalPlan plan = Plan with
        {
            Points = 21,
            Lots = lots,
            SpecimensPerLot = specimens,
            ShieldingStartDb = startDb,
            ShieldingStopDb = stopDb,
            SpecimenDeviationDb = deviationDb,
        };
        Assert.Equal(0, Draws.Seeds(60).Count(seed => IsAccused(Rehearsed.Analysed(plan with { Seed = seed }))));
    }

    // Without a floor every reading is a bound: the specimen shields at least so much, and nobody says that it shields nothing.
    [Theory]
    [InlineData(5)]
    [InlineData(15)]
    public void ABoundIsNoSignOfAMissingSpecimen(double poorDb) => Assert.Equal(0, Draws.Seeds(60).Count(seed =>
    {
        Taken drawn = Taken.With(Plan with { Points = 21, Seed = seed, PlacementDeviationDb = 1.5 })
            .But(s => s is { Role: SweepRole.Covered, Lot: "A", Specimen: "A02" } ? s.Shifted(40 - poorDb) : s);
        Campaign without = drawn.Campaign with
        {
            Sweeps = [.. drawn.Campaign.Sweeps.Where(s => s.Role != SweepRole.Floor)],
        };
        return IsAccused(Analysis.Run(without, drawn.Stated));
    }));

    // A whole lot that was forgotten: one question, and named as one that shields nothing it is none.
    [Fact]
    public void ALotThatReadsLikeTheReferenceIsAskedAboutAsAWhole()
    {
        AnalysisResult result = Without(Plan, 0, s => s.Lot == "B");
        Finding told = Assert.Single(result.Findings, f => f.Code == "not-in-place");
        Assert.Equal((result.Findings[0], Severity.Warning, null, false),
            (told, told.Severity, told.Specimen, result.MayPrefer));
        Assert.StartsWith("All 3 specimens of lot B read like the reference, as if swept without them: 3 others shield ",
            told.Message, StringComparison.Ordinal);
        Assert.StartsWith("Look whether the specimens of lot B were in place; put them in place and sweep them again.",
            told.NextStep, StringComparison.Ordinal);
        Taken nothing = Taken.With(Plan).But(s => s is { Role: SweepRole.Covered, Lot: "B" } ? s.Shifted(40) : s);
        Assert.DoesNotContain(Analysis.Run(nothing.Campaign, nothing.Stated with
        {
            ShieldNothing = [new("B", "B01"), new("B", "B02"), new("B", "B03")],
        }).Findings, f => f.Code == "not-in-place");
    }

    // Whatever the lot that was forgotten would shield, the other has failed in full sight.
    [Fact]
    public void ALotThatWasForgottenOverturnsOnlyItsOwnOutcomes()
    {
        AnalysisResult result = Without(Taken.With(Plan, Asking(60)), 0, s => s.Lot == "B");
        Assert.All(result.Verdict.Specimens, s => Assert.Equal(
            s.Name.Lot == "B" ? RequirementOutcome.CannotTell : RequirementOutcome.Fails, s.Outcome));
    }

    // A cloth of one lot that shields little beside lots that shield well.
    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(10)]
    public void ALotThatTrulyDiffersIsNotAccused(double poorDb) => Assert.Equal(0, Draws.Seeds(60).Count(seed => IsAccused(
        Taken.With(Plan with { Points = 21, Seed = seed })
            .But(s => s is { Role: SweepRole.Covered, Lot: "B" } ? s.Shifted(40 - poorDb) : s).Analysed())));

    private static bool IsAccused(AnalysisResult result) => result.Findings
        .Any(f => f.Code == "not-in-place" && f.Severity != Severity.Note);

    private static AnalysisResult Without(RehearsalPlan plan, double movedDb, Func<Sweep, bool> missing) =>
        Without(Taken.With(plan), movedDb, missing);

    // Swept like the reference, once more.
    private static AnalysisResult Without(Taken drawn, double movedDb, Func<Sweep, bool> missing)
    {
        Sweep[] references = [.. drawn.Campaign.Sweeps.Where(s => s.Role == SweepRole.Reference)];
        var random = new RandomSource(5);
        int next = 0;
        Sweep Bare(Sweep s) => s.As(levels: [.. references[next++ % references.Length].Levels
            .Select(l => l + movedDb + (0.2 * random.Normal()))]);
        return drawn.But(s => s.Role == SweepRole.Covered && missing(s) ? Bare(s) : s).Analysed();
    }

    private static AnalysisPlan Asking(double decibels) =>
        new() { Averaging = Averaging.Power, Requirement = Requirement.Constant(new Decibels(decibels)) };
}
