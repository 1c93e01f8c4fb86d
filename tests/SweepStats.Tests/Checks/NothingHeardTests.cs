using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
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
            Assert.StartsWith("Nothing is heard behind A/A02: it rises less than 6 dB over the floor at 41 of 41 ",
                told.Message, StringComparison.Ordinal);
            Assert.StartsWith("Look whether the source was on", told.NextStep, StringComparison.Ordinal);
            Assert.Equal((false, true), (result.MayPrefer, result.Verdict.Trust != Trust.Trustworthy));
        }
    }

    // Pieces that lie within a dB or two of each other need not differ by a hundred times the power.
    [Fact]
    public void WhereALotIsEvenLessIsAskedAbout() => Often.AtLeast(
        Draws.Seeds(20).Count(seed =>
        {
            RehearsalPlan even = Plan with { Seed = seed, ShieldingStartDb = 60, ShieldingStopDb = 60 };
            return WithoutSource(even, s => s is { Lot: "A", Specimen: "A02" }).Findings
                .SingleOrDefault(f => f.Code == "nothing-heard")?.Specimen == new SpecimenName("A", "A02");
        }), Draws.Of(20), 0.95, whenFull: 19);

    [Fact]
    public void TwoOfThreeAreAskedAboutEach()
    {
        AnalysisResult result = WithoutSource(Plan, s => s is { Lot: "A", Specimen: "A01" or "A02" });
        Assert.Equal(["A01", "A02"],
            result.Findings.Where(f => f.Code == "nothing-heard").Select(f => f.Specimen!.Value.Specimen).Order());
    }

    // A cable that was loose for an afternoon. What the lot seems to meet is not relied on; what the other fails stands.
    [Theory]
    [InlineData(2, 3)]
    [InlineData(3, 2)]
    public void AWholeLotInTheFloorIsAskedAboutWhereOthersAreHeard(int lots, int specimens)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            AnalysisResult result = WithoutSource(
                Plan with { Seed = seed, Lots = lots, SpecimensPerLot = specimens }, s => s.Lot == "A", askedDb: 60);
            Finding told = Assert.Single(result.Findings, f => f.Code == "nothing-heard");
            Assert.Equal((Severity.Warning, null, "A", true), (told.Severity, told.Specimen, told.Lot, told.Misleads));
            Assert.StartsWith($"Nothing is heard behind any of the {specimens} specimens of lot A, where the best of "
                + $"{(lots - 1) * specimens} others shields 3", told.Message, StringComparison.Ordinal);
            Assert.StartsWith("Look whether the source was on and every cable tight while lot A was swept", told.NextStep,
                StringComparison.Ordinal);
            Assert.Equal((false, true), (result.MayPrefer, result.Verdict.Trust != Trust.Trustworthy));
            Assert.All(result.Verdict.Specimens, s => Assert.Equal(
                s.Name.Lot == "A" ? RequirementOutcome.CannotTell : RequirementOutcome.Fails, s.Outcome));
        }
    }

    [Fact]
    public void WhoIsAloneInItsLotIsHeldAgainstTheOtherLots()
    {
        AnalysisResult result = WithoutSource(Plan with { Lots = 3, SpecimensPerLot = 1 }, s => s.Lot == "B");
        Finding told = Assert.Single(result.Findings, f => f.Code == "nothing-heard");
        Assert.Equal(new SpecimenName("B", "B01"), told.Specimen);
        Assert.StartsWith("Nothing is heard behind B/B01, where the best of 2 others shields 3", told.Message,
            StringComparison.Ordinal);
    }

    // Nearly all of the 80 dB of range is used up by the others: a little better is enough.
    [Theory]
    [InlineData(65, 20)]
    [InlineData(65, 60)]
    [InlineData(70, 15)]
    public void ALotThatShieldsBetterWhereTheRangeEndsIsNotAskedAbout(double shieldingDb, double betterDb) =>
        Assert.Equal(0, Draws.Seeds(60).Count(seed => Rehearsed.Analysed(Plan with
        {
            Points = 21,
            Seed = seed,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
            LotSteps = [Step("B", betterDb, 1)],
        }).Findings.Any(f => f is { Code: "nothing-heard", Misleads: true })));

    // A dozen decibels over the best of its lot: better cloth may do so. Where nothing but silence meets what is
    // asked, it is asked about all the same.
    [Theory]
    [InlineData(67, true)]
    [InlineData(52, false)]
    public void WhatMeetsBySilenceAloneIsAskedAbout(double askedDb, bool isAsked)
    {
        RehearsalPlan uneven = Plan with { Lots = 1, ShieldingStartDb = 63, ShieldingStopDb = 63 };
        foreach (ulong seed in Draws.Seeds(20))
        {
            AnalysisResult result = Analysis.Run(
                Silenced(uneven with { Seed = seed }, s => s.Specimen == "A02") with
                {
                    ReferenceTaking = SweepTaking.BeforeAndAfter,
                }, Asking(askedDb));
            Finding told = Assert.Single(result.Findings, f => f.Code == "nothing-heard");
            Assert.Equal((isAsked, isAsked ? Severity.Warning : Severity.Note), (told.Misleads, told.Severity));
        }
    }

    // The lot that is better, and in the floor, where the other does not meet what is asked.
    [Theory]
    [InlineData(70, true)]
    [InlineData(50, false)]
    public void ALotThatMeetsBySilenceAloneIsAskedAbout(double askedDb, bool isAsked)
    {
        Taken better = Taken.With(Plan with { ShieldingStartDb = 64, ShieldingStopDb = 64, LotSteps = [Step("B", 40, 1)] });
        AnalysisResult result = (Referenced(better, SweepTaking.BeforeAndAfter) with { Stated = Asking(askedDb) }).Analysed();
        Finding told = Assert.Single(result.Findings, f => f.Code == "nothing-heard");
        Assert.Equal(("B", isAsked), (told.Lot, told.Misleads));
    }

    // Metal beside cloth: these sweeps cannot tell, one of an opened piece of that lot can. One of another lot cannot.
    [Theory]
    [InlineData("B", false)]
    [InlineData("A", true)]
    public void AnOpenedPieceOfTheLotSettlesIt(string lot, bool isAsked)
    {
        Taken better = Taken.With(Plan with { LotSteps = [Step("B", 100, 1)] });
        Sweep opened = better.Campaign.Sweeps.First(s => s.Role == SweepRole.Covered && s.Lot == lot);
        double raisedDb = lot == "B" ? 50 : 0;
        Assert.Equal(isAsked, better.And(opened.Shifted(raisedDb).As(name: "covered/opened.csv", excluded: "opened")).Analysed()
            .Findings.Any(f => f.Code == "nothing-heard"));
    }

    // The antenna brings noise that the closed input did not show: a little over the floor is no source.
    [Theory]
    [InlineData(0.5)]
    [InlineData(2)]
    [InlineData(4)]
    public void NoiseALittleOverTheFloorIsNoSource(double overDb)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            RehearsalPlan plan = Plan with { Seed = seed };
            Finding all = Assert.Single(Told(plan, _ => true, overDb));
            Assert.Equal((true, true), (all.IsOfAll, all.Misleads));
            Assert.Equal("A", Assert.Single(Told(plan, s => s.Lot == "A", overDb)).Lot);
            Assert.Equal(new SpecimenName("A", "A02"),
                Assert.Single(Told(plan, s => s is { Lot: "A", Specimen: "A02" }, overDb)).Specimen);
        }
    }

    // fixtures/oracles/wrong-campaigns.R.
    [Theory]
    [InlineData("clean", null)]
    [InlineData("source-off-behind-one", "Nothing is heard behind A/s2: it rises less than 6 dB over the floor at")]
    [InlineData("source-off-behind-all", "Nothing is heard behind any of 3 specimens: no covered level rises 6 dB over")]
    [InlineData("source-off-behind-other-attenuator",
        "Nothing is heard behind any of 3 specimens: all covered levels lie within 6 dB of the floor or run parallel to it, 12.")]
    [InlineData("transmitter-over-silence",
        "Nothing is heard behind any of 3 specimens: no covered level rises 6 dB over the floor, but for 8 of 41 frequencies")]
    [InlineData("transmitters-apart-over-silence",
        "Nothing is heard behind any of 3 specimens: no covered level rises 6 dB over the floor, but for 14 of 41 frequencies")]
    [InlineData("transmitter-band-over-silence",
        "Nothing is heard behind any of 3 specimens: no covered level rises 6 dB over the floor, but for 15 of 41 frequencies")]
    [InlineData("heard-at-a-third", null)]
    public void ASourceThatRLeftOffIsAskedAbout(string drawn, string? said)
    {
        AnalysisResult result = Analysis.Run(DrawnByR.Campaign(drawn), new AnalysisPlan { Averaging = Averaging.Power });
        Finding? told = result.Findings.SingleOrDefault(f => f.Code == "nothing-heard");
        Assert.Equal(said is not null, told is { Misleads: true });
        Assert.StartsWith(said ?? string.Empty, told?.Message ?? string.Empty, StringComparison.Ordinal);
    }

    // What every specimen seems to meet is not relied on.
    [Fact]
    public void WhereNothingIsHeardNothingIsMet()
    {
        AnalysisResult result = WithoutSource(Plan, _ => true, askedDb: 40);
        Assert.Equal((RequirementOutcome.CannotTell, false), (result.Verdict.Requirement, result.MayPrefer));
    }

    // With a reference on either side something was there to hear; without, nobody may say that it can be trusted.
    [Fact]
    public void WhereNothingShowsTheSourceTheMeasurementIsNotReliedOn()
    {
        Taken silent = Taken.With(Plan with { ShieldingStartDb = 150, ShieldingStopDb = 150 });
        AnalysisResult untimed = Referenced(silent, SweepTaking.Unstated).Analysed();
        AnalysisResult around = Referenced(silent, SweepTaking.BeforeAndAfter).Analysed();
        Assert.Equal((Severity.Fault, Trust.Untrustworthy),
            (Assert.Single(untimed.Findings, f => f.Code == "nothing-heard").Severity, untimed.Verdict.Trust));
        Assert.Equal((Severity.Warning, Trust.Limited),
            (Assert.Single(around.Findings, f => f.Code == "nothing-heard").Severity, around.Verdict.Trust));
    }

    // Three to five dB over the floor, with the ripple of the reference: perhaps the source, and so no fault.
    [Theory]
    [InlineData(77.5, Severity.Warning)]
    [InlineData(150, Severity.Fault)]
    public void WhatHasTheRippleOfTheReferenceIsNoFault(double shieldingDb, Severity severity)
    {
        RehearsalPlan near = Plan with
        {
            Points = 101,
            CoveredSweeps = 5,
            ReferenceRippleDb = 4,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
            SpecimenDeviationDb = 0,
        };
        Assert.Equal(severity, Assert.Single(Referenced(Taken.With(near), SweepTaking.Unstated).Analysed().Findings,
            f => f.Code == "nothing-heard").Severity);
    }

    // A lot in the floor, a little above the best of the others: a reference on either side is enough to leave it alone.
    [Theory]
    [InlineData(SweepTaking.Unstated, true)]
    [InlineData(SweepTaking.Once, true)]
    [InlineData(SweepTaking.BeforeAndAfter, false)]
    public void WithoutAReferenceOnEitherSideALotInTheFloorIsAskedAbout(SweepTaking taken, bool isAsked)
    {
        Taken better = Taken.With(Plan with { ShieldingStartDb = 62, ShieldingStopDb = 62, LotSteps = [Step("B", 30, 1)] });
        AnalysisResult result = (Referenced(better, taken) with
        {
            Stated = better.Stated with { Requirement = Requirement.Constant(new Decibels(50)) },
        }).Analysed();
        Finding? told = result.Findings.SingleOrDefault(f => f is { Code: "nothing-heard", Misleads: true });
        Assert.Equal(isAsked ? "B" : null, told?.Lot);
        Assert.Equal(isAsked ? RequirementOutcome.CannotTell : RequirementOutcome.Meets, result.Verdict.Requirement);
        Assert.Equal(isAsked, told?.NextStep.Contains("a reference before and after", StringComparison.Ordinal) == true);
    }

    // Another attenuator: the noise lies far higher and keeps the shape of the floor, not that of the reference.
    [Theory]
    [InlineData(8)]
    [InlineData(15)]
    public void NoiseThatRunsParallelToTheFloorIsNoSource(double overDb)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            RehearsalPlan plan = Plan with { Seed = seed, ReferenceRippleDb = 6 };
            Finding all = Assert.Single(Told(plan, _ => true, overDb));
            Assert.Contains("or run parallel to it, ", all.Message, StringComparison.Ordinal);
            Finding one = Assert.Single(Told(plan, s => s is { Lot: "A", Specimen: "A02" }, overDb));
            Assert.Equal(new SpecimenName("A", "A02"), one.Specimen);
            Assert.StartsWith("Nothing is heard behind A/A02: it runs parallel to the floor, ", one.Message,
                StringComparison.Ordinal);
        }
    }

    // Noise from outside that keeps no shape of the floor: it scatters as noise does, where a signal would be steadier.
    [Theory]
    [InlineData(3, 3.5, 1)]
    [InlineData(8, 4, 1)]
    [InlineData(3, 8, 2)]
    [InlineData(12, 5, 1)]
    public void NoiseOfAnotherShapeScattersAsNoise(double endDb, double moreDb, double power)
    {
        var asked = new AnalysisPlan { Averaging = Averaging.Power };
        foreach (ulong seed in Draws.Seeds(20))
        {
            RehearsalPlan plan =
                Plan with { Seed = seed, Points = 101, ReferenceRippleDb = 6, CoveredSweeps = 4, FloorSweeps = 8 };
            Campaign Lifted(Func<Sweep, bool> off) => Rehearsed.Changed(Silenced(plan, off), (s, f, level) =>
                s.Role == SweepRole.Covered && off(s) ? level + endDb + (moreDb * Math.Pow(1 - (f / 100.0), power)) : level);
            Finding all = Assert.Single(Analysis.Run(Lifted(_ => true), asked).Findings, f => f.Code == "nothing-heard");
            Assert.Contains("or scatter as noise does, up to ", all.Message, StringComparison.Ordinal);
            Finding one = Assert.Single(Analysis.Run(Lifted(s => s is { Lot: "A", Specimen: "A02" }), asked).Findings,
                f => f.Code == "nothing-heard");
            Assert.Equal(new SpecimenName("A", "A02"), one.Specimen);
        }
    }

    // A signal in noise scatters less: by hand, s = 1 and 3 (3.01 and 6.02 dB), 3/4 and 7/16.
    [Theory]
    [InlineData(0, 1)]
    [InlineData(3.010299957, 0.75)]
    [InlineData(6.020599913, 0.4375)]
    public void TheScatterOfASignalInNoiseIsThatOfTheFormula(double riseDb, double share) =>
        Assert.Equal(share, NoiseScatter.OfNoise(riseDb), 8);

    // Three to fourteen dB over the floor, without ripple: only its scatter shows that it is a signal.
    [Theory]
    [InlineData(70, 0)]
    [InlineData(74, 0)]
    [InlineData(76, 6)]
    [InlineData(66, 0)]
    public void ClothThatNearsTheFloorIsHeard(double shieldingDb, double rippleDb) =>
        Assert.InRange(Draws.Seeds(60).Count(seed => Rehearsed.Analysed(Plan with
        {
            Seed = seed,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb - 4,
            ReferenceRippleDb = rippleDb,
            FloorDbm = -100,
        }).Findings.Any(f => f.Code == "nothing-heard")), 0, 0);

    // Eleven dB over the floor or more, whatever the shape of the reference: what comes through keeps it.
    [Theory]
    [InlineData(72, 0)]
    [InlineData(72, 6)]
    [InlineData(50, 6)]
    [InlineData(50, 0.5)]
    public void ClothThatKeepsTheShapeOfTheReferenceIsHeard(double shieldingDb, double rippleDb) =>
        Assert.Equal(0, Draws.Seeds(60).Count(seed => Rehearsed.Analysed(Plan with
        {
            Seed = seed,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
            ReferenceRippleDb = rippleDb,
            FloorDbm = -103,
        }).Findings.Any(f => f.Code == "nothing-heard")));

    // A seam that lets through at a fifth of the frequencies is heard: the source was on. At fewer a transmitter may be it.
    [Theory]
    [InlineData(0.25, false)]
    [InlineData(0.15, true)]
    public void ALotThatIsHeardSomewhereIsNotAskedAboutAsAWhole(double share, bool isAsked) => Assert.Equal(isAsked,
        Rehearsed.Analysed(Plan with { LotSteps = [Step("B", 100, 1), Step("B", -100, share)] }).Findings
            .Any(f => f is { Code: "nothing-heard", Lot: "B" }));

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
        }).Findings.Any(f => f is { Code: "nothing-heard", Specimen: not null, Misleads: true })));

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
            Assert.StartsWith("Open a specimen without touching source or cables, ", told.NextStep, StringComparison.Ordinal);
            Assert.NotEqual(Trust.Trustworthy, result.Verdict.Trust);
        }
    }

    // A sweep of the opened specimen that was left out for that shows that the source was heard; one of nothing does not, nor one
    // of a wider filter, nor one that lies higher than all that is sent.
    [Theory]
    [InlineData(50, false)]
    [InlineData(0, true)]
    [InlineData(14, true)]
    [InlineData(95, true)]
    public void AnOpenedSpecimenThatIsHeardSettlesIt(double raisedDb, bool isAsked)
    {
        Taken silent = Taken.With(Plan with { Lots = 1, ShieldingStartDb = 150, ShieldingStopDb = 150 });
        Sweep opened = silent.First(SweepRole.Covered).Shifted(raisedDb).As(name: "covered/opened.csv", excluded: "opened");
        Assert.Equal(isAsked, silent.And(opened).Analysed().Findings.Any(f => f.Code == "nothing-heard"));
    }

    // What rose for another reason, and was left out for it, shows nothing of the source.
    [Theory]
    [InlineData("opened", false)]
    [InlineData("Vorhang geöffnet", false)]
    [InlineData("a cable was loose", true)]
    [InlineData("offenbar ein Kabel lose", true)]
    [InlineData("was not opened", true)]
    [InlineData("opened, cables not touched", false)]
    public void OnlyASweepThatWasLeftOutBecauseItWasOpenedSettlesIt(string reason, bool isAsked)
    {
        Taken silent = Taken.With(Plan with { Lots = 1, ShieldingStartDb = 150, ShieldingStopDb = 150 });
        Sweep opened = silent.First(SweepRole.Covered).Shifted(50).As(name: "covered/opened.csv", excluded: reason);
        Assert.Equal(isAsked, silent.And(opened).Analysed().Findings.Any(f => f.Code == "nothing-heard"));
    }

    // Opened, it reads like the reference, on whichever side of it chance puts it; the band may hold less than was swept.
    [Fact]
    public void WhatWasOpenedMayLieALittleOverTheReference()
    {
        Taken silent = Taken.With(Plan with { Lots = 1, ShieldingStartDb = 150, ShieldingStopDb = 150 });
        Sweep covered = silent.First(SweepRole.Covered), reference = silent.First(SweepRole.Reference);
        Sweep opened = covered.As(levels: reference.Levels, name: "covered/opened.csv", excluded: "opened").Shifted(0.3);
        var half = new FrequencyBand(Plan.Band.Start, new Hertz((Plan.Band.Start.Value + Plan.Band.Stop.Value) / 2));
        foreach (AnalysisPlan stated in new[] { silent.Stated, silent.Stated with { Band = half } })
        {
            Assert.DoesNotContain((silent.And(opened) with { Stated = stated }).Analysed().Findings,
                f => f.Code == "nothing-heard");
        }
    }

    // A cable that was tightened on the way would acquit what came before: it has to be swept closed once more.
    [Theory]
    [InlineData(-1, false)]
    [InlineData(1, true)]
    public void WhereTimesAreKnownItIsClosedOnceMore(int sweepsAfterLast, bool isAsked)
    {
        Taken silent = Taken.With(Plan with
        {
            Lots = 1,
            ShieldingStartDb = 150,
            ShieldingStopDb = 150,
            StartsAt = new DateTimeOffset(2026, 3, 5, 18, 0, 0, TimeSpan.Zero),
        });
        Sweep last = silent.Campaign.Sweeps.Last(s => s is { Role: SweepRole.Covered, Specimen: "A01" });
        Sweep opened = last.Shifted(50).As(name: "covered/opened.csv", excluded: "opened",
            takenAt: last.TakenAt!.Value.AddSeconds(sweepsAfterLast));
        Assert.Equal(isAsked, silent.And(opened).Analysed().Findings.Any(f => f.Code == "nothing-heard"));
    }

    // Another lot was swept at another time: it is asked about by its name.
    [Fact]
    public void AnOpenedPieceOfOneSilentLotSettlesNoOther()
    {
        Taken silent = Taken.With(Plan with { ShieldingStartDb = 150, ShieldingStopDb = 150 });
        Sweep opened = silent.Campaign.Sweeps.First(s => s is { Role: SweepRole.Covered, Lot: "B" }).Shifted(50)
            .As(name: "covered/opened.csv", excluded: "opened");
        Finding told = Assert.Single(silent.And(opened).Analysed().Findings, f => f.Code == "nothing-heard");
        Assert.Equal("A", told.Lot);
        Assert.StartsWith("Nothing is heard behind any of 3 specimens of lot A: ", told.Message, StringComparison.Ordinal);
        Assert.StartsWith("Open a specimen of lot A without touching source or cables", told.NextStep, StringComparison.Ordinal);
    }

    // The one piece that truly shields better: opened, it is settled; another that was opened settles nothing for it.
    [Theory]
    [InlineData("A02", false)]
    [InlineData("A01", true)]
    public void ASilentSpecimenThatWasOpenedIsSettled(string opened, bool isAsked)
    {
        var taken = new Taken(Silenced(Plan, s => s is { Lot: "A", Specimen: "A02" }),
            new AnalysisPlan { Averaging = Averaging.Power });
        Sweep sweep = taken.Campaign.Sweeps.First(s => s is { Role: SweepRole.Covered } && s.Specimen == opened);
        Assert.Equal(isAsked, taken.And(sweep.Shifted(opened == "A02" ? 50 : 0).As(name: "covered/o.csv", excluded: "opened"))
            .Analysed().Findings.Any(f => f.Code == "nothing-heard"));
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

    // It transmits over all covered sweeps, and was silent while the floor was taken.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(8)]
    public void ATransmitterThatCameLaterShowsNoSource(int points)
    {
        Campaign Disturbed(Campaign drawn) => Rehearsed.Changed(drawn,
            (s, f, level) => s.Role == SweepRole.Covered && f >= 10 && f < 10 + points ? level + 30 : level);
        var power = new AnalysisPlan { Averaging = Averaging.Power };
        foreach (ulong seed in Draws.Seeds(20))
        {
            RehearsalPlan plan = Plan with { Seed = seed };
            AnalysisResult all = Analysis.Run(Disturbed(Silenced(plan, _ => true)), power);
            Finding told = Assert.Single(all.Findings, f => f.Code == "nothing-heard");
            Assert.Contains($"no covered level rises 6 dB over the floor, but for {points} of 41 frequencies at most, where "
                + "transmitters may be heard.",
                told.Message, StringComparison.Ordinal);
            Assert.NotEqual(Trust.Trustworthy, all.Verdict.Trust);
            Finding lot = Assert.Single(Analysis.Run(Disturbed(Silenced(plan, s => s.Lot == "A")), power).Findings,
                f => f.Code == "nothing-heard");
            Assert.Equal("A", lot.Lot);
        }
    }

    // Transmitters all over the band, each with the floor on either side: no stretch of it is heard.
    [Theory]
    [InlineData(SweepTaking.Unstated)]
    [InlineData(SweepTaking.BeforeAndAfter)]
    public void TransmittersThatStandAloneShowNoSource(SweepTaking taken)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            AnalysisResult result = Analysis.Run(Disturbed(Plan with { Seed = seed }, taken, f => f % 3 == 0), Asking(40));
            Finding told = Assert.Single(result.Findings, f => f.Code == "nothing-heard");
            Assert.Contains(", but for 14 of 41 frequencies at most, where transmitters may be heard.", told.Message,
                StringComparison.Ordinal);
            Assert.Equal((RequirementOutcome.CannotTell, true), (result.Verdict.Requirement, told.Misleads));
        }
    }

    // Side by side they have levels of their own, whatever the reference does. Between two references it is asked about where the
    // level falls into the floor at once.
    [Theory]
    [InlineData(SweepTaking.Unstated, 0, true)]
    [InlineData(SweepTaking.Once, 5, true)]
    [InlineData(SweepTaking.BeforeAndAfter, 5, false)]
    public void ABandOfTransmittersShowsNoSource(SweepTaking taken, double rippleDb, bool isAsked)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            RehearsalPlan plan = Plan with { Seed = seed, ReferenceRippleDb = rippleDb };
            AnalysisResult result = Analysis.Run(
                Disturbed(plan, taken, f => f is >= 10 and < 25, f => 8 * Math.Sin(f * f)), Asking(40));
            Finding told = Assert.Single(result.Findings, f => f.Code == "nothing-heard");
            Assert.Equal((isAsked, true), (told.Where.IsEmpty, told.Misleads));
            Assert.Equal(RequirementOutcome.CannotTell, result.Verdict.Requirement);
            string? left = result.Checks.Single(c => c.Code == "nothing-heard").LeftBecause;
            Assert.Equal(isAsked ? null : "6 specimens are heard at less than half of the frequencies and not in the reference's "
                + "shape, as transmitters may be",
                left?.Contains("transmitters", StringComparison.Ordinal) == true ? left : null);
            Assert.NotEqual(Trust.Trustworthy, result.Verdict.Trust);
        }
    }

    // One seam clears the source for all of them.
    [Fact]
    public void OneThatIsHeardSomewhereClearsTheSource() => Assert.DoesNotContain(
        Rehearsed.Analysed(Plan with { LotSteps = [Step("A", 100, 1), Step("B", 100, 1), Step("B", -100, 0.25)] }).Findings,
        f => f is { Code: "nothing-heard", IsOfAll: true });

    // fixtures/oracles/wrong-campaigns.R: the upper 14 of 41 frequencies.
    [Theory]
    [InlineData("stopped-behind-one", "Nothing is heard behind A/s2 at 14 of 41 frequencies, as if the source had stopped ")]
    [InlineData("stopped-behind-all", "Nothing is heard behind all 3 specimens at 14 of 41 frequencies, as if ")]
    public void ASourceThatRStoppedInAPartOfTheBandIsAskedAbout(string drawn, string said)
    {
        AnalysisResult result = Analysis.Run(DrawnByR.Campaign(drawn), Asking(35));
        Finding told = Assert.Single(result.Findings, f => f.Code == "nothing-heard");
        Assert.StartsWith(said, told.Message, StringComparison.Ordinal);
        Assert.Equal((28e6, 41e6), (Assert.Single(told.Where).Start.Value, told.Where[0].Stop.Value));
        Assert.Equal((RequirementOutcome.CannotTell, false), (result.Verdict.Specimens[1].Outcome, result.MayPrefer));
    }

    // Cloth that sinks into the floor at some place, smooth or rough, with few sweeps or many.
    [Theory]
    [InlineData(40, 110, 0, 2)]
    [InlineData(70, 90, 6, 5)]
    [InlineData(110, 50, 3, 3)]
    [InlineData(60, 100, 12, 2)]
    public void ClothThatSinksIntoTheFloorIsLeftAlone(double startDb, double stopDb, double rippleDb, int sweeps) =>
        Assert.Equal(0, Draws.Seeds(60).Count(seed => Rehearsed.Analysed(Plan with
        {
            Seed = seed,
            Points = 101,
            ShieldingStartDb = startDb,
            ShieldingStopDb = stopDb,
            ReferenceRippleDb = rippleDb,
            CoveredSweeps = sweeps,
            ScatterDb = 1,
        }).Findings.Any(f => f is { Code: "nothing-heard", Misleads: true })));

    // Cloth that sinks into the floor does so over some frequencies; an opened piece settles the rest.
    [Fact]
    public void WhereTheLevelStopsAnOpenedPieceSettlesIt()
    {
        Taken stopped = Taken.With(Plan with { LotSteps = [Step("A", 100, 0.5), Step("B", 100, 0.5)] });
        Assert.Contains(stopped.Analysed().Findings, f => f is { Code: "nothing-heard", IsOfAll: true });
        Sweep opened = stopped.First(SweepRole.Reference);
        Sweep closed = stopped.First(SweepRole.Covered);
        Assert.DoesNotContain(stopped.And(closed.As(levels: opened.Levels, name: "covered/o.csv", excluded: "opened"))
            .Analysed().Findings, f => f.Code == "nothing-heard");
        // One that rises where the source still sends only, shows that it stopped.
        double[] still = [.. opened.Levels.Select((l, f) => f < 22 ? closed.Levels[f] : l)];
        Assert.Contains(stopped.And(closed.As(levels: [.. still], name: "covered/o.csv", excluded: "opened"))
            .Analysed().Findings, f => f.Code == "nothing-heard");
    }

    // A broad transmitter that the floor holds as well hides what comes through.
    [Fact]
    public void WhereTheFloorHoldsATransmitterNothingIsKnown()
    {
        RehearsalPlan plan = Plan with { Points = 101, FloorSweeps = 5 };
        Campaign broad = Rehearsed.Changed(Rehearser.Draw(plan).Campaign, (s, f, level) => f is < 40 or >= 52 ? level
            : 10 * Math.Log10(Math.Pow(10, level / 10) + Math.Pow(10, -5.5 + (0.1 * Math.Sin(f)))));
        Assert.DoesNotContain(Analysis.Run(broad, new AnalysisPlan { Averaging = Averaging.Power }).Findings,
            f => f is { Code: "nothing-heard", Where.IsEmpty: false });
    }

    // Where the receiver changes its range the floor steps, and the level over it with it.
    [Fact]
    public void AStepOfTheFloorIsNoSourceThatStopped()
    {
        RehearsalPlan steady = Plan with { ShieldingStartDb = 60, ShieldingStopDb = 60, FloorDbm = -95 };
        Campaign stepped = Rehearsed.Changed(Rehearser.Draw(steady).Campaign, (s, f, level) => f < 20 ? level
            : s.Role == SweepRole.Floor ? level + 12
            : s.Role == SweepRole.Covered ? 10 * Math.Log10(Math.Pow(10, level / 10) + Math.Pow(10, -8.3)) : level);
        Assert.DoesNotContain(Analysis.Run(stepped, new AnalysisPlan { Averaging = Averaging.Power }).Findings,
            f => f is { Code: "nothing-heard", Where.IsEmpty: false });
    }

    [Fact]
    public void OnlyAFloorIsNeeded()
    {
        Assert.Equal((null, null), Made(Plan with { Lots = 3, SpecimensPerLot = 1 }));
        Assert.Equal((null, null), Made(Plan with { Lots = 1, SpecimensPerLot = 1 }));
        Assert.Equal(("no floor sweep is in use and no floor is declared", null), Made(Plan with { FloorSweeps = 0 }));
    }

    // Eight dB over the floor, of few frequencies and few sweeps: nothing could tell it from noise.
    [Theory]
    [InlineData(15, 6, 2, true)]
    [InlineData(15, 6, 3, false)]
    [InlineData(20, 6, 2, false)]
    [InlineData(20, 0, 2, true)]
    public void WhereNothingTellsNoiseFromASignalItIsSaid(int points, double rippleDb, int sweeps, bool isSaid)
    {
        (string? untested, string? left) = Made(Plan with
        {
            Points = points,
            Lots = 1,
            SpecimensPerLot = 1,
            ReferenceRippleDb = rippleDb,
            Placements = 1,
            CoveredSweeps = sweeps,
            ShieldingStartDb = 72,
            ShieldingStopDb = 72,
        });
        Assert.Null(untested);
        Assert.Equal(isSaid ? "1 specimen near the floor may be noise alone, and to tell takes 20 frequencies and a reference "
            + "with ripple, or more sweeps" : null, left);
    }

    private static (string? Untested, string? Left) Made(RehearsalPlan plan)
    {
        CheckRun run = Rehearsed.Analysed(plan).Checks.Single(c => c.Code == "nothing-heard");
        return (run.UntestedBecause, run.LeftBecause);
    }

    private static Taken Referenced(Taken taken, SweepTaking when) =>
        taken with { Campaign = taken.Campaign with { ReferenceTaking = when } };

    // From the start of the band over a share of it, by log frequency.
    private static LotStep Step(string lot, double decibels, double share) => new(lot, new Decibels(decibels),
        new FrequencyBand(Plan.Band.Start, new Hertz(Plan.Band.Start.Value
            * Math.Pow(Plan.Band.Stop.Value / Plan.Band.Start.Value, share) * 1.001)));

    private static AnalysisResult WithoutSource(RehearsalPlan plan, Func<Sweep, bool> off, double? askedDb = null) =>
        Analysis.Run(Silenced(plan, off), new AnalysisPlan
        {
            Averaging = Averaging.Power,
            Requirement = askedDb is { } asked ? Requirement.Constant(new Decibels(asked)) : null,
        });

    private static AnalysisPlan Asking(double decibels) =>
        new() { Averaging = Averaging.Power, Requirement = Requirement.Constant(new Decibels(decibels)) };

    // The source off behind all; what transmits at some frequencies came after the floor was taken.
    private static Campaign Disturbed(
        RehearsalPlan plan, SweepTaking taken, Func<int, bool> transmits, Func<int, double>? byDb = null) => Rehearsed
        .Changed(Silenced(plan, _ => true), (s, f, level) =>
            s.Role == SweepRole.Covered && transmits(f) ? level + 30 + (byDb?.Invoke(f) ?? 0) : level) with
        {
            ReferenceTaking = taken,
        };

    private static IEnumerable<Finding> Told(RehearsalPlan plan, Func<Sweep, bool> off, double overDb) => Analysis
        .Run(Over(Silenced(plan, off), off, overDb), new AnalysisPlan { Averaging = Averaging.Power })
        .Findings.Where(f => f.Code == "nothing-heard");

    private static Campaign Over(Campaign drawn, Func<Sweep, bool> off, double overDb) => drawn with
    {
        Sweeps = [.. drawn.Sweeps.Select(s => s.Role == SweepRole.Covered && off(s) ? s.Shifted(overDb) : s)],
    };

    // The same bench behind a cloth of 150 dB: noise alone.
    private static Campaign Silenced(RehearsalPlan plan, Func<Sweep, bool> off)
    {
        ILookup<string, Sweep> silent = Taken
            .With(plan with { ShieldingStartDb = 150, ShieldingStopDb = 150 }).Campaign.Sweeps.ToLookup(s => s.Name);
        Campaign drawn = Taken.With(plan).Campaign;
        return drawn with
        {
            Sweeps = [.. drawn.Sweeps.Select(s => s.Role == SweepRole.Covered && off(s) ? silent[s.Name].Single() : s)],
        };
    }
}
