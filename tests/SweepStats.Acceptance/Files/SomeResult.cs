using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Verdicts;

namespace SweepStats.Acceptance.Files;

/// <summary>A small analysis, and one whose readings are of every kind.</summary>
internal static class SomeResult
{
    public static readonly SpecimenName Name = new("=lot", "A, \"1\"");

    /// <summary>A real analysis of six made-up sweeps.</summary>
    public static AnalysisResult Analysed() =>
        Analysis.Run(Campaign(), new AnalysisPlan { Requirement = Requirement.Constant(new Decibels(20)) });

    public static Campaign Campaign()
    {
        var grid = new FrequencyGrid([.. Enumerable.Range(0, 40).Select(i => 30e6 + (i * 1e6 / 3))]);
        var random = new Random(5);
        Sweep Of(string name, SweepRole role, double level) =>
            new(name, role, grid, [.. Enumerable.Range(0, grid.Count).Select(_ => level + random.NextDouble() - 0.5)],
                LevelScale.DecibelMilliwatts);
        return new Campaign("Curtain \"µ\" <b>",
        [
            .. Enumerable.Range(1, 4).Select(i => Of($"floor/f{i}.csv", SweepRole.Floor, -100)),
            .. Enumerable.Range(1, 4).Select(i => Of($"reference/r{i}.csv", SweepRole.Reference, -20)),
            .. Enumerable.Range(1, 4)
                .Select(i => new Sweep($"covered/L/A/c{i}.csv", SweepRole.Covered, grid, Of("x", SweepRole.Covered, -60).Levels,
                    LevelScale.DecibelMilliwatts)
            {
                Lot = Name.Lot, Specimen = Name.Specimen, ExcludedBecause = i == 4 ? "door \"open\"" : null,
            }),
        ]);
    }

    /// <summary>The analysis with one reading of every kind in place of its own.</summary>
    public static AnalysisResult OfEveryKind()
    {
        AnalysisResult real = Analysed();
        ShieldingCurve curve = real.Curves[0];
        ReadingEvidence At(int f) => curve.Readings[f].Evidence with
        {
            CoveredDb = -0.00001,
            StandardUncertaintyDb = 0.25,
            DegreesOfFreedom = double.PositiveInfinity,
        };
        ShieldingReadings readings =
        [
            new ShieldingReading.Measured(ShieldingState.NearFloor, At(0),
                new ShieldingEstimate(new Decibels(40.12346), new Decibels(39), new Decibels(double.PositiveInfinity),
                    Confidence.NinetyFive)),
            new ShieldingReading.AtLeast(ShieldingState.Capped, At(1), new Decibels(34)),
            new ShieldingReading.Unrepeated(ShieldingState.NoFloor, At(2) with { FloorDb = null, DynamicRange = null },
                new Decibels(-3)),
            new ShieldingReading.Unreadable(ShieldingState.Overloaded, At(3), "why"),
        ];
        Finding Of(string code, SpecimenName? name, params FrequencyBand[] where) => new()
        {
            Code = code,
            Severity = Severity.Warning,
            Message = "-3 dB, \"odd\"\nline",
            Basis = "+3 dB, \"by rule\"",
            NextStep = "@do",
            Specimen = name,
            Where = [.. where],
            Role = SweepRole.Covered,
            Size = new Decibels(1.5),
        };
        FrequencyDecisions decisions =
        [
            new FrequencyDecision(At(0).At, new Decibels(20), RequirementOutcome.Meets, new ConformanceProbability(0.999, 1)),
            new FrequencyDecision(At(1).At, new Decibels(30), RequirementOutcome.Undecided, ConformanceProbability.Of(0.875)),
            new FrequencyDecision(At(2).At, new Decibels(20), RequirementOutcome.Fails, new ConformanceProbability(0, 0.001)),
            null,
        ];
        Hertz first = real.Campaign.Grid[0];
        Hertz third = real.Campaign.Grid[2];
        return real with
        {
            Curves = [curve with { Readings = readings }],
            Findings =
            [
                Of("placement-unknown", null),
                Of("drift", Name, new FrequencyBand(first, first), new FrequencyBand(third, third)),
                Of("ambient", null, new FrequencyBand(first, third)),
                Of("capped", new SpecimenName("other", "x"), new FrequencyBand(first, third)),
            ],
            Verdict = new Verdict(Trust.Limited, RequirementOutcome.CannotTell,
                [new SpecimenOutcome(curve.Name, RequirementOutcome.CannotTell) { Frequencies = decisions }]),
        };
    }
}
