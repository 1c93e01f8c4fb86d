using System.Collections.Immutable;
using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class NothingHeardTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with
    {
        Points = 41,
        Lots = 2,
        SpecimensPerLot = 3,
        Placements = 2,
        CoveredSweeps = 2,
        SpecimenDeviationDb = 1,
        ReferenceDbm = -20,
        ShieldingStartDb = 35,
        ShieldingStopDb = 35,
    };

    [Fact]
    public void ASpecimenSweptWithTheSourceOffIsAskedAboutAndNothingIsPreferred()
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            AnalysisResult result = WithoutSource(Plan with { Seed = seed }, s => s is { Lot: "A", Specimen: "A02" });
            Finding told = Assert.Single(result.Findings, f => f.Code == "nothing-heard");
            Assert.Equal((Severity.Warning, new SpecimenName("A", "A02"), true), (told.Severity, told.Specimen, told.Misleads));
            Assert.StartsWith("Nothing is heard behind A/A02: it lies in the floor at", told.Message, StringComparison.Ordinal);
            Assert.StartsWith("Look whether the source was on", told.NextStep, StringComparison.Ordinal);
            Assert.Equal((false, true), (result.MayPrefer, result.Verdict.Trust != Trust.Trustworthy));
        }
    }

    [Fact]
    public void TwoOfThreeAreAskedAboutEach()
    {
        AnalysisResult result = WithoutSource(Plan, s => s is { Lot: "A", Specimen: "A01" or "A02" });
        Assert.Equal(["A01", "A02"],
            result.Findings.Where(f => f.Code == "nothing-heard").Select(f => f.Specimen!.Value.Specimen).Order());
    }

    // A lot may truly shield better than another, and who is alone in it has nobody to be held against.
    [Fact]
    public void AWholeLotInTheFloorIsNotAskedAbout() => Assert.DoesNotContain(
        WithoutSource(Plan, s => s.Lot == "A").Findings, f => f.Code == "nothing-heard");

    [Theory]
    [InlineData(35, 1)]
    [InlineData(55, 4)]
    [InlineData(70, 5)]
    [InlineData(90, 3)]
    public void UnevenClothThatNearsTheFloorIsLeftAlone(double shieldingDb, double deviationDb) =>
        Assert.Equal(0, Draws.Seeds(60).Count(seed => Rehearsed.Analysed(Plan with
        {
            Points = 21,
            Seed = seed,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
            SpecimenDeviationDb = deviationDb,
        }).Findings.Any(f => f is { Code: "nothing-heard", Specimen: not null })));

    // The source off, a cable loose, or the best of cloths: the campaign cannot tell, and says how to find out.
    [Theory]
    [InlineData(2, 3)]
    [InlineData(1, 1)]
    public void WhereNothingIsHeardAtAllItIsAskedBeforeMoreRangeIs(int lots, int specimens)
    {
        RehearsalPlan plan = Plan with { Lots = lots, SpecimensPerLot = specimens };
        foreach (ulong seed in Draws.Seeds(20))
        {
            AnalysisResult result = WithoutSource(plan with { Seed = seed }, _ => true);
            Finding told = Assert.Single(result.Findings, f => f.Code == "nothing-heard");
            Assert.Equal((result.Findings[0], Severity.Warning, null), (told, told.Severity, told.Specimen));
            Assert.StartsWith("Open a specimen and look that its level rises", told.NextStep, StringComparison.Ordinal);
            Assert.NotEqual(Trust.Trustworthy, result.Verdict.Trust);
        }
    }

    // A sweep of the opened specimen that was left out for that shows that the source was heard; one of nothing does not.
    [Theory]
    [InlineData(50, false)]
    [InlineData(0, true)]
    public void AnOpenedSpecimenThatIsHeardSettlesIt(double raisedDb, bool isAsked)
    {
        Taken silent = Taken.With(Plan with { ShieldingStartDb = 150, ShieldingStopDb = 150 });
        Sweep opened = silent.First(SweepRole.Covered).Shifted(raisedDb).As(name: "covered/opened.csv", excluded: "opened");
        Assert.Equal(isAsked, silent.And(opened).Analysed().Findings.Any(f => f.Code == "nothing-heard"));
    }

    [Theory]
    [InlineData(60, 75)]
    [InlineData(40, 120)]
    [InlineData(30, 65)]
    public void ClothThatIsHeardSomewhereIsLeftAlone(double startDb, double stopDb) =>
        Assert.Equal(0, Draws.Seeds(60).Count(seed => Rehearsed.Analysed(Plan with
        {
            Points = 21,
            Seed = seed,
            ShieldingStartDb = startDb,
            ShieldingStopDb = stopDb,
        }).Findings.Any(f => f.Code == "nothing-heard")));

    [Fact]
    public void WithoutTwoSpecimensOfALotItSaysThatItCouldNotLook()
    {
        AnalysisResult alone = Rehearsed.Analysed(Plan with { Lots = 3, SpecimensPerLot = 1 });
        Assert.Equal("it takes two specimens of one lot", alone.Checks.Single(c => c.Code == "nothing-heard").UntestedBecause);
    }

    // The same bench behind a cloth of 150 dB: noise alone.
    private static AnalysisResult WithoutSource(RehearsalPlan plan, Func<Sweep, bool> off)
    {
        Campaign drawn = Taken.With(plan).Campaign;
        ILookup<string, Sweep> silent = Taken
            .With(plan with { ShieldingStartDb = 150, ShieldingStopDb = 150 }).Campaign.Sweeps.ToLookup(s => s.Name);
        ImmutableArray<Sweep> sweeps =
            [.. drawn.Sweeps.Select(s => s.Role == SweepRole.Covered && off(s) ? silent[s.Name].Single() : s)];
        return Analysis.Run(drawn with { Sweeps = sweeps }, new AnalysisPlan { Averaging = Averaging.Power });
    }
}
