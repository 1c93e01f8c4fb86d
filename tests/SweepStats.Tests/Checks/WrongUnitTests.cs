using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class WrongUnitTests
{
    // 50 Ω: 1 mW is 224 mV, 10·lg(10⁻³ W · 50 Ω / 10⁻¹² V²) = 106.99 dB over 1 µV.
    private const double MicrovoltsDb = 106.99;

    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { SpecimensPerLot = 2, Lots = 2, CoveredSweeps = 3 };

    [Theory]
    [InlineData("reference", "the reference")]
    [InlineData("reference covered", "the reference and 4 specimens")]
    [InlineData("reference covered floor", "the reference and 4 specimens")]
    public void WhatIsInMicrovoltsIsAskedAboutFirstAndNothingIsPreferred(string wrong, string named)
    {
        AnalysisResult result = InMicrovolts(wrong).Analysed();
        Finding told = result.Findings[0];
        Assert.Equal(("wrong-unit", Severity.Warning, true), (told.Code, told.Severity, told.Misleads));
        Assert.StartsWith($"The unit of {named} looks wrong: ", told.Message, StringComparison.Ordinal);
        Assert.StartsWith($"Look whether the levels of {named} are in dBm: ", told.NextStep, StringComparison.Ordinal);
        Assert.Equal((false, Trust.Limited), (result.MayPrefer, result.Verdict.Trust));
    }

    // Levels in dBm whose files call them dBµV: 107 dB are taken off where none should be.
    [Theory]
    [InlineData("floor", "the floor", -206.9)]
    [InlineData("covered floor", "the floor and 4 specimens", -207)]
    [InlineData("reference covered floor", "the floor and 4 specimens", -207)]
    public void WhatWasTakenForMicrovoltsIsAskedAbout(string wrong, string named, double leastDbm)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            AnalysisResult result = Shifted(Plan with { Seed = seed, ShieldingStartDb = 80, ShieldingStopDb = 80 }, wrong,
                -MicrovoltsDb).Analysed();
            Finding told = Assert.Single(result.Findings, f => f.Code == "wrong-unit");
            Assert.Equal((Severity.Warning, true, true), (told.Severity, told.Misleads, told.Bias == Bias.Unknown));
            Assert.StartsWith($"The unit of {named} looks wrong: ", told.Message, StringComparison.Ordinal);
            // Below kTB of 1 Hz at 290 K, −173.975 dBm (SI brochure 2019).
            Assert.InRange(told.Size!.Value.Value, leastDbm + 173.975 - 1, leastDbm + 173.975 + 1);
            Assert.DoesNotContain(result.Findings, f => f.Code == "below-thermal");
        }
    }

    // fixtures/oracles/wrong-campaigns.R.
    [Fact]
    public void WhatRTookForMicrovoltsIsAskedAbout()
    {
        AnalysisResult result =
            Analysis.Run(DrawnByR.Campaign("taken-for-microvolts"), new AnalysisPlan { Averaging = Averaging.Power });
        Assert.StartsWith("The unit of the floor, A/s1, A/s2 and A/s3 looks wrong: down to −207",
            Assert.Single(result.Findings, f => f.Code == "wrong-unit").Message, StringComparison.Ordinal);
    }

    // One file of several: it is named, and nothing is said of the range that it seems to need.
    [Theory]
    [InlineData(SweepRole.Floor, -1)]
    [InlineData(SweepRole.Reference, -1)]
    [InlineData(SweepRole.Covered, -1)]
    [InlineData(SweepRole.Covered, 1)]
    public void ASingleFileInAnotherUnitIsNamed(SweepRole role, int sign)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            Taken drawn = Taken.With(Plan with { Seed = seed });
            Sweep one = drawn.First(role);
            AnalysisResult result = drawn.But(s => s == one ? s.Shifted(sign * MicrovoltsDb) : s).Analysed();
            Finding told = Assert.Single(result.Findings, f => f.Code == "wrong-unit" && f.Sweep is not null);
            Assert.Equal((Severity.Fault, one.Name, true), (told.Severity, told.Sweep, told.Misleads));
            Assert.DoesNotContain(result.Findings, f => f.Code is "under-ranged" or "capped"
                && (f.Specimen is null || role != SweepRole.Covered || f.Specimen == SpecimenName.Of(one)));
        }
    }

    // A reference of 7 dBm over a floor of −100: one sweep that had no source lies 107 dB below, and is none in dBµV.
    [Fact]
    public void ASweepInTheFloorIsInNoOtherUnit()
    {
        Taken drawn = Taken.With(Plan with { ReferenceDbm = 7, FloorDbm = -100 });
        Sweep one = drawn.First(SweepRole.Reference), noise = drawn.First(SweepRole.Floor);
        Assert.DoesNotContain(drawn.But(s => s == one ? s.As(levels: noise.Levels) : s).Analysed().Findings,
            f => f.Code == "wrong-unit");
    }

    // −53.5 dBm without its sign is 107 dB higher as well: one fault, which names both ways out.
    [Fact]
    public void ALostSignIsToldOnce()
    {
        Taken drawn = Taken.With(Plan with { ReferenceDbm = -53.5 });
        Sweep one = drawn.First(SweepRole.Reference);
        AnalysisResult result = drawn.But(s => s == one ? s.As(levels: [.. s.Levels.Select(l => -l)]) : s).Analysed();
        Assert.Equal(one.Name, Assert.Single(result.Findings, f => f.Code is "lost-sign" or "wrong-unit").Sweep);
    }

    // Floor at 1 MHz, covered at 100 Hz: each has the thermal limit of its own bandwidth.
    [Fact]
    public void AnotherBandwidthOfTheFloorIsNoOtherUnit()
    {
        Taken wide = Taken.With(Plan with { FloorDbm = -144, ReferenceDbm = -60, ShieldingStartDb = 95, ShieldingStopDb = 95 })
            .But(s => (s.Role == SweepRole.Floor ? s.Shifted(40) : s).As(settings: new ReceiverSettings
            {
                ResolutionBandwidthHz = s.Role == SweepRole.Floor ? 1e6 : 100,
            }));
        Assert.DoesNotContain(wide.Analysed().Findings, f => f.Code is "wrong-unit" or "below-thermal");
    }

    // −70 dBm written as 37 looks like 37 dBm without its sign as well: one question, which names both.
    [Fact]
    public void WhereTheSignMayBeLostTheUnitIsAskedThere()
    {
        AnalysisResult result = InMicrovolts("covered").Analysed();
        Assert.DoesNotContain(result.Findings, f => f.Code == "wrong-unit");
        Assert.All(result.Findings.Where(f => f.Code == "lost-sign"),
            f => Assert.Contains("or their right unit if they are in dBµV", f.NextStep, StringComparison.Ordinal));
        Assert.Equal("lost-sign", result.Findings[0].Code);
    }

    [Fact]
    public void AReceiverThatIsStatedToTakeItSettlesIt()
    {
        Taken wrong = InMicrovolts("reference");
        AnalysisResult Stated(double dbm) => Analysis.Run(wrong.Campaign, wrong.Stated with { MaximumInputDbm = dbm });
        Assert.DoesNotContain(Stated(90).Findings, f => f.Code is "wrong-unit" or "over-input");
        AnalysisResult over = Stated(-10);
        Assert.Contains(over.Findings, f => f.Code == "wrong-unit");
        string next = over.Findings.Single(f => f.Code == "over-input").NextStep;
        Assert.StartsWith("Look whether the levels of the reference are in dBm", next, StringComparison.Ordinal);
        Assert.DoesNotContain("max_input_dbm", next, StringComparison.Ordinal);
        Assert.EndsWith("put more attenuation before the receiver and take all sweeps again.", next, StringComparison.Ordinal);
    }

    // A sign that one floor file lost explains nothing of the reference.
    [Fact]
    public void ALostSignOfAnotherRoleDoesNotSilenceIt()
    {
        Taken wrong = InMicrovolts("reference");
        Sweep one = wrong.First(SweepRole.Floor);
        AnalysisResult result = wrong.But(s => s == one ? s.As(levels: [.. s.Levels.Select(l => -l)]) : s).Analysed();
        Assert.Equal(one.Name, Assert.Single(result.Findings, f => f.Code == "lost-sign").Sweep);
        Assert.StartsWith("The unit of the reference looks wrong: ", result.Findings.Single(f => f.Code == "wrong-unit").Message,
            StringComparison.Ordinal);
    }

    // −25 dBm written as 25 dBm, or a specimen in dBµV beside a reference that is truly too high: each has its own next step.
    [Fact]
    public void WhatIsAboveTheInputIsToldByItsOwnLevels()
    {
        Taken lost = Taken.With(Plan with { ReferenceDbm = -25 })
            .But(s => s.Role == SweepRole.Reference ? s.As(levels: [.. s.Levels.Select(l => -l)]) : s);
        Assert.StartsWith("Give the levels of the reference their minus sign again", OverInput(lost, -10).NextStep,
            StringComparison.Ordinal);
        Taken other = Taken.With(Plan with { ReferenceDbm = -2 })
            .But(s => s is { Specimen: "A02" } ? s.Shifted(MicrovoltsDb) : s);
        Assert.Matches("^Put [34] dB more attenuation before the receiver", OverInput(other, -5).NextStep);
    }

    private static Finding OverInput(Taken taken, double maximumDbm) => Analysis
        .Run(taken.Campaign, taken.Stated with { MaximumInputDbm = maximumDbm }).Findings.Single(f => f.Code == "over-input");

    // Fields in dBµV/m and ratios have no such limit.
    [Theory]
    [InlineData(-30, 40)]
    [InlineData(10, 60)]
    [InlineData(29, 0)]
    public void CleanCampaignsAreNotAccused(double referenceDbm, double shieldingDb) =>
        Assert.Equal(0, Draws.Seeds(60).Count(seed => Rehearsed.Analysed(Plan with
        {
            Points = 21,
            Seed = seed,
            ReferenceDbm = referenceDbm,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
        }).Findings.Any(f => f.Code == "wrong-unit")));

    private static Taken InMicrovolts(string roles) => Shifted(Plan, roles, MicrovoltsDb);

    private static Taken Shifted(RehearsalPlan plan, string roles, double decibels) => Taken.With(plan).But(s =>
        roles.Split(' ').Contains(s.Role.ToString().ToLowerInvariant()) ? s.Shifted(decibels) : s);
}
