using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class RestlessSweepsTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with
    {
        Points = 41,
        SpecimensPerLot = 4,
        Placements = 3,
        CoveredSweeps = 2,
        ReferenceSweeps = 6,
        SpecimenDeviationDb = 1,
        PlacementDeviationDb = 0.2,
        SweepDeviationDb = 0.15,
        ReferenceRippleDb = 3,
    };

    // The second of two sweeps of each placement: the placements agree, and nothing in a pair shows which is right.
    [Theory]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(10)]
    public void OneOfTwoSweepsOfEachPlacementIsToldAndNothingIsMetByIt(double looseDb)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            Taken taken = Taken.With(Plan with { Seed = seed, SpecimenDeviationDb = 0 }, new AnalysisPlan
            {
                Averaging = Averaging.Power,
                Requirement = Requirement.Constant(new Decibels(40 + (looseDb / 4))),
            });
            AnalysisResult result = Loose(taken, looseDb, s => s.Specimen == "A02").Analysed();
            Finding told = Assert.Single(result.Findings, f => f.Code == "restless-sweeps");
            Assert.Equal((new SpecimenName("A", "A02"), true, false), (told.Specimen, told.Misleads, result.MayPrefer));
            // Of pairs that differ by d the standard deviation is d/√2.
            Assert.InRange(told.Size!.Value.Value, (looseDb / Math.Sqrt(2)) - 0.4, (looseDb / Math.Sqrt(2)) + 0.4);
            Assert.NotEqual(RequirementOutcome.Meets, result.Verdict.Specimens[1].Outcome);
        }
    }

    // Behind every specimen: the reference is the calm one.
    [Fact]
    public void WhereAllSpecimensAreSoTheReferenceShowsIt()
    {
        AnalysisResult result = Loose(Taken.With(Plan), 6, _ => true).Analysed();
        Assert.Equal(4, result.Findings.Count(f => f.Code == "restless-sweeps"));
    }

    // fixtures/oracles/wrong-campaigns.R: three levels there and back, 0, 3, 6, 6, 3 and 0 dB, which no drift makes.
    [Theory]
    [InlineData("reference-on-three-levels", true)]
    [InlineData("clean", false)]
    public void AReferenceThatRTookOnThreeLevelsIsTold(string drawn, bool isTold)
    {
        AnalysisResult result = Analysis.Run(DrawnByR.Campaign(drawn), new AnalysisPlan { Averaging = Averaging.Power });
        Assert.Equal(isTold, result.Findings.Any(f => f is { Code: "restless-sweeps", Role: SweepRole.Reference }));
        Assert.Equal(!isTold, result.MayPrefer);
    }

    // Sweeps that scatter, all alike or twice as much in one, and a reference of one sweep.
    [Theory]
    [InlineData(0.1, 1, 6)]
    [InlineData(0.8, 1, 6)]
    [InlineData(0.3, 2, 6)]
    [InlineData(1.2, 2, 3)]
    [InlineData(0.3, 1, 1)]
    public void CleanCampaignsAreNotAccused(double sweepDb, double timesInOne, int references) =>
        Assert.Equal(0, Draws.Seeds(60).Count(seed =>
        {
            Taken taken = Taken.With(Plan with { Seed = seed, SweepDeviationDb = sweepDb, ReferenceSweeps = references });
            int sweep = 0;
            return taken.But(s => s.Specimen == "A02" ? s.Shifted((timesInOne - 1) * sweepDb * (sweep++ % 2 == 0 ? 1 : -1)) : s)
                .Analysed().Findings.Any(f => f.Code == "restless-sweeps");
        }));

    // The cloth put back for every sweep, which nobody said.
    [Fact]
    public void WithoutNamedPlacementsSweepsMayBePuttingsBack()
    {
        int sweep = 0;
        Assert.DoesNotContain(Taken.With(Plan with { Placements = 0, CoveredSweeps = 5 })
            .But(s => s.Role == SweepRole.Covered ? s.Shifted(sweep++ % 3) : s).Analysed().Findings,
            f => f.Code == "restless-sweeps");
    }

    [Theory]
    [InlineData(1, 1, 6,
        "no two of the reference and of specimens with named placements have three sweeps that repeat each other")]
    [InlineData(3, 2, 6, null)]
    [InlineData(1, 3, 6, null)]
    public void ItTakesTwoThatRepeat(int placements, int sweeps, int references, string? reason) => Assert.Equal(reason,
        Rehearsed.Analysed(Plan with { Placements = placements, CoveredSweeps = sweeps, ReferenceSweeps = references })
            .Checks.Single(c => c.Code == "restless-sweeps").UntestedBecause);

    private static Taken Loose(Taken taken, double looseDb, Func<Sweep, bool> where)
    {
        Sweep[] seconds = [.. taken.Campaign.Sweeps.Where(s => s.Role == SweepRole.Covered && where(s))
            .GroupBy(s => (s.Specimen, s.Placement)).Select(p => p.Last())];
        return taken.But(s => seconds.Contains(s) ? s.Shifted(-looseDb) : s);
    }
}
