using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class TwoLevelsTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with
    {
        Points = 51,
        Lots = 1,
        SpecimensPerLot = 3,
        Placements = 3,
        CoveredSweeps = 5,
        ReferenceSweeps = 5,
        PlacementDeviationDb = 0.2,
        SweepDeviationDb = 0.1,
        ReferenceRippleDb = 3,
        ShieldingStartDb = 60,
        ShieldingStopDb = 60,
        FloorDbm = -90,
    };

    private static readonly AnalysisPlan Power = new() { Averaging = Averaging.Power };

    // Ten dB over the floor, and three of five sweeps of each placement in it: their means agree, and hide it.
    [Fact]
    public void SweepsWithTheSourceOffAreNamedWhereMostOfThemAreOff()
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            AnalysisResult result = Off(seed, 3, 0);
            Finding told = Assert.Single(result.Findings, f => f.Code == "two-levels");
            Assert.Equal((new SpecimenName("A", "A02"), true, false), (told.Specimen, told.Misleads, result.MayPrefer));
            Assert.StartsWith("Sweeps of A/A02 that repeat each other, in 3 placements, lie on two levels, ", told.Message,
                StringComparison.Ordinal);
            Assert.EndsWith(" dB apart: 9 of 15 lie lower, in the floor.", told.Message, StringComparison.Ordinal);
        }
    }

    // By hand: two of five are 4 dB down, so that the gap is 4 dB but for the sweeps' own 0.1 dB.
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void ACableThatWasLooseIsToldWithItsLoss(int off)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            Taken taken = Taken.With(Plan with { Seed = seed, ShieldingStartDb = 40, ShieldingStopDb = 40 }, Power);
            Finding told = Assert.Single(taken.But(s => IsOff(s, off) ? s.Shifted(-4) : s).Analysed().Findings,
                f => f.Code == "two-levels");
            Assert.InRange(told.Size!.Value.Value, 3.7, 4.5);
            Assert.EndsWith($": {3 * off} of 15 lie lower.", told.Message, StringComparison.Ordinal);
        }
    }

    // Sweeps that scatter by themselves do not hide it.
    [Theory]
    [InlineData(4, 0.3)]
    [InlineData(6, 0.5)]
    [InlineData(10, 0.8)]
    public void SweepsThatScatterDoNotHideIt(double looseDb, double scatterDb)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            Taken taken = Taken.With(
                Plan with { Seed = seed, ShieldingStartDb = 40, ShieldingStopDb = 40, SweepDeviationDb = scatterDb }, Power);
            Assert.Contains(taken.But(s => s.Role == SweepRole.Covered && (s.Name[^5] is '1' or '3') ? s.Shifted(-looseDb) : s)
                .Analysed().Findings, f => f.Code == "two-levels");
        }
    }

    // fixtures/oracles/wrong-campaigns.R.
    [Fact]
    public void SweepsThatRTookWithTheSourceOffAreNamed()
    {
        Finding told = Assert.Single(Analysis.Run(DrawnByR.Campaign("source-off-for-most-sweeps"), Power).Findings,
            f => f.Code == "two-levels");
        Assert.Equal(new SpecimenName("A", "s2"), told.Specimen);
        Assert.EndsWith(" dB apart: 6 of 9 lie lower, in the floor.", told.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Analysis.Run(DrawnByR.Campaign("clean"), Power).Findings, f => f.Code == "two-levels");
    }

    [Fact]
    public void ReferencesOnTwoLevelsAreToldButNotOnesThatStepOnce()
    {
        Taken taken = Taken.With(Plan, Power);
        AnalysisResult Moved(params int[] places)
        {
            Sweep[] some =
                [.. taken.Campaign.Sweeps.Where(s => s.Role == SweepRole.Reference).Where((_, j) => places.Contains(j))];
            return taken.But(s => some.Contains(s) ? s.Shifted(-3) : s).Analysed();
        }

        Finding told = Assert.Single(Moved(1, 3).Findings, f => f.Code == "two-levels");
        Assert.Equal((SweepRole.Reference, null), (told.Role, told.Specimen));
        Assert.StartsWith("Reference sweeps lie on two levels, ", told.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Moved(3, 4).Findings, f => f.Code == "two-levels");
        Assert.Contains(Moved(3, 4).Findings, f => f.Code == "drift");
    }

    // Two of eight at the end: no curve through so few tells it from chance, so it is told here.
    [Fact]
    public void AStepOfTheReferenceThatNoDriftTellsIsToldHere()
    {
        Taken taken = Taken.With(Plan with { ReferenceSweeps = 8, SweepDeviationDb = 0.05 }, Power);
        Sweep[] last = [.. taken.Campaign.Sweeps.Where(s => s.Role == SweepRole.Reference).TakeLast(2)];
        AnalysisResult result = taken.But(s => last.Contains(s) ? s.Shifted(-2.8) : s).Analysed();
        Assert.Contains(result.Findings, f => f is { Code: "two-levels" or "drift", Role: SweepRole.Reference });
    }

    // One that is odd beside the split, and told, hides none of the others.
    [Fact]
    public void AnOddSweepBesideThemDoesNotHideThem()
    {
        Taken taken = new(Campaign(1, 3, 0), Power);
        Sweep good = taken.Campaign.Sweeps.First(s => s is { Role: SweepRole.Covered, Specimen: "A02" } && !IsOff(s, 3));
        Assert.Contains(taken.But(s => s == good ? s.As(levels: [.. s.Levels.Select((l, f) => l + (3 * Math.Sin(f / 3.0)))]) : s)
            .Analysed().Findings, f => f.Code == "two-levels");
    }

    // One look at noise, sweeps that scatter by a decibel, or in the floor: no clean campaign is accused.
    [Theory]
    [InlineData(0.1, 60, 20)]
    [InlineData(1, 40, 20)]
    [InlineData(1.5, 40, 20)]
    [InlineData(0.3, 75, 1)]
    [InlineData(0.5, 58, 1)]
    public void RepeatsThatScatterOnOneLevelAreLeftAlone(double sweepDb, double shieldingDb, int looks) =>
        Assert.InRange(Draws.Seeds(60).Count(seed => Rehearsed.Analysed(Plan with
        {
            Seed = seed,
            SweepDeviationDb = sweepDb,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
            Looks = looks,
        }).Findings.Any(f => f.Code == "two-levels")), 0, 1);

    // Groups need not scatter alike: one specimen whose sweeps scatter by a decibel among many that do not.
    [Theory]
    [InlineData(3, 1)]
    [InlineData(5, 0.7)]
    public void AGroupThatScattersMoreThanOthersIsLeftAlone(int sweeps, double deviationDb)
    {
        int accused = Draws.Seeds(100).Count(seed =>
        {
            var random = new RandomSource(seed);
            Taken even = Taken.With(Plan with
            {
                Seed = seed,
                SpecimensPerLot = 6,
                CoveredSweeps = sweeps,
                ShieldingStartDb = 40,
                ShieldingStopDb = 40,
            });
            return even.But(s => s is { Role: SweepRole.Covered, Specimen: "A02" } ? s.Shifted(deviationDb * random.Normal()) : s)
                .Analysed().Findings.Any(f => f.Code == "two-levels");
        });
        Often.AtMost(accused, Draws.Of(100), 0.01, whenFull: 4);
    }

    // Laws: a shift of all levels, and another order, change nothing.
    [Fact]
    public void NeitherAShiftOfAllLevelsNorTheOrderMatters()
    {
        Taken taken = new(Campaign(1, 3, 0), Power);
        string[] Said(Taken of) => [.. of.Analysed().Findings.Where(f => f.Code == "two-levels").Select(f => f.Message)];
        Assert.NotEmpty(Said(taken));
        Assert.Equal(Said(taken), Said(taken.But(s => s.Shifted(-7))));
        Assert.Equal(Said(taken),
            Said(taken with { Campaign = taken.Campaign with { Sweeps = [.. taken.Campaign.Sweeps.Reverse()] } }));
    }

    [Fact]
    public void WithoutThreeRepeatsItSaysThatItCouldNotLook()
    {
        CheckRun Run(RehearsalPlan plan) => Rehearsed.Analysed(plan).Checks.Single(c => c.Code == "two-levels");
        Assert.Equal("no three sweeps of the reference or of one placement repeat each other",
            Run(Plan with { CoveredSweeps = 2, ReferenceSweeps = 2 }).UntestedBecause);
        Assert.Equal((null, "no three sweeps of one placement repeat each other at 3 specimens"),
            (Run(Plan with { CoveredSweeps = 2 }).UntestedBecause, Run(Plan with { CoveredSweeps = 2 }).LeftBecause));
        Assert.Null(Run(Plan).LeftBecause);
    }

    private static bool IsOff(Sweep sweep, int off) =>
        sweep is { Role: SweepRole.Covered, Specimen: "A02" } && sweep.Name[^5] - '0' <= off;

    private static AnalysisResult Off(ulong seed, int off, double overDb) =>
        Analysis.Run(Campaign(seed, off, overDb), Power);

    // The same bench behind a cloth of 150 dB: noise alone.
    private static Campaign Campaign(ulong seed, int off, double overDb)
    {
        RehearsalPlan plan = Plan with { Seed = seed };
        ILookup<string, Sweep> silent = Taken.With(plan with { ShieldingStartDb = 150, ShieldingStopDb = 150 }).Campaign.Sweeps
            .ToLookup(s => s.Name);
        return Taken.With(plan).But(s => IsOff(s, off) ? silent[s.Name].Single().Shifted(overDb) : s).Campaign;
    }
}
