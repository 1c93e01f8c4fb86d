using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Verdicts;

/// <summary>The outcome and the probability of conformance at each frequency.</summary>
public sealed class ConformanceTests
{
    // By hand: reference 0 (variance 0), covered −40 ± 1 and −40 ± 2 with three sweeps: SE 40, u = 1/√3 and 2/√3, two degrees of
    // freedom.
    private static readonly Campaign Steady = Rehearsed.Campaign(
        Rehearsed.Sweeps(SweepRole.Floor, [-160, -161], [-161, -160], [-160.5, -160.5]),
        Rehearsed.Sweeps(SweepRole.Reference, [0.0, 1e-9], [1e-9, 0.0], [0, 0]),
        Rehearsed.Sweeps(SweepRole.Covered, [-39, -38], [-40, -40], [-41, -42]));

    [Theory]
    [InlineData(39, 0.887_298_3, 0.761_116_5)] // T₂(√3) and T₂(√3/2); T₂(t) = ½ + t/(2√(2 + t²)), Abramowitz and Stegun 26.7.4
    [InlineData(40.5, 0.238_883_5, 0.353_615_2)]
    [InlineData(38, 0.962_910_0, 0.887_298_3)]
    public void FarAboveTheFloorItIsStudentsProbability(double wanted, double first, double second)
    {
        FrequencyDecisions decided = Decided(Steady, wanted);
        foreach ((int f, double u, double expected) in new[] { (0, 1 / Math.Sqrt(3), first), (1, 2 / Math.Sqrt(3), second) })
        {
            double t = (40 - wanted) / u;
            Assert.Equal(0.5 + (t / (2 * Math.Sqrt(2 + (t * t)))), expected, 5e-7);
            Assert.Equal(expected, decided[f]!.Probability!.Value.Least, 2e-6);
            Assert.True(decided[f]!.Probability!.Value.IsKnown);
            Assert.Equal(Conformity.Probability(40, u, wanted, double.PositiveInfinity, 2),
                decided[f]!.Probability!.Value.Least, 2e-6);
        }
    }

    [Fact]
    public void WelchsDegreesOfFreedomAreThoseOfThePrintedExample()
    {
        // EPA Unified Guidance, example 16-1 (sulfate): t = 5.9826 with 11.955 degrees of freedom for a difference of 72.0833;
        // here in tenths of a dB.
        double[] lower = [56.0, 53.0, 57.0, 49.0, 51.0, 55.0, 55.0, 53.0], upper = [60.0, 59.0, 59.0, 63.0, 61.0, 63.0];
        // A millionth of a dB here and there keeps whole numbers from looking like steps of a display; 100 dB lower they are
        // levels that an input survives.
        static double[][] Levels(double[] of) => [.. of.Select((l, i) => new[] { l - 100 + (1e-6 * i * i) })];
        Campaign campaign = Rehearsed.Campaign(
            Rehearsed.Sweeps(SweepRole.Floor, [.. Enumerable.Range(0, 5).Select(i => new[] { -180.0 - i })]),
            Rehearsed.Sweeps(SweepRole.Reference, Levels(upper)),
            Rehearsed.Sweeps(SweepRole.Covered, Levels(lower)));
        double u = 7.20833 / 5.9826;
        foreach (double t in new[] { -2.5, -0.7, 0.3, 1, 1.796, 2.9 })
        {
            double probability = Decided(campaign, 7.20833 - (t * u))[0]!.Probability!.Value.Least;
            Assert.Equal(1 - StudentT.UpperTail(t, 11.955), probability, 2e-4);
        }
    }

    [Fact]
    public void MoreAskedIsLessProbableAndShiftedLevelsChangeNothing()
    {
        double before = double.PositiveInfinity;
        foreach (double wanted in Enumerable.Range(0, 41).Select(i => 35 + (0.25 * i)))
        {
            ConformanceProbability now = Decided(Steady, wanted)[0]!.Probability!.Value;
            Assert.True(now.Least <= before, $"{wanted} dB: {now.Least} after {before}");
            before = now.Most;
            Campaign shifted = Rehearsed.Changed(Steady, (_, _, level) => level - 17);
            Assert.Equal(now.Least, Decided(shifted, wanted)[0]!.Probability!.Value.Least, 1e-6);
        }
    }

    public static TheoryData<double, double, bool> Places =>
        new() { { 40, 0.5, false }, { 62, 0.5, false }, { 66, 0.5, true }, { 70, 0.8, false }, { 74, 0.3, true } };

    [Theory]
    [MemberData(nameof(Places))]
    public void TheProbabilityNeverContradictsTheOutcome(double truth, double scatter, bool stated)
    {
        // The floor stands 70 dB below the reference: 62 to 74 dB is near it and in it.
        ImmutableArray<UncertaintyEntry> errors = stated
            ? [new UncertaintyEntry { Name = "scale", HalfWidthDb = 0.7, Distribution = ErrorDistribution.Rectangular }] : [];
        foreach (Averaging averaging in new[] { Averaging.Power, Averaging.Unknown })
        {
            foreach (double level in new[] { 0.5, 0.8, 0.95, 0.99 })
            {
                var plan = new AnalysisPlan
                {
                    Averaging = averaging,
                    Uncertainties = errors,
                    Requirement = Requirement.Line(
                [new(new Hertz(30e6), new Decibels(truth - 4)), new(new Hertz(1e9), new Decibels(truth + 4))]),
                    RequirementConfidence = new Confidence(level),
                };
                AnalysisResult result = Rehearsed.Analysed(
                    Rehearsed.Plan with
                    {
                        Points = Draws.Full ? 61 : 13,
                        ShieldingStartDb = truth,
                        ShieldingStopDb = truth,
                        ScatterDb = scatter,
                    }, plan);
                Assert.All(result.Verdict.Specimens[0].Frequencies.Zip(result.Curves[0].Readings),
                    pair => Agrees(pair.First!, pair.Second, level));
            }
        }
    }

