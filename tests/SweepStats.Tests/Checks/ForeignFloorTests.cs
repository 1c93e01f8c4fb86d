using System.Globalization;
using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class ForeignFloorTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { Points = 101, ScatterDb = 0.2 };

    // The covered level is all noise; the floor was taken with 20 dB less gain, so that noise looks like a signal far over it.
    [Fact]
    public void NoiseFarOverAFloorOfOtherSettingsIsNoSignal()
    {
        AnalysisResult result = Analysed(Plan with { ShieldingStartDb = 95, ShieldingStopDb = 95 }, floorDb: -20, asked: 85);
        Finding told = Assert.Single(result.Findings, f => f.Code == "foreign-floor");
        Assert.Equal((Severity.Warning, Bias.TooSmall), (told.Severity, told.Bias));
        Assert.Equal(RequirementOutcome.CannotTell, result.Verdict.Requirement);
    }

    // Of 101 frequencies and five sweeps, 400 degrees of freedom: what they scatter by is known to 3.5 %.
    [Fact]
    public void TheScatterThatIsToldIsThatOfTheNoise()
    {
        AnalysisResult result = Analysed(Plan with { ShieldingStartDb = 95, ShieldingStopDb = 95 }, floorDb: -20, asked: 85);
        string message = Assert.Single(result.Findings, f => f.Code == "foreign-floor").Message;
        double told = double.Parse(message.Split("scatter by ")[1].Split(" dB")[0], CultureInfo.InvariantCulture);
        Agreement.Relative(0.08, new DetectorNoise(Plan.Looks).LogStandardDeviation, told);
    }

    // A steady signal 10 dB over the noise, under a floor taken 10 dB too high: too much noise would be taken out.
    [Fact]
    public void ASteadySignalInAFloorThatIsTooHighMeetsNothing()
    {
        AnalysisResult result = Analysed(Plan with { ShieldingStartDb = 60, ShieldingStopDb = 60 }, floorDb: 10, asked: 60.3);
        Assert.Contains(result.Findings, f => f is { Code: "foreign-floor", Severity: Severity.Warning });
        Assert.NotEqual(RequirementOutcome.Meets, result.Verdict.Requirement);
    }

    // Swept like the specimen, source on and all: no floor is so, and the plate lies far under it.
    [Fact]
    public void AFloorTakenWithTheSourceOnIsFoundByThePlateUnderIt()
    {
        Taken drawn = Taken.With(Plan with { PlateSweeps = 3, PlateDb = 110, CoveredSweeps = 5 });
        Sweep[] covered = [.. drawn.Campaign.Sweeps.Where(s => s.Role == SweepRole.Covered)];
        var random = new SweepStats.Statistics.RandomSource(3);
        int next = 0;
        AnalysisResult result = drawn.But(s => s.Role == SweepRole.Floor
            ? s.As(levels: [.. covered[next++ % covered.Length].Levels.Select(l => l + (0.2 * random.Normal()))]) : s).Analysed();
        Finding told = Assert.Single(result.Findings, f => f is { Code: "foreign-floor", Role: SweepRole.Floor });
        Assert.Equal((Severity.Warning, true), (told.Severity, told.Misleads));
        Assert.StartsWith("Take the floor again with the source off", told.NextStep, StringComparison.Ordinal);
        Assert.False(result.MayPrefer);
    }

    [Theory]
    [InlineData(110, 40)]
    [InlineData(75, 60)]
    [InlineData(45, 40)]
    [InlineData(110, 95)]
    public void APlateInTheNoiseOrOverItIsNoSignOfAnotherFloor(double plateDb, double shieldingDb) => Assert.Equal(0,
        Draws.Seeds(60).Count(seed => Rehearsed.Analysed(Plan with
        {
            Seed = seed,
            Points = 21,
            PlateSweeps = 3,
            PlateDb = plateDb,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
        }).Findings.Any(f => f is { Code: "foreign-floor", Role: SweepRole.Floor })));

    [Theory]
    [InlineData(40)]
    [InlineData(70)]
    [InlineData(95)]
    public void AFloorOfTheSameSettingsIsNotAccused(double shieldingDb)
    {
        int alarms =
            Draws.Seeds(60)
                .Count(seed => Analysed(Plan with { Seed = seed, ShieldingStartDb = shieldingDb, ShieldingStopDb = shieldingDb },
                    0, 30).Findings.Any(f => f.Code == "foreign-floor"));
        Assert.Equal(0, alarms);
    }

    // What the specimen does by itself scatters too, and so does the reference.
    [Fact]
    public void ScatterOfTheSourceIsNotTakenForNoise() =>
        Assert.DoesNotContain(Analysed(Plan with { ScatterDb = 1.5, ShieldingStartDb = 30, ShieldingStopDb = 30 }, 0,
            20).Findings, f => f.Code == "foreign-floor");

    private static AnalysisResult Analysed(RehearsalPlan plan, double floorDb, double asked)
    {
        Campaign drawn = Rehearser.Draw(plan).Campaign;
        Campaign changed =
            drawn with { Sweeps = [.. drawn.Sweeps.Select(s => s.Role == SweepRole.Floor ? s.Shifted(floorDb) : s)] };
        return Analysis.Run(changed,
            new AnalysisPlan { Averaging = plan.Averaging, Requirement = Requirement.Constant(new Decibels(asked)) });
    }
}
