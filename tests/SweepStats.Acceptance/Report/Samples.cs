using System.Collections.Concurrent;
using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;

namespace SweepStats.Acceptance.Report;

/// <summary>Rehearsed campaigns that the report has to cope with; drawn with a seed, so always the same.</summary>
internal static class Samples
{
    private static readonly Lazy<AnalysisResult> Autumn = new(() => Run(AutumnPlan!, Asking(40)));

    private static readonly ConcurrentDictionary<Asked, Lazy<AnalysisResult>> Analysed = new();

    /// <summary>
    /// Three lots of two curtains, 30 MHz to 1 GHz, shielding that rises into the floor, one carrier, 40 dB asked.
    /// </summary>
    public static AnalysisResult ThreeLots => Autumn.Value;

    public static AnalysisPlan Power { get; } = new() { Averaging = Averaging.Power };

    public static AnalysisPlan Asking(double decibels) =>
        Power with { Requirement = Requirement.Constant(new Decibels(decibels)) };

    public static RehearsalPlan AutumnPlan { get; } = new()
    {
        Title = "Receiver cabin curtain, autumn lots",
        Seed = 11,
        Lots = 3,
        SpecimensPerLot = 2,
        Placements = 3,
        CoveredSweeps = 2,
        ShieldingStartDb = 44,
        ShieldingStopDb = 76,
        LotDeviationDb = 2.5,
        SpecimenDeviationDb = 1,
        PlacementDeviationDb = 0.4,
        FloorTiltDb = 4,
        ReferenceRippleDb = 5,
        Ambient = [new AmbientCarrier(new Hertz(433.92e6), new Decibels(22))],
    };

    /// <summary>Cloths that lose 0.2 dB a wash: 44 dB when new, so that 40 dB are crossed at twenty washes.</summary>
    public static RehearsalPlan Washed { get; } = new()
    {
        Title = "Washed cloth",
        Points = 21,
        Lots = 5,
        Cycles = [0, 5, 10, 20, 30],
        WearDb = 0.2,
        SpecimensPerLot = 3,
        SpecimenDeviationDb = 0.3,
        Placements = 2,
        CoveredSweeps = 2,
        ShieldingStartDb = 44,
        ShieldingStopDb = 44,
        Seed = 5,
    };

    public static AnalysisPlan AlongCycles(double decibels) =>
        Asking(decibels) with { Lots = new() { OrderedBy = RehearsalPlan.CyclesName } };

    public static RehearsalPlan Small { get; } = new() { Title = "Small", Points = 31 };

    /// <summary>
    /// A reference sweep that is off as a whole, a covered sweep of another shape, a carrier, and a floor that hides the upper
    /// end.
    /// </summary>
    public static RehearsalPlan Odd { get; } = new()
    {
        Title = "Odd sweeps",
        Points = 201,
        ReferenceSweeps = 8,
        CoveredSweeps = 6,
        ShieldingStartDb = 30,
        ShieldingStopDb = 75,
        OddSweeps = [new OddSweep(SweepRole.Reference, 3, OffsetDb: 1.8), new OddSweep(SweepRole.Covered, 2, ShapeDb: 1.5)],
        Ambient = [new AmbientCarrier(new Hertz(433.92e6), new Decibels(20))],
    };

    /// <summary>A source that moves by 2 dB in the course of a morning.</summary>
    public static RehearsalPlan Drifting { get; } = new()
    {
        Title = "Drift",
        Points = 61,
        SpecimensPerLot = 2,
        ReferenceSweeps = 8,
        DriftDb = 2,
        StartsAt = new DateTimeOffset(2026, 5, 12, 8, 57, 0, TimeSpan.FromHours(2)),
        SecondsPerSweep = 300,
    };

    /// <summary>Four lots of eight specimens in three placements of three sweeps, among them some odd ones.</summary>
    public static RehearsalPlan HundredGroups { get; } = new()
    {
        Title = "Hundred groups",
        Points = 41,
        Lots = 4,
        SpecimensPerLot = 8,
        Placements = 3,
        CoveredSweeps = 3,
        ReferenceSweeps = 10,
        SweepDeviationDb = 0.1,
        OddSweeps = [new OddSweep(SweepRole.Reference, 3, 2.5), new OddSweep(SweepRole.Covered, 40, 3),
            new OddSweep(SweepRole.Covered, 41, 3), new OddSweep(SweepRole.Floor, 2, 1.5)],
        StartsAt = new DateTimeOffset(2026, 5, 12, 8, 57, 0, TimeSpan.FromHours(2)),
    };

    /// <summary>Linearity sweeps at five source levels of a receiver that is overloaded at the upper ones.</summary>
    public static RehearsalPlan Overloaded { get; } = new()
    {
        Title = "Overload",
        Points = 61,
        LinearitySourcesDbm = [-20, -10, 0, 10, 15],
        LinearitySweeps = 4,
        CompressionDbm = -31,
    };

    /// <summary>Four lots of four specimens, each placed three times.</summary>
    public static RehearsalPlan Lots { get; } = new()
    {
        Title = "Lots",
        Points = 31,
        Seed = 3,
        Lots = 4,
        SpecimensPerLot = 4,
        Placements = 3,
        CoveredSweeps = 2,
        LotDeviationDb = 0.8,
        SpecimenDeviationDb = 0.5,
        PlacementDeviationDb = 0.3,
        SweepDeviationDb = 0.1,
    };

    /// <summary>A choice with a yardstick, over the whole band and a part of it.</summary>
    public static AnalysisPlan Choosing { get; } = Power with
    {
        Choice = new ChoiceQuestion { Yardstick = new SpecimenName("A", "A01") },
        NamedBands = [new NamedBand("Upper <half>_{x}", new FrequencyBand(new Hertz(200e6), new Hertz(1e9)))],
    };

    /// <summary>Analysed once, however many tests look at it: results cannot be changed.</summary>
    public static AnalysisResult Run(RehearsalPlan rehearsal, AnalysisPlan plan) =>
        Analysed.GetOrAdd(new Asked(rehearsal, plan),
            asked => new Lazy<AnalysisResult>(() => Anew(asked.Rehearsal, asked.Plan))).Value;

    /// <summary>Drawn and analysed anew.</summary>
    public static AnalysisResult Anew(RehearsalPlan rehearsal, AnalysisPlan plan) =>
        Analysis.Run(Rehearser.Draw(rehearsal).Campaign, plan);

    /// <summary>The campaign again with every name put through a function.</summary>
    public static AnalysisResult Renamed(Func<string, string> name) => Renamed(Small, name);

    /// <summary>A rehearsed campaign with every name put through a function.</summary>
    public static AnalysisResult Renamed(RehearsalPlan rehearsal, Func<string, string> name)
    {
        Campaign campaign = Rehearser.Draw(rehearsal).Campaign;
        ImmutableArray<Sweep> sweeps = [.. campaign.Sweeps.Select(s => new Sweep(name(s.Name), s.Role, s.Grid, s.Levels, s.Scale)
        {
            Lot = s.Lot is null ? null : name(s.Lot),
            Specimen = s.Specimen is null ? null : name(s.Specimen),
            ExcludedBecause = s.Role == SweepRole.Covered && s.Name.EndsWith("05.csv", StringComparison.Ordinal)
                ? name("bumped the table") : null,
            Settings = new ReceiverSettings { Detector = name("sample"), ResolutionBandwidthHz = 10e3 },
        })];
        return Analysis.Run(new Campaign(name(campaign.Title), sweeps), Power);
    }

    private sealed record Asked(RehearsalPlan Rehearsal, AnalysisPlan Plan);
}