    [Theory]
    [InlineData(0, RequirementOutcome.Meets)]
    // by hand: the one-sided 95 % lower limit is 40 − 2.91999/√3 = 38.3142, t of two degrees of freedom
    [InlineData(1.7, RequirementOutcome.Meets)]
    [InlineData(1.72, RequirementOutcome.Undecided)]
    [InlineData(9, RequirementOutcome.Undecided)]
    public void TheLowerLimitHasToReachTheGuardBand(double guard, RequirementOutcome expected)
    {
        AnalysisResult result = Analysis.Run(Steady, Asking(36.6) with { GuardBand = new Decibels(guard) });
        FrequencyDecision decision = result.Verdict.Specimens[0].Frequencies[0]!;
        Assert.Equal(expected, decision.Outcome);
        Assert.Equal(Decided(Steady, 36.6)[0]!.Probability, decision.Probability);
    }

    [Theory]
    [InlineData(41.6, RequirementOutcome.Undecided)] // by hand: the upper limit is 41.6858
    [InlineData(41.7, RequirementOutcome.Fails)]
    public void TheGuardBandDoesNotMakeASpecimenFail(double wanted, RequirementOutcome expected) =>
        Assert.Equal(expected, Analysis.Run(Steady,
            Asking(wanted) with { GuardBand = new Decibels(5) }).Verdict.Specimens[0].Frequencies[0]!.Outcome);

    [Theory]
    [InlineData(0.5, 39.99, RequirementOutcome.Meets)]
    [InlineData(0.5, 40.01, RequirementOutcome.Fails)]
    [InlineData(0.8, 39.3, RequirementOutcome.Meets)] // t₂(0.8) = 1.0607: lower limit 39.3876
    [InlineData(0.8, 39.4, RequirementOutcome.Undecided)]
    [InlineData(0.99, 36, RequirementOutcome.Undecided)] // t₂(0.99) = 6.9646: lower limit 35.979
    [InlineData(0.99, 35.9, RequirementOutcome.Meets)]
    public void TheLevelOfTheRequirementDecides(double level, double wanted, RequirementOutcome expected) =>
        Assert.Equal(expected, Analysis.Run(Steady,
            Asking(wanted) with { RequirementConfidence = new Confidence(level) }).Verdict.Specimens[0].Frequencies[0]!.Outcome);

    [Fact]
    public void WhereNothingIsKnownNothingIsSaid()
    {
        // 95 dB behind a range of some 70: bounds end far below 85 dB, whatever the level.
        foreach (double level in new[] { 0.5, 0.95 })
        {
            AnalysisPlan plan = Asking(85) with { RequirementConfidence = new Confidence(level) };
            AnalysisResult result = Rehearsed.Analysed(Rehearsed.Plan with { ShieldingStartDb = 95, ShieldingStopDb = 95 }, plan);
            Assert.Equal(RequirementOutcome.CannotTell, result.Verdict.Requirement);
            Assert.All(result.Verdict.Specimens[0].Frequencies.Where(d => d!.Outcome == RequirementOutcome.CannotTell),
                d => Assert.Null(d!.Probability));
            Assert.DoesNotContain(result.Verdict.Specimens[0].Frequencies.Zip(result.Curves[0].Readings),
                p => p.Second is ShieldingReading.AtLeast && p.First!.Outcome == RequirementOutcome.Meets);
        }
    }

    private static void Agrees(FrequencyDecision decision, ShieldingReading reading, double level)
    {
        if (decision.Probability is not { } probability)
        {
            Assert.Equal(RequirementOutcome.CannotTell, decision.Outcome);
            return;
        }

        Assert.InRange(probability.Least, 0, probability.Most);
        Assert.InRange(probability.Most, probability.Least, 1);
        // At 0.5 either side of the middle is taken; nothing lies between.
        Assert.True(decision.Outcome != RequirementOutcome.Meets || probability.Least >= level, $"{decision}");
        Assert.True(decision.Outcome == RequirementOutcome.Meets || probability.Least < level
            || (level == 0.5 && probability.Least == 0.5), $"{decision} of {reading}");
        Assert.True(decision.Outcome != RequirementOutcome.Fails || probability.Most <= 1 - level + 1e-15, $"{decision}");
        Assert.True(decision.Outcome == RequirementOutcome.Fails || probability.Most > 1 - level || level == 0.5, $"{decision}");
        Assert.True(decision.Outcome != RequirementOutcome.Meets || reading.Evidence.OneSidedLow is not null);
    }

    private static FrequencyDecisions Decided(Campaign campaign, double wanted) =>
        Analysis.Run(campaign, Asking(wanted)).Verdict.Specimens[0].Frequencies;

    private static AnalysisPlan Asking(double wanted) =>
        new() { Averaging = Averaging.Power, Requirement = Requirement.Constant(new Decibels(wanted)) };
}
