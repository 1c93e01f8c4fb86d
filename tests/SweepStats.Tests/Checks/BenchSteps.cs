using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.StudyRuns.Lasting;
using SweepStats.Sweeps;

namespace SweepStats.Tests.Checks;

/// <summary>
/// One rehearsed bench for each way in which each check finds something, and the same bench after its next step.
/// </summary>
internal static class BenchSteps
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan;
    private static readonly RehearsalPlan Long = Plan with { Points = 201 };

    private static readonly AnalysisPlan Power = new() { Averaging = Averaging.Power };

    public static IReadOnlyList<BenchStep> All { get; } =
        [.. Range(), .. Overload(), .. Repeats(), .. Surroundings(), .. Statements()];

    private static AnalysisPlan Asking(double decibels) =>
        Power with { Requirement = Requirement.Constant(new Decibels(decibels)) };

    private static IEnumerable<BenchStep> Range()
    {
        RehearsalPlan blind = Plan with { FloorSweeps = 0 };
        yield return new("no-floor", "no floor at all", Severity.Warning, "at least three floor sweeps", Taken.With(blind),
            Taken.With(blind with { FloorSweeps = 3 }));
        var lost = new UnreadFile("floor/f1.csv", SweepRole.Floor, "the file does not say the unit of level",
            "set level_unit under [setup] in campaign.toml");
        Taken unread = Taken.With(blind);
        yield return new("files-unread", "floor files without a unit", Severity.Warning, "set level_unit",
            unread with { Campaign = unread.Campaign with { Unread = [lost, lost with { File = "floor/f2.csv" }] } },
            Taken.With(blind with { FloorSweeps = 3 }));
        yield return new("no-floor", "floor files that could not be read", Severity.Warning, "Mend the 1 floor file",
            unread with { Campaign = unread.Campaign with { Unread = [lost] } }, Taken.With(blind with { FloorSweeps = 3 }));
        yield return new("no-floor", "a declared floor", Severity.Warning, "at least three floor sweeps",
            Taken.With(blind, Power with { DeclaredFloorDb = -100 }),
            Taken.With(blind with { FloorSweeps = 3 }, Power with { DeclaredFloorDb = -100 }));

        Taken rippled = Taken.With(Plan with { ReferenceRippleDb = 3 });
        yield return new("dead-floor", "an input that is not connected", Severity.Fault, "take the floor sweeps again",
            rippled.But(s => s.Role == SweepRole.Floor ? s.As(levels: [.. s.Levels.Select(_ => -140.0)]) : s), rippled);
        yield return new("dead-floor", "a display that ends in the noise", Severity.Fault, "Lower the bottom of the display",
            rippled.But(s => s.Role == SweepRole.Floor ? s.CutAt(-99.6) : s), rippled);
        yield return new("dead-floor", "a display that ends at the lowest noise", Severity.Note,
            "Lower the bottom of the display", rippled.But(s => s.Role == SweepRole.Floor ? s.CutAt(-101.2) : s), rippled);
        Taken whole = Taken.With(Plan with { ReferenceRippleDb = 3, QuantisationDb = 1, Looks = 10_000, ShieldingStopDb = 50 });
        yield return new("dead-floor", "long averages in whole decibels", Severity.Warning, "more digits", whole,
            Taken.With(Plan with { ReferenceRippleDb = 3, Looks = 10_000, ShieldingStopDb = 50 }));
        yield return new("no-life", "a reference that is no reading", Severity.Fault, "take the sweeps again",
            rippled.But(s => s.Role == SweepRole.Reference ? s.As(levels: [.. s.Levels.Select(_ => -20.0)]) : s), rippled);
        yield return new("no-life", "a covered level that is no reading", Severity.Fault, "take the sweeps again",
            rippled.But(s => s.Role == SweepRole.Covered ? s.As(levels: [.. s.Levels.Select(_ => -80.0)]) : s), rippled);
        Taken falling = Taken.With(Plan with { ReferenceRippleDb = 3, ShieldingStopDb = 60 });
        yield return new("no-life", "a display that ends above the covered level", Severity.Warning,
            "Lower the bottom of the display", falling.But(s => s.Role == SweepRole.Covered ? s.CutAt(-83) : s), falling);

        // The bounds reach what is asked, so that the floor once taken has nothing worse to say.
        RehearsalPlan unseen = Long with { FloorSweeps = 0, ReferenceRippleDb = 6, ShieldingStopDb = 100 };
        yield return new("suspected-floor", "noise taken for signal", Severity.Warning, "Take floor sweeps",
            Taken.With(unseen, Asking(35)), Taken.With(unseen with { FloorSweeps = 3 }, Asking(35)));

        // 15.0 dB are missing, rounded up.
        RehearsalPlan opaque = Plan with { ShieldingStartDb = 84, ShieldingStopDb = 84 };
        yield return new("under-ranged", "more asked than the range shows", Severity.Warning, "16 dB more source power",
            Taken.With(opaque, Asking(80)), Taken.With(opaque with { ReferenceDbm = Plan.ReferenceDbm + 16 }, Asking(80)));
        RehearsalPlan dead = Plan with { ReferenceDbm = -95, ShieldingStartDb = 2, ShieldingStopDb = 2 };
        yield return new("under-ranged", "a reference in the noise", Severity.Fault, "source power", Taken.With(dead),
            Taken.With(dead with { ReferenceDbm = -60 }));

        RehearsalPlan hidden = Plan with { ShieldingStartDb = 60, ShieldingStopDb = 78 };
        yield return new("capped", "the floor in the way", Severity.Warning, "a tenth gives 10 dB", Taken.With(hidden),
            Taken.With(hidden with { FloorDbm = hidden.FloorDbm - 20 }));
        RehearsalPlan near = Plan with { ShieldingStartDb = 65, ShieldingStopDb = 65 };
        yield return new("near-floor", "noise in the covered level", Severity.Note, "make more range", Taken.With(near),
            Taken.With(near with { FloorDbm = near.FloorDbm - 10 }));
    }

    private static IEnumerable<BenchStep> Overload()
    {
        // The highest point of a reference at −30 dBm lies a little more than 10 dB above −40 dBm.
        AnalysisPlan limited = Power with { MaximumInputDbm = -40 };
        yield return new("over-input", "a reference above the stated maximum", Severity.Fault, "11 dB more attenuation",
            Taken.With(Plan, limited), Taken.With(Plan with { ReferenceDbm = Plan.ReferenceDbm - 11 }, limited));
        RehearsalPlan rippled = Long with { ReferenceRippleDb = 4 };
        yield return new("saturation-plateau", "a flat top", Severity.Fault, "raise the top of the display",
            Taken.With(rippled with { LimitDbm = -31 }), Taken.With(rippled));
        RehearsalPlan stepped = Plan with { LinearitySourcesDbm = [-10, 0, 10], CompressionDbm = -30 };
        yield return new("saturation-step", "a receiver that no longer follows", Severity.Fault,
            "put attenuation before the receiver", Taken.With(stepped),
            Taken.With(stepped with { ReferenceDbm = stepped.ReferenceDbm - 20 }));
        Taken followed = Taken.With(Plan with { LinearitySourcesDbm = [-10, 0] }, Power with { SourceDbm = 10 });
        yield return new("source-step", "a reference taken with another attenuator", Severity.Fault,
            "which sweeps had other settings", followed.But(s => s.Role == SweepRole.Reference ? s.Shifted(6) : s), followed);
        yield return new("linearity-untested", "no step of the source taken", Severity.Note, "Step the source down",
            Taken.With(Plan), Taken.With(Plan with { LinearitySourcesDbm = [0, 10] }));

        RehearsalPlan leaking = Plan with { PlateSweeps = 3, PlateDb = 45 };
        yield return new("leakage", "a way round the specimen", Severity.Warning, "seal the edges", Taken.With(leaking),
            Taken.With(leaking with { PlateDb = 110 }));
        Taken sealedUp = Taken.With(leaking with { PlateDb = 110, PlateSweeps = 20 });
        yield return new("leakage", "a plate on other frequencies", Severity.Note, "the same start, stop and number of points",
            sealedUp.But(s => s.Role == SweepRole.Plate ? s.WithoutFirstPoint() : s), sealedUp);
    }

    // The same path from its other end, with something beside it that reads 2 dB higher behind the specimen.
    private static Taken BothEnds(double beside) =>
        Taken.With(Plan).But(s => s.As(reverse: [.. s.Levels.Select(l => l + (s.Role == SweepRole.Covered ? beside : 0.3))]));

    private static IEnumerable<BenchStep> Repeats()
    {
        yield return new("two-ways", "a way round in one direction", Severity.Warning, "look for a way round",
            BothEnds(2.3), BothEnds(0.3));
        RehearsalPlan ofThree = Plan with { SpecimensPerLot = 3, CoveredSweeps = 3 };
        Taken three = Taken.With(ofThree);
        yield return new("lost-sign", "an export without signs", Severity.Fault, "minus sign again",
            three.But(s => s is { Specimen: "A02" } ? s.As(levels: [.. s.Levels.Select(l => -l)]) : s), three);
        yield return new("wrong-unit", "a reference in dBµV that is called dBm", Severity.Warning, "are in dBm",
            three.But(s => s.Role == SweepRole.Reference ? s.Shifted(106.99) : s), three);
        yield return new("not-in-place", "a specimen that was forgotten", Severity.Fault, "put it in place and sweep it again",
            three.But(s => s is { Specimen: "A02" } ? s.Shifted(40) : s), three);
        yield return new("not-in-place", "a bench that was never closed", Severity.Warning, "whether the bench was closed",
            Taken.With(ofThree with { ShieldingStartDb = 0, ShieldingStopDb = 0 }), three);
        ILookup<string, Sweep> silent =
            Taken.With(ofThree with { ShieldingStartDb = 150, ShieldingStopDb = 150 }).Campaign.Sweeps.ToLookup(s => s.Name);
        yield return new("nothing-heard", "a source that was off", Severity.Warning, "whether the source was on",
            three.But(s => s is { Specimen: "A02" } ? silent[s.Name].Single() : s), three);
        Taken bothLots = Taken.With(ofThree with { Lots = 2 });
        yield return new("nothing-heard", "a cable that was loose for a whole lot", Severity.Warning,
            "whether the source was on and every cable tight",
            bothLots.But(s => s.Lot == "A" ? silent[s.Name].Single() : s), bothLots);

        RehearsalPlan steady =
            Plan with { SweepDeviationDb = 0.1, StartsAt = new DateTimeOffset(2026, 3, 5, 18, 0, 0, TimeSpan.Zero) };
        yield return new("drift", "a source that warms up", Severity.Warning, "take the sweeps again",
            Taken.With(steady with { DriftDb = 2 }), Taken.With(steady));
        yield return new("drift", "a reference that is another at the end", Severity.Fault,
            "take the reference again until it stays", Taken.With(steady with { DriftDb = -5 }), Taken.With(steady));

        Taken bracketed = Taken.With(steady);
        yield return new("reference-once", "no reference after the specimens", Severity.Warning, "after the specimens",
            bracketed.But(s => s.Role == SweepRole.Reference
                ? s.As(takenAt: steady.StartsAt!.Value.AddMinutes(s.TakenAt!.Value.Minute / 60.0)) : s), bracketed);

        // Left out with its reason, and one more taken.
        RehearsalPlan six = Plan with { SweepDeviationDb = 0.1, ReferenceSweeps = 6 };
        Taken odd = Taken.With(six with { OddSweeps = [new SweepStats.Rehearsal.OddSweep(SweepRole.Reference, 2, -3)] });
        Sweep touched = odd.Campaign.Sweeps.Where(s => s.Role == SweepRole.Reference).ElementAt(1);
        Sweep again = Taken.With(six with { Seed = 99 }).First(SweepRole.Reference).As(name: "reference/again.csv");
        yield return new("odd-sweep", "a cable that was touched", Severity.Warning, "exclude the sweep", odd,
            odd.But(s => s == touched ? s.As(excluded: "cable touched") : s).And(again));
        Taken placedSix = Taken.With(Plan with { SweepDeviationDb = 0.1, Placements = 3, CoveredSweeps = 5 });
        Sweep[] dead = [.. placedSix.Campaign.Sweeps.Where(s => s.Placement is not null).GroupBy(s => s.Placement)
            .SelectMany(p => p.Take(3))];
        yield return new("two-levels", "a cable that was loose for most sweeps", Severity.Warning, "take them again",
            placedSix.But(s => dead.Contains(s) ? s.Shifted(-5) : s), placedSix);
        Taken ofPairs = Taken.With(Plan with { SweepDeviationDb = 0.1, SpecimensPerLot = 3, Placements = 3, CoveredSweeps = 2 });
        Sweep[] seconds = [.. ofPairs.Campaign.Sweeps.Where(s => s.Specimen == "A02").GroupBy(s => s.Placement)
            .Select(p => p.Last())];
        yield return new("restless-sweeps", "a cable that was loose for one of two sweeps of each placement", Severity.Warning,
            "take them again", ofPairs.But(s => seconds.Contains(s) ? s.Shifted(-6) : s), ofPairs);
        Taken ofLot = Taken.With(Plan with { SpecimensPerLot = 3, SpecimenDeviationDb = 0.5 });
        yield return new("odd-specimen", "a cable that was loose behind one specimen", Severity.Warning, "sweep A/A02 once more",
            ofLot.But(s => s.Specimen == "A02" ? s.Shifted(-12) : s), ofLot);
        var quick = new LastingCell(LastingKind.EachFrequency, 6, 0.8) { Points = 61 };
        yield return new("sweeps-alike", "sweeps in quick succession", Severity.Warning, "Wait longer between sweeps",
            new Taken(LastingStudy.Draw(quick, 1), Power), new Taken(LastingStudy.Draw(quick with { Strength = 0 }, 1), Power));
        yield return new("non-normal", "a loose contact", Severity.Note, "a loose connector",
            Taken.With(Long with { JumpShare = 0.02, JumpDb = -2 }), Taken.With(Long));
        Taken even = Taken.With(Long);
        var loose = new RandomSource(11);
        yield return new("non-normal", "a loose contact in one role", Severity.Warning, "a loose connector",
            even.But(s => s.Role == SweepRole.Reference
                ? s.As(levels: [.. s.Levels.Select(l => loose.Uniform() < 0.08 ? l - 2 : l)]) : s), even);

        yield return new("too-few-repeats", "one covered sweep", Severity.Warning, "better five",
            Taken.With(Plan with { CoveredSweeps = 1 }), Taken.With(Plan));
        yield return new("too-few-repeats", "two reference sweeps", Severity.Warning, "a third sweep, better five",
            Taken.With(Plan with { ReferenceSweeps = 2 }), Taken.With(Plan));
        yield return new("too-few-repeats", "one floor sweep", Severity.Note, "at least three floor sweeps",
            Taken.With(Plan with { FloorSweeps = 1 }), Taken.With(Plan with { FloorSweeps = 3 }));

        Taken clean = Taken.With(Plan);
        Sweep kept = clean.First(SweepRole.Covered);
        yield return new("duplicate-sweep", "a file copied", Severity.Warning, "take the missing sweep again",
            clean.And(kept.As(name: "covered/copy.csv")), Taken.With(Plan with { CoveredSweeps = 6 }));
        Sweep reference = clean.First(SweepRole.Reference);
        yield return new("duplicate-sweep", "a reference sweep as a covered one", Severity.Fault, "take the missing sweep again",
            clean.But(s => s == kept ? s.As(levels: reference.Levels) : s), clean);

        Taken apart = Taken.With(Plan with { Placements = 3, CoveredSweeps = 4 });
        Sweep original = apart.First(SweepRole.Covered);
        Sweep MadeFromIt(Sweep s) =>
            s == original ? s : s.As(levels: [.. original.Levels.Select((l, f) => l + (0.002 * (f * s.Name[^1] % 7)))]);
        yield return new("near-copy", "sweeps made from one", Severity.Warning, "take the sweeps again",
            apart.But(s => s is { Role: SweepRole.Covered, Placement: "p1" } ? MadeFromIt(s) : s), apart);
        yield return new("wrong-kind", "a reference with the specimen on", Severity.Fault, "take it again",
            clean.But(s => s == reference ? s.As(levels: [.. kept.Levels.Select((l, f) => l + (0.05 * (f % 3)))]) : s), clean);
        yield return new("wrong-kind", "a plate with the specimen on", Severity.Warning, "take the plate again",
            Taken.With(Plan with { PlateSweeps = 3, PlateDb = 40, ShieldingStartDb = 90, ShieldingStopDb = 90 }),
            Taken.With(Plan with { PlateSweeps = 3, PlateDb = 110, ShieldingStartDb = 60, ShieldingStopDb = 60 }));

        RehearsalPlan placed = Plan with { Placements = 3, CoveredSweeps = 2, SpecimensPerLot = 3, SweepDeviationDb = 0.1 };
        yield return new("placement-unknown", "placements without names", Severity.Note, "name the placements", clean,
            Taken.With(Plan with { Placements = 3, CoveredSweeps = 2 }));
        Taken pressed = Taken.With(placed with { PlacementDeviationDb = 0.2 });
        Taken Off(string placement, double decibels) =>
            pressed.But(s => s.Specimen == "A02" && s.Placement == placement ? s.Shifted(decibels) : s);
        yield return new("stray-placement", "a specimen put in badly", Severity.Warning, "put the specimen in again",
            Off("p2", 8), pressed);
        yield return new("stray-placement", "a placement without its specimen", Severity.Fault, "put the specimen in again",
            Off("p3", 40), pressed);
        Taken two = pressed with
        {
            Campaign =
            pressed.Campaign with { Sweeps = [.. pressed.Campaign.Sweeps.Where(s => s.Placement != "p3")] },
        };
        yield return new("stray-placement", "two placements that differ", Severity.Warning, "add a third placement",
            two.But(s => s is { Specimen: "A01", Placement: "p1" } ? s.Shifted(9) : s), pressed);
        yield return new("placement-effect", "edges that press differently", Severity.Note,
            "a frame that presses the edges alike", Taken.With(placed with { PlacementDeviationDb = 1 }), Taken.With(placed));
        Taken uneven = Taken.With(placed with { PlacementDeviationDb = 1 });
        yield return new("placement-effect", "a specimen placed once", Severity.Warning,
            "Put every specimen on at least three times",
            uneven with
            {
                Campaign = uneven.Campaign with
                {
                    Sweeps =
                [.. uneven.Campaign.Sweeps.Where(s => s.Specimen != "A03" || s.Placement == "p1")],
                },
            }, uneven);
    }

    private static IEnumerable<BenchStep> Surroundings()
    {
        AmbientCarrier Carrier(double share) => new(new Hertz(150e6), new Decibels(20), share);
        yield return new("ambient", "a transmitter nearby", Severity.Warning, "switch off the transmitter",
            Taken.With(Plan with { Ambient = [Carrier(1)] }), Taken.With(Plan));
        yield return new("ambient", "a transmitter that pauses", Severity.Warning, "at a quiet hour",
            Taken.With(Plan with { Ambient = [Carrier(0.5)] }), Taken.With(Plan));
        Taken quiet = Taken.With(Plan);
        yield return new("late-transmitter", "a transmitter that came after the floor", Severity.Warning,
            "Sweep the floor once more", Once(quiet.But(s => s.Role == SweepRole.Covered
                ? s.As(levels: s.Levels.SetItem(30, s.Levels[30] + 15)) : s)), quiet);
        var random = new RandomSource(6);
        Taken single = Taken.With(Plan with { Averaging = Averaging.Sample, Looks = 1 });
        yield return new("ambient", "bursts over the whole band", Severity.Warning, "switch off what transmits",
            single.But(s => s.Role == SweepRole.Floor ? s.As(levels: [.. s.Levels.Select(l => l + (6 * random.Normal()))]) : s),
            single);

        Taken deep = Taken.With(Plan with { ShieldingStartDb = 100, ShieldingStopDb = 100 });
        yield return new("floor-moved", "noise that rose after the floor was taken", Severity.Warning,
            "before and after the specimens", Once(deep.But(s => s.Role == SweepRole.Floor ? s.Shifted(-2.5) : s)), deep);
        Taken hiddenDeep = Taken.With(Long with { ShieldingStartDb = 45, ShieldingStopDb = 110 }, Asking(35));
        yield return new("foreign-floor", "a floor taken with less gain", Severity.Warning, "settings of the covered sweeps",
            hiddenDeep.But(s => s.Role == SweepRole.Floor ? s.Shifted(-20) : s), hiddenDeep);
        Sweep[] raised = [.. deep.Campaign.Sweeps.Where(s => s.Role == SweepRole.Floor).Where((_, j) => j is 1 or 3)];
        Taken unsteady = deep.But(s => raised.Contains(s) ? s.Shifted(6) : s);
        yield return new("floor-unsteady", "two floor sweeps with the source on", Severity.Warning, "Take the floor again",
            unsteady, deep);
        yield return new("floor-unsteady", "the same, excluded", Severity.Warning, "exclude it with that reason", unsteady,
            unsteady.But(s => raised.Any(r => r.Name == s.Name) ? s.As(excluded: "source was on") : s));

        Taken negative = Taken.With(Plan with { ShieldingStartDb = 5, ShieldingStopDb = 5 });
        Taken slight = Taken.With(Plan with { ShieldingStartDb = -0.4, ShieldingStopDb = -0.4, ScatterDb = 0.05 });
        yield return new("negative-shielding", "a cable that was moved", Severity.Note, "source or cables moved", slight,
            Taken.With(Plan with { ShieldingStartDb = 0.1, ShieldingStopDb = 0.1, ScatterDb = 0.05 }));
        yield return new("negative-shielding", "reference and covered exchanged", Severity.Fault,
            "reference and covered sweeps were exchanged",
            negative.But(s => s.Role == SweepRole.Floor ? s : s.As(levels: Partner(negative, s).Levels)), negative);
    }

    private static IEnumerable<BenchStep> Statements()
    {
        Taken clean = Taken.With(Plan);
        AnalysisPlan Asking(double fromHz, double toHz) => Power with
        {
            Requirement = Requirement.Line([new(new Hertz(fromHz), new Decibels(10)), new(new Hertz(toHz), new Decibels(10))]),
        };
        AnalysisPlan farther = Asking(1e6, 1e11), inside = Asking(2e8, 3e8);
        yield return new("requirement-beyond", "a limit line over more than was measured", Severity.Warning,
            "Measure the whole band", Taken.With(Plan, farther), Taken.With(Plan, inside));
        yield return new("grid-mismatch", "one sweep on other frequencies", Severity.Warning,
            "the same start, stop and number of points",
            clean.But(s => s == clean.First(SweepRole.Reference) ? s.WithoutFirstPoint() : s), clean);
        Taken ten = clean.But(s => s.As(settings: new ReceiverSettings { AttenuationDb = 10 }));
        yield return new("settings-changed", "another attenuation", Severity.Warning, "the same source and receiver settings",
            ten.But(s => s.Role == SweepRole.Covered ? s.As(settings: new ReceiverSettings { AttenuationDb = 0 }) : s), ten);
        Taken deep = Taken.With(Plan with { ShieldingStartDb = 95, ShieldingStopDb = 95 });
        yield return new("settings-changed", "a floor above the covered noise", Severity.Fault,
            "exactly the settings of the covered sweeps", deep.But(s => s.Role == SweepRole.Floor ? s.Shifted(6) : s), deep);

        // 1 MHz at 290 K is −114 dBm; a preamplifier's 20 dB were taken off levels that did not have them.
        AnalysisPlan wide = Power with { Setup = new ReceiverSettings { ResolutionBandwidthHz = 1e6 } };
        yield return new("below-thermal", "a gain taken off the levels", Severity.Warning, "gain of a preamplifier",
            Taken.With(Plan, wide).But(s => s.Shifted(-20)), Taken.With(Plan, wide));

        yield return new("averaging-unknown", "averaging not stated", Severity.Note, "Set averaging",
            clean with { Stated = new AnalysisPlan() }, clean);
        yield return new("averaging-doubtful", "averages called samples", Severity.Warning, "to \"power\"",
            clean with { Stated = new AnalysisPlan { Averaging = Averaging.Sample } }, clean);
        Taken near = Taken.With(Plan with { ShieldingStartDb = 65, ShieldingStopDb = 65 })
            .But(s => s.As(settings: new ReceiverSettings { TraceMode = "Clear Write" }));
        yield return new("averaging-doubtful", "the highest reading kept", Severity.Warning, "the trace cleared for each sweep",
            near.But(s => s.As(settings: new ReceiverSettings { TraceMode = "Max Hold" })), near);
        yield return new("averaging-doubtful", "the lowest reading kept", Severity.Fault, "the trace cleared for each sweep",
            near.But(s => s.As(settings: new ReceiverSettings { TraceMode = "Min Hold" })), near);
        Taken rms = near.But(s => s.As(settings: new ReceiverSettings { Detector = "RMS" }));
        yield return new("averaging-doubtful", "two detectors", Severity.Warning, "one detector and one trace mode", rms.But(s =>
            s.Role == SweepRole.Covered ? s.As(settings: new ReceiverSettings { Detector = "Peak" }) : s), rms);
        yield return new("averaging-doubtful", "another average stated", Severity.Warning, "correct or leave out averaging",
            rms with { Stated = new AnalysisPlan { Averaging = Averaging.Log } }, rms);
        RehearsalPlan peaks = Long with { ShieldingStartDb = 65, ShieldingStopDb = 65, Averaging = Averaging.Peak, Looks = 100 };
        yield return new("averaging-doubtful", "a peak detector that nobody stated", Severity.Warning,
            "RMS (power average) detector", Taken.With(peaks, new AnalysisPlan()),
            Taken.With(peaks with { Averaging = Averaging.Power }));
        Taken single = Taken.With(Long with
        {
            ShieldingStartDb = 65,
            ShieldingStopDb = 65,
            Averaging = Averaging.Sample,
            Looks = 1,
        });
        yield return new("averaging-unknown", "single looks, or the lowest of several", Severity.Warning,
            "averaging in campaign.toml to \"sample\"", single with { Stated = new AnalysisPlan() }, single);
        Taken smooth = Taken.With(Long with { ShieldingStartDb = 65, ShieldingStopDb = 65, Looks = 400 });
        yield return new("averaging-unknown", "a floor that tells no detector", Severity.Warning,
            "set averaging in campaign.toml to \"power\"", smooth with { Stated = new AnalysisPlan() }, smooth);
        yield return new("quantised", "a coarse display", Severity.Note, "a finer scale",
            Taken.With(Plan with { QuantisationDb = 1 }), Taken.With(Plan with { QuantisationDb = 0.01 }));
    }

    private static Taken Once(Taken taken) => taken with { Campaign = taken.Campaign with { FloorTaking = SweepTaking.Once } };

    // The sweep of the other role that stands at the same place among its own.
    private static Sweep Partner(Taken taken, Sweep sweep)
    {
        SweepRole other = sweep.Role == SweepRole.Reference ? SweepRole.Covered : SweepRole.Reference;
        int place = taken.Campaign.Sweeps.Where(s => s.Role == sweep.Role).ToList().IndexOf(sweep);
        return taken.Campaign.Sweeps.Where(s => s.Role == other).ElementAt(place);
    }
}
