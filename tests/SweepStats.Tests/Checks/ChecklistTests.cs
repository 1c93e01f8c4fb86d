using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class ChecklistTests
{
    [Theory]
    [InlineData(null, "16 dB less input attenuation as far as overload allows")]
    [InlineData(20.0, "16 dB less input attenuation as far as overload allows")]
    [InlineData(10.0, "10 dB of it by taking out the input attenuation as far as overload allows")]
    [InlineData(0.0, null)]
    public void OnlyAttenuationThatIsInCanBeTakenOut(double? stated, string? way)
    {
        string step = RangeRemedy.For(15.5, attenuationDb: stated);
        Assert.Equal(way is not null, step.Contains("input attenuation", StringComparison.Ordinal));
        Assert.Contains(way ?? "16 dB more source power", step, StringComparison.Ordinal);
        AnalysisPlan asking = new()
        {
            Averaging = Averaging.Power,
            Requirement = Requirement.Constant(new Decibels(80)),
            Setup = new ReceiverSettings { AttenuationDb = stated },
        };
        string told = Rehearsed.Analysed(Opaque, asking).Findings.First(f => f.Code == "under-ranged").NextStep;
        Assert.Equal(stated is not 0, told.Contains("input attenuation", StringComparison.Ordinal));
    }

    [Fact]
    public void CappedReadingsLimitUnlessTheBoundsReachTheRequirement()
    {
        RehearsalPlan plan = Rehearsed.Plan with { ShieldingStartDb = 60, ShieldingStopDb = 90 };
        Finding without = Found(plan, null, "capped");
        Finding enough = Found(plan, Requirement.Constant(new Decibels(50)), "capped");
        Assert.Equal(Severity.Warning, without.Severity);
        Assert.Equal(Severity.Note, enough.Severity);
        Assert.NotEmpty(without.Where);
        // From 60 dB at 30 MHz to 90 dB at 1 GHz: 67 dB, 3 dB over the noise, at 68 MHz.
        Assert.All(without.Where, band => Assert.True(band.Start.Value > 68e6));
    }

    [Fact]
    public void BoundsThatATransmitterMakesAreNotMendedByRange()
    {
        Finding finding =
            Found(Rehearsed.Plan with { Ambient = [new AmbientCarrier(new Hertz(150e6), new Decibels(30))] }, null, "capped");
        Assert.Contains("transmit", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("Make more range", finding.NextStep, StringComparison.Ordinal);
        Assert.Contains("Make more range", Found(Rehearsed.Plan with { ShieldingStartDb = 60, ShieldingStopDb = 90 }, null,
            "capped").NextStep, StringComparison.Ordinal);
    }

    private static readonly RehearsalPlan Opaque = Rehearsed.Plan with { ShieldingStartDb = 84, ShieldingStopDb = 84 };

    // A specimen of 40 dB fails 80 dB in full sight: more range would change nothing.
    [Fact]
    public void WhatFailsInFullSightNeedsNoMoreRange() =>
        Assert.DoesNotContain(
            Rehearsed.Analysed(Rehearsed.Plan,
                new AnalysisPlan { Averaging = Averaging.Power, Requirement = Requirement.Constant(new Decibels(80)) }).Findings,
            f => f.Code == "under-ranged");

    [Fact]
    public void ASetUpShortOfRangeIsToldHowMuchAndWhatMendsIt()
    {
        Finding finding = Found(Opaque, Requirement.Constant(new Decibels(80)), "under-ranged");
        // 70 dB between reference and floor, usable about 71.5: 80 + 6 − 71.5 = 14.5 dB are missing.
        Assert.InRange(finding.Size!.Value.Value, 13.5, 15.5);
        Assert.Contains("source power", finding.NextStep, StringComparison.Ordinal);
    }

    [Fact]
    public void DoingWhatTheFindingSaysMakesItGoAway()
    {
        Requirement wanted = Requirement.Constant(new Decibels(80));
        Finding finding = Found(Opaque, wanted, "under-ranged");
        RehearsalPlan stronger = Opaque with { ReferenceDbm = Opaque.ReferenceDbm + Math.Ceiling(finding.Size!.Value.Value) };
        Assert.DoesNotContain(Rehearsed.Analysed(stronger,
            new AnalysisPlan { Averaging = Averaging.Power, Requirement = wanted }).Findings, f => f.Code == "under-ranged");
    }

    [Fact]
    public void ACarrierIsReportedWithItsFrequencyAndHeight()
    {
        Finding finding =
            Found(Rehearsed.Plan with { Ambient = [new AmbientCarrier(new Hertz(150e6), new Decibels(20))] }, null, "ambient");
        FrequencyBand where = Assert.Single(finding.Where);
        Assert.InRange(where.Start.Value, 145e6, 155e6);
        Assert.InRange(finding.Size!.Value.Value, 19, 21);
    }

    [Fact]
    public void UnstatedAveragingIsANote() =>
        Assert.Equal(Severity.Note, Assert.Single(Rehearsed.Analysed(Rehearsed.Plan, new AnalysisPlan()).Findings,
            f => f.Code == "averaging-unknown").Severity);

    [Theory]
    [InlineData(1, "one covered sweep")]
    [InlineData(2, "two covered sweeps")]
    public void TooFewRepeatsAreNamed(int sweeps, string words)
    {
        Finding finding = Found(Rehearsed.Plan with { CoveredSweeps = sweeps }, null, "too-few-repeats");
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoPlacementsOfManySweepsAreStillTwo() =>
        Assert.Contains("two covered placements", Found(Rehearsed.Plan with { Placements = 2, CoveredSweeps = 5 }, null,
            "too-few-repeats").Message, StringComparison.Ordinal);

    [Fact]
    public void UnnamedPlacementsAreANoteAndNamedOnesAreNone()
    {
        Assert.Equal(Severity.Note, Found(Rehearsed.Plan, null, "placement-unknown").Severity);
        Assert.DoesNotContain(Rehearsed.Analysed(Rehearsed.Plan with { Placements = 3, CoveredSweeps = 2 }).Findings,
            f => f.Code == "placement-unknown");
    }

    [Fact]
    public void WhereSomeSpecimensHavePlacementsTheOthersAreNamed()
    {
        Campaign campaign =
            Rehearser.Draw(Rehearsed.Plan with { SpecimensPerLot = 2, Placements = 2, CoveredSweeps = 2 }).Campaign;
        Campaign without = campaign with { Sweeps = [.. campaign.Sweeps.Where(s => s.Specimen != "A02" || s.Placement == "p1")] };
        Assert.StartsWith("For A/A02 no "
            + "placements", Assert.Single(Analysis.Run(without, new AnalysisPlan()).Findings,
                f => f.Code == "placement-unknown").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void LinearitySweepsWithoutSourceLevelAreAskedForIt()
    {
        Campaign campaign = Rehearser.Draw(Rehearsed.Plan with { LinearitySourcesDbm = [-10, 0, 10] }).Campaign;
        Campaign unstated = campaign with
        {
            Sweeps =
            [.. campaign.Sweeps.Select(s => s.Role == SweepRole.Linearity ? Rehearsed.Copy(s, s.Levels) : s)],
        };
        Assert.Contains("source_dbm", Assert.Single(Analysis.Run(unstated, new AnalysisPlan()).Findings,
            f => f.Code == "linearity-untested").NextStep, StringComparison.Ordinal);
    }

    [Fact]
    public void CopiedSweepsAndForeignFrequenciesAreReported()
    {
        Campaign campaign = Rehearser.Draw(Rehearsed.Plan).Campaign;
        Sweep copied = campaign.Sweeps.First(s => s.Role == SweepRole.Covered);
        Campaign twice = campaign with { Sweeps = campaign.Sweeps.Add(Rehearsed.Copy(copied, copied.Levels)) };
        Assert.Contains(Analysis.Run(twice, new AnalysisPlan()).Findings,
            f => f.Code == "duplicate-sweep" && f.Specimen == new SpecimenName("A", "A01"));
        var shorter = new Sweep("short", SweepRole.Reference, new FrequencyGrid([.. copied.Grid.Hertz[1..]]),
            campaign.Sweeps[5].Levels[1..], LevelScale.DecibelMilliwatts);
        Assert.Contains(Analysis.Run(campaign with { Sweeps = campaign.Sweeps.Add(shorter) }, new AnalysisPlan()).Findings,
            f => f.Code == "grid-mismatch");
    }

    [Theory]
    [InlineData(-5.0, null)]
    [InlineData(-15.0, "The source power differs between sweeps that are compared: reference −5 dBm, covered −15 dBm.")]
    public void ASourcePowerThatDiffersIsReported(double covered, string? message)
    {
        Campaign campaign = Rehearser.Draw(Rehearsed.Plan).Campaign;
        ReceiverSettings Of(SweepRole role) =>
            new() { SourcePowerDbm = role == SweepRole.Covered ? covered : role == SweepRole.Reference ? -5 : null };
        AnalysisResult result = Analysis.Run(
            campaign with
            {
                Sweeps = [.. campaign.Sweeps.Select(s =>
                    new Sweep(s.Name, s.Role, s.Grid, s.Levels, s.Scale) { Lot = s.Lot, Specimen = s.Specimen,
                        Settings = Of(s.Role) })],
            },
            new AnalysisPlan());
        Assert.Equal(message, result.Findings.FirstOrDefault(f => f.Code == "settings-changed")?.Message);
    }

    [Fact]
    public void AFloorOfAnotherBandwidthIsMovedAndReported()
    {
        Campaign campaign = Rehearser.Draw(Rehearsed.Plan).Campaign;
        Campaign Stated(double floorHertz) => campaign with
        {
            Sweeps = [.. campaign.Sweeps.Select(s => new Sweep(s.Name, s.Role, s.Grid, s.Levels, s.Scale)
            {
                Lot = s.Lot, Specimen = s.Specimen,
                Settings = new ReceiverSettings { ResolutionBandwidthHz = s.Role == SweepRole.Floor ? floorHertz : 10e3 },
            })],
        };
        AnalysisResult same = Analysis.Run(Stated(10e3), new AnalysisPlan());
        AnalysisResult narrower = Analysis.Run(Stated(1e3), new AnalysisPlan());
        Assert.All(narrower.Floor!.LevelDb, (level, f) => Assert.Equal(same.Floor!.LevelDb[f] + 10, level, 9));
        Assert.Equal(10, Assert.Single(narrower.Findings, f => f.Code == "settings-changed").Size!.Value.Value, 9);
        Assert.DoesNotContain(same.Findings, f => f.Code == "settings-changed");
    }

    [Fact]
    public void LevelsAboveTheStatedMaximumInputAreAFault()
    {
        Finding finding = Assert.Single(Rehearsed.Analysed(Rehearsed.Plan, new AnalysisPlan { MaximumInputDbm = -40 }).Findings,
            f => f.Code == "over-input");
        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.InRange(finding.Size!.Value.Value, 9.5, 11);
        Assert.DoesNotContain(Rehearsed.Analysed(Rehearsed.Plan, new AnalysisPlan { MaximumInputDbm = -20 }).Findings,
            f => f.Code == "over-input");
    }

    [Fact]
    public void ASpecimenThatSeemsToAmplifyIsReported()
    {
        Assert.Contains(Rehearsed.Analysed(Rehearsed.Plan with { ShieldingStartDb = -5, ShieldingStopDb = -5 }).Findings,
            f => f.Code == "negative-shielding");
        Assert.DoesNotContain(Rehearsed.Analysed(Rehearsed.Plan with { ShieldingStartDb = 3, ShieldingStopDb = 3 }).Findings,
            f => f.Code == "negative-shielding");
        int accused =
            Enumerable.Range(1, 60)
                .Count(seed => Rehearsed.Analysed(
                    Rehearsed.Plan with { Seed = (ulong)seed, ShieldingStartDb = 0, ShieldingStopDb = 0 }).Findings
                    .Any(f => f.Code == "negative-shielding"));
        // What shields nothing is accused in 1 of 200; 3 of 60 lie 5 binomial deviations above.
        Assert.InRange(accused, 0, 3);
    }

    [Fact]
    public void AFloorThatLiesAboveTheCoveredNoiseIsAFault()
    {
        RehearsalPlan hidden = Rehearsed.Plan with { ShieldingStartDb = 95, ShieldingStopDb = 95 };
        Campaign campaign = Rehearser.Draw(hidden).Campaign;
        Campaign raised = Rehearsed.Changed(campaign, (s, _, level) => s.Role == SweepRole.Floor ? level + 6 : level);
        Assert.Contains(Analysis.Run(raised, new AnalysisPlan()).Findings,
            f => f is { Code: "settings-changed", Severity: Severity.Fault });
        int falseAlarms = Enumerable.Range(1, 60).Count(
            seed => Rehearsed.Analysed(hidden with { Seed = (ulong)seed, Looks = 1, CoveredSweeps = 1 }).Findings
                .Any(f => f.Code == "settings-changed"));
        Assert.Equal(0, falseAlarms);
    }

    [Fact]
    public void SourceLevelsThatDifferAreReported()
    {
        Campaign campaign = Rehearser.Draw(Rehearsed.Plan).Campaign;
        Campaign stepped = campaign with
        {
            Sweeps = [.. campaign.Sweeps.Select(s => new Sweep(s.Name, s.Role, s.Grid, s.Levels, s.Scale) { Lot = s.Lot,
                Specimen = s.Specimen, SourceDbm = s.Role == SweepRole.Covered ? 10 : 0 })],
        };
        Finding finding = Assert.Single(Analysis.Run(stepped, new AnalysisPlan()).Findings, f => f.Code == "settings-changed");
        Assert.Equal((Severity.Fault, 10), (finding.Severity, finding.Size!.Value.Value));
        Assert.Contains("shown 10.0 dB too small", finding.Message, StringComparison.Ordinal);
        // With 10 dB more through the specimen than there should be, "fails" proves nothing; "meets" stays.
        Assert.Equal(new Bias(0, 10), finding.Bias);
        Campaign ratios =
            stepped with
            {
                Sweeps =
                [.. stepped.Sweeps.Select(s => new Sweep(s.Name, s.Role, s.Grid, s.Levels, LevelScale.DecibelRatio) { Lot = s.Lot,
                    Specimen = s.Specimen, SourceDbm = s.SourceDbm })],
            };
        // A display in dB may follow the source; only a ratio with phase surely does not.
        Assert.Contains(Analysis.Run(ratios, new AnalysisPlan()).Findings, f => f.Code == "settings-changed");
        // What the campaign states holds for the sweeps that state nothing.
        Campaign half =
            stepped with
            {
                Sweeps =
                [.. stepped.Sweeps.Select(
                    s => s.Role == SweepRole.Covered ? s : new Sweep(s.Name, s.Role, s.Grid, s.Levels, s.Scale))],
            };
        Finding told =
            Assert.Single(Analysis.Run(half, new AnalysisPlan { SourceDbm = 0 }).Findings, f => f.Code == "settings-changed");
        Assert.Equal(10, told.Size!.Value.Value);
        Assert.DoesNotContain(Analysis.Run(half, new AnalysisPlan { SourceDbm = 10 }).Findings,
            f => f.Code == "settings-changed");
    }

    // Steps of the source are compared, and nothing of the receiver: that is not "looked for and not found".
    [Theory]
    [InlineData(null, null, "the files state no settings", null)]
    [InlineData(0.0, null, null, "the source level is stated, but no setting of the receiver")]
    [InlineData(0.0, 10.0, null, null)]
    public void WhichSettingsWereComparedIsSaid(double? sourceDbm, double? attenuationDb, string? untested, string? left)
    {
        Campaign drawn = Rehearser.Draw(Rehearsed.Plan).Campaign;
        Sweep Stated(Sweep s) => new(s.Name, s.Role, s.Grid, s.Levels, s.Scale)
        {
            Lot = s.Lot,
            Specimen = s.Specimen,
            SourceDbm = s.Role == SweepRole.Floor ? null : sourceDbm,
            Settings = new ReceiverSettings { AttenuationDb = attenuationDb },
        };
        CheckRun run = Analysis.Run(drawn with { Sweeps = [.. drawn.Sweeps.Select(Stated)] }, new AnalysisPlan())
            .Checks.Single(c => c.Code == "settings-changed");
        Assert.Equal((untested, left), (run.UntestedBecause, run.LeftBecause));
    }

    [Fact]
    public void AFloorBelowTheThermalLimitIsReported()
    {
        // 1 MHz at 290 K: −173.975 + 60 = −113.975 dBm (kT of the SI brochure 2019).
        var setup = new AnalysisPlan
        {
            Averaging = Averaging.Power,
            Setup = new ReceiverSettings { ResolutionBandwidthHz = 1e6 },
        };
        Finding finding = Assert.Single(Rehearsed.Analysed(Rehearsed.Plan with { FloorDbm = -124 }, setup).Findings,
            f => f.Code == "below-thermal");
        Assert.InRange(finding.Size!.Value.Value, 9.7, 11);
        Assert.DoesNotContain(Rehearsed.Analysed(Rehearsed.Plan with { FloorDbm = -113 }, setup).Findings,
            f => f.Code == "below-thermal");
    }

    [Fact]
    public void AFloorThatScattersMoreThanNoiseIsReported()
    {
        Campaign campaign = Rehearser.Draw(Rehearsed.Plan with { Looks = 1 }).Campaign;
        var random = new RandomSource(6);
        Campaign wild =
            Rehearsed.Changed(campaign, (s, _, level) => s.Role == SweepRole.Floor ? level + (6 * random.Normal()) : level);
        Assert.Contains(Analysis.Run(wild, new AnalysisPlan()).Findings,
            f => f.Code == "ambient" && f.Message.Contains("more than noise can", StringComparison.Ordinal));
    }

    [Fact]
    public void FindingsComeGravestFirst()
    {
        var severities = Rehearsed.Analysed(Rehearsed.Plan with { FloorSweeps = 0, CoveredSweeps = 1 },
            new AnalysisPlan()).Findings.Select(f => f.Severity).ToList();
        Assert.Equal(severities.OrderDescending(), severities);
    }

    private static Finding Found(RehearsalPlan plan, Requirement? requirement, string code) =>
        Rehearsed.Analysed(plan, new AnalysisPlan { Averaging = Averaging.Power, Requirement = requirement }).Findings
            .First(f => f.Code == code);
}
