using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Trends;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Trends;

/// <summary>Campaigns of cloths that lose a fifth of a decibel with each wash.</summary>
public sealed class TrendEstimatorTests
{
    private static readonly RehearsalPlan Washed = new()
    {
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

    [Fact]
    public void ARequirementCrossedAtTwentyWashesIsNamedRight()
    {
        FactorTrend trend = Trend(Washed);
        Assert.Equal(TrendLack.None, trend.Lack);
        Assert.Equal([0, 5, 10, 20, 30], trend.Groups.Select(g => g.Value));
        Assert.True(trend.IsCount && trend.Whole.IsStraight);
        Assert.True(trend.Whole.Line!.SlopeIntervalDb.Contains(-0.2));
        Assert.InRange(trend.Whole.Line.SlopeDb, -0.24, -0.16);
        TrendRequirement asked = trend.Requirement!;
        Assert.InRange(asked.MetUpTo!.Value, 14, 20);
        Assert.InRange(asked.NotMetFrom!.Value, 20, 26);
        Assert.Equal(21, asked.Frequencies);
        Assert.Equal(trend.Frequencies.Min(f => f.MetUpTo), asked.MetUpTo);
        Assert.Equal(trend.Frequencies.Min(f => f.NotMetFrom), asked.NotMetFrom);
        Assert.Equal(RequirementOutcome.Meets, trend.Groups[0].Outcome);
        Assert.Equal(RequirementOutcome.Fails, trend.Groups[^1].Outcome);
    }

    [Fact]
    public void NothingIsSaidBeyondWhatWasMeasured()
    {
        TrendRequirement met = Trend(Washed, 35).Requirement!, notMet = Trend(Washed, 50).Requirement!;
        Assert.Equal(30, met.MetUpTo);
        Assert.Null(met.NotMetFrom);
        Assert.Null(notMet.MetUpTo);
        Assert.Equal(0, notMet.NotMetFrom);
    }

    [Fact]
    public void AShiftOfAllAndARequirementWithItChangeNothing()
    {
        (AnalysisResult result, FactorTrend trend) = Found(Washed);
        ImmutableArray<ShieldingCurve> moved =
            [.. result.Curves.Select(c => c with { Readings = [.. c.Readings.Select(Moved)] })];
        FactorTrend other = TrendEstimator.Of(moved, result.Campaign.Grid, Properties(Washed), Plan(47), [])!;
        Same(trend, other, 1);
        Assert.All(trend.Groups.Zip(other.Groups), g => Assert.Equal(g.First.MeanDb + 7, g.Second.MeanDb, 1e-9));
    }

    [Fact]
    public void AnotherUnitOfTheFactorChangesTheUnitAlone()
    {
        (AnalysisResult result, FactorTrend trend) = Found(Washed);
        ImmutableArray<SpecimenProperty> scaled = [.. Properties(Washed).Select(p => p with { Number = 10 * p.Number })];
        Same(trend, TrendEstimator.Of(result.Curves, result.Campaign.Grid, scaled, Plan(40), [])!, 10);
    }

    [Fact]
    public void TheOrderOfSpecimensDoesNotMatter()
    {
        (AnalysisResult result, FactorTrend trend) = Found(Washed);
        Same(trend, TrendEstimator.Of([.. result.Curves.Reverse()], result.Campaign.Grid, Properties(Washed), Plan(40), [])!, 1);
    }

    [Fact]
    public void WhereNoLineIsStraightMeasuredValuesAloneAreNamed()
    {
        // Nothing is lost up to ten washes, and much beyond.
        LotStep[] steps =
            [.. new[] { ("A", 0.0), ("B", 0.0), ("C", 0.0), ("D", -5.0),
                ("E", -14.0) }.Select(s => new LotStep(s.Item1, new Decibels(s.Item2), Washed.Band))];
        FactorTrend trend = Trend(Washed with { WearDb = 0, LotSteps = [.. steps] });
        Assert.False(trend.Whole.IsStraight);
        Assert.Equal(10, trend.Requirement!.MetUpTo);
        Assert.Equal(20, trend.Requirement.NotMetFrom);
        Assert.Equal(21, trend.Requirement.ByGroups);
        Assert.All(trend.Frequencies, f => Assert.Equal(TrendBasis.Groups, f.Basis));
    }

    [Fact]
    public void WhereTheFloorHidesSomeSpecimenThereIsNoSlopeAndABoundMayMeet()
    {
        // From 44 dB to 84 dB: the floor hides the upper end.
        FactorTrend trend = Trend(Washed with { ShieldingStopDb = 84 });
        Assert.InRange(trend.Whole.ClearShare, 0.3, 0.9);
        Assert.All(trend.Frequencies, f => Assert.Equal(f.Capped > 0, f.Line is null));
        Assert.Contains(trend.Frequencies, f => f.Capped > 0);
        Assert.All(trend.Frequencies.Where(f => f.Capped > 0),
            f => Assert.Equal((TrendBasis.Groups, 30.0), (f.Basis, f.MetUpTo!.Value)));
        Assert.Equal(trend.Frequencies.Count(f => f.Capped > 0), trend.Requirement!.Hidden);
        Assert.InRange(trend.Requirement.MetUpTo!.Value, 14, 21);
    }

    [Fact]
    public void ABoundBelowTheRequirementLeavesItOpen()
    {
        FactorTrend trend = Trend(Washed with { ShieldingStartDb = 84, ShieldingStopDb = 84 }, 80);
        Assert.Null(trend.Whole.Line);
        Assert.Null(trend.Requirement!.MetUpTo);
        Assert.Null(trend.Requirement.NotMetFrom);
        Assert.Equal(TrendObstacle.Hidden, trend.Requirement.Obstacle);
        Assert.All(trend.Groups, g => Assert.Equal(RequirementOutcome.CannotTell, g.Outcome));
    }

    [Fact]
    public void TooLittleForATrendIsSaid()
    {
        Assert.Equal(TrendLack.Values, Trend(Washed with { Lots = 2, Cycles = [0, 10] }).Lack);
        FactorTrend three = Trend(Washed with { Lots = 3, Cycles = [0, 10, 20], SpecimensPerLot = 1 });
        Assert.Equal(TrendLack.Specimens, three.Lack);
        Assert.Null(three.Whole.Line);
        Assert.Null(three.Requirement!.MetUpTo);
        Assert.Equal(TrendLack.None, Trend(Washed with { Lots = 4, Cycles = [0, 10, 20, 30], SpecimensPerLot = 1 }).Lack);
    }

    [Fact]
    public void AReferenceSweptOnceTellsTheSlopeAndNotTheLevel()
    {
        FactorTrend trend = Trend(Washed with { ReferenceSweeps = 1 });
        Assert.True(trend.Whole.Line!.SlopeIntervalDb.Contains(-0.2));
        Assert.Equal(TrendObstacle.ReferenceOnce, trend.Requirement!.Obstacle);
        Assert.Null(trend.Requirement.MetUpTo);
    }

    [Fact]
    public void LotsThatLieApartAboutTheLineAreNotIndependentSpecimens()
    {
        // The same five lots, each with specimens at several values, and three decibels between lots.
        RehearsalPlan plan = Washed with { Cycles = [], WearDb = 0, LotDeviationDb = 3, SpecimensPerLot = 4, Seed = 8 };
        RehearsedCampaign drawn = Rehearser.Draw(plan);
        double[] washes = [0, 10, 20, 30];
        ImmutableArray<SpecimenProperty> properties =
            [.. drawn.Truth.Select((t, i) => new SpecimenProperty(t.Name, RehearsalPlan.CyclesName, "", washes[i % 4]))];
        FactorTrend trend = Analysis.Run(drawn.Campaign with { Properties = properties }, Plan(40)).Trend!;
        Assert.True(trend.Whole.LotsApartProbability < 0.001);
        Assert.True(trend.Whole.WithinLots!.Value.IntervalDb.Width < trend.Whole.Line!.SlopeIntervalDb.Width / 2);
        Assert.Equal(TrendObstacle.LotsApart, trend.Requirement!.Obstacle);
        Assert.Null(trend.Requirement.MetUpTo);
        Assert.Null(trend.Requirement.NotMetFrom);
    }

    [Fact]
    public void AFindingThatCouldOverturnItLeavesItOpen()
    {
        (AnalysisResult result, _) = Found(Washed);
        var finding = new Finding
        {
            Code = "drift",
            Severity = Severity.Warning,
            Message = "",
            Basis = "",
            NextStep = "",
            Bias = Bias.Unknown,
        };
        TrendRequirement asked =
            TrendEstimator.Of(result.Curves, result.Campaign.Grid, Properties(Washed), Plan(40), [finding])!.Requirement!;
        Assert.Null(asked.MetUpTo);
        Assert.Equal("drift", Assert.Single(asked.OverturnedBy));
        Assert.Equal(TrendObstacle.Overturned, asked.Obstacle);
        TrendRequirement gaps = TrendEstimator.Of(
            result.Curves, result.Campaign.Grid, Properties(Washed), Plan(40),
            [finding with { Bias = null, LeavesFrequenciesOut = true }])!.Requirement!;
        Assert.Null(gaps.MetUpTo);
        Assert.NotNull(gaps.NotMetFrom);
        Assert.Equal(TrendObstacle.FrequenciesLeftOut, gaps.Obstacle);
    }

    [Fact]
    public void UnderAFaultNothingIsClaimed()
    {
        (AnalysisResult result, FactorTrend trusted) = Found(Washed);
        var fault = new Finding { Code = "clock", Severity = Severity.Fault, Message = "", Basis = "", NextStep = "" };
        FactorTrend trend = TrendEstimator.Of(result.Curves, result.Campaign.Grid, Properties(Washed), Plan(40), [fault])!;
        Assert.Equal((null, null, null), (trend.Requirement!.MetUpTo, trend.Requirement.NotMetFrom, trend.Requirement.DecidedAt));
        Assert.Equal(TrendObstacle.Faults, trend.Requirement.Obstacle);
        Assert.All(trend.Groups, g => Assert.Equal(RequirementOutcome.CannotTell, g.Outcome));
        Assert.All(trend.Frequencies, f => Assert.Equal((null, null), (f.MetUpTo, f.NotMetFrom)));
        Assert.Equal(trusted.Whole.Line!.SlopeDb, trend.Whole.Line!.SlopeDb);
    }

    [Fact]
    public void ABoundIsHeldAtTheLevelOfTheRuleAsInTheVerdict()
    {
        // The floor hides the upper end, and every specimen at its last frequency.
        RehearsalPlan hidden = Washed with { ShieldingStopDb = 84 };
        AnalysisResult result = Rehearsed.Analysed(hidden, Plan(40));
        TrendFrequency last = result.Trend!.Frequencies[^1];
        Assert.Equal(15, last.Capped);
        OneSidedLimits[] limits = [.. result.Curves.Where(c => c.Name.Lot == "A").Select(c => new OneSidedLimits(c))];
        double Mean(double level) => limits.Average(l => l.Low(20, level));
        // With so few repeats nothing holds at 99.99 %, and the bounds at the level of the intervals do not stand in for it.
        double usual = last.ValuesDb.Take(3).Average(), strict = Mean(0.9999);
        Assert.True(strict < usual - 10, $"{usual} {strict}");
        Assert.True(last.LimitsAt(0, new Confidence(0.9999))!.Value.Low <= strict);
        Assert.InRange(last.LimitsAt(0, Confidence.NinetyFive)!.Value.Low, usual - 2, usual);
        // A level below that of the intervals moves no bound up.
        Assert.InRange(last.LimitsAt(0, new Confidence(0.6))!.Value.Low, usual - 2, usual);
    }

    [Fact]
    public void AYardstickHasNoPlaceInTheOrderAndAnyOtherSpecimenNeedsOne()
    {
        (AnalysisResult result, FactorTrend trend) = Found(Washed);
        ImmutableArray<SpecimenProperty> gap = [.. Properties(Washed).Skip(1)];
        ArgumentException missing =
            Assert.Throws<ArgumentException>(() => TrendEstimator.Of(result.Curves, result.Campaign.Grid, gap, Plan(40), []));
        Assert.Contains("A/A01 has no value of cycles", missing.Message, StringComparison.Ordinal);
        AnalysisPlan beside = Plan(40) with { Choice = new() { Yardstick = gap[0].Specimen with { Specimen = "A01" } } };
        Assert.Equal(trend.Specimens.Length - 1,
            TrendEstimator.Of(result.Curves, result.Campaign.Grid, gap, beside, [])!.Specimens.Length);
        Assert.Null(TrendEstimator.Of(result.Curves, result.Campaign.Grid, gap, Plan(40) with { Lots = new() }, []));
    }

    // Far above the noise; and where the floor hides what is washed little, so that bounds and values meet at each value.
    [Theory]
    [InlineData(44, 40)]
    [InlineData(68.5, 64.5)]
    public void WholeCampaignsNameTooMuchInOneOfTwentyAtMost(double startDb, double askedDb)
    {
        int campaigns = Draws.Of(100);
        // Offsets of sweeps make the reference matter.
        RehearsalPlan plan = Washed with
        {
            Points = 12,
            SweepDeviationDb = 0.2,
            Placements = 0,
            ScatterDb = 0.02,
            SpecimenDeviationDb = 0.2,
            ShieldingStartDb = startDb,
            ShieldingStopDb = startDb,
        };
        int met = 0, notMet = 0, slopes = 0, lines = 0;
        foreach (ulong seed in Draws.Seeds(100))
        {
            FactorTrend trend = Trend(plan with { Seed = seed }, askedDb);
            met += trend.Requirement!.MetUpTo > 20 ? 1 : 0;
            notMet += trend.Requirement.NotMetFrom < 20 ? 1 : 0;
            slopes += trend.Whole.Line?.SlopeIntervalDb.Contains(-0.2) == true ? 1 : 0;
            lines += trend.Whole.Line is null ? 0 : 1;
        }

        Often.AtMost(met, campaigns, 0.05, whenFull: 11);
        Often.AtMost(notMet, campaigns, 0.05, whenFull: 11);
        // Where the floor hides some specimen at every frequency a campaign has no line.
        Assert.True(startDb > 60 || lines == campaigns, $"{lines} of {campaigns}");
        Assert.True(lines == 0 || Often.AsFew(slopes, lines, 0.95) >= Often.Chance, $"{slopes} of {lines}");
        Assert.True(!Draws.Full || slopes >= (0.95 * lines) - (3 * Math.Sqrt(0.05 * 0.95 * lines)), $"{slopes} of {lines}");
    }

    private static void Same(FactorTrend trend, FactorTrend other, double unit)
    {
        Assert.Equal(trend.Whole.Line!.SlopeDb, other.Whole.Line!.SlopeDb * unit, 1e-9);
        Assert.Equal(trend.Whole.Line.SlopeIntervalDb.Low, other.Whole.Line.SlopeIntervalDb.Low * unit, 1e-9);
        Assert.Equal(trend.Whole.Line.StraightProbability!.Value, other.Whole.Line.StraightProbability!.Value, 1e-7);
        Assert.Equal(trend.Requirement!.MetUpTo!.Value * unit, other.Requirement!.MetUpTo!.Value, 1e-6 * unit);
        Assert.Equal(trend.Requirement.NotMetFrom!.Value * unit, other.Requirement.NotMetFrom!.Value, 1e-6 * unit);
        Assert.Equal(trend.Groups.Select(g => g.Outcome), other.Groups.Select(g => g.Outcome));
    }

    private static ShieldingReading Moved(ShieldingReading reading) => reading is ShieldingReading.Measured m
        ? m with { Shielding = m.Shielding with { Value = new Decibels(m.Shielding.Value.Value + 7) } } : reading;

    private static ImmutableArray<SpecimenProperty> Properties(RehearsalPlan plan) => Rehearser.Draw(plan).Campaign.Properties;

    private static AnalysisPlan Plan(double askedDb) => new()
    {
        Averaging = Averaging.Power,
        Requirement = Requirement.Constant(new Decibels(askedDb)),
        Lots = new LotQuestion { OrderedBy = RehearsalPlan.CyclesName },
    };

    private static FactorTrend Trend(RehearsalPlan plan, double askedDb = 40) => Rehearsed.Analysed(plan, Plan(askedDb)).Trend!;

    private static (AnalysisResult Result, FactorTrend Trend) Found(RehearsalPlan plan)
    {
        AnalysisResult result = Rehearsed.Analysed(plan, Plan(40));
        return (result, TrendEstimator.Of(result.Curves, result.Campaign.Grid, Properties(plan), Plan(40), [])!);
    }
}
