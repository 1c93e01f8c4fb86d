using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Shielding;

public sealed class ShieldingEstimatorTests
{
    [Fact]
    public void FarAboveTheFloorTheIntervalIsWelchsWorkedByHand()
    {
        // Two groups: reference −10, −11, −12 (mean −11, s 1), covered −51, −53, −52, −52 (mean −52, s² 2/3); floor at −400 dBm.
        // SE = 41; u² = 1/3 + (2/3)/4 = 0.5; ν = 0.5² / ((1/3)²/2 + (1/6)²/3) = 0.25 / 0.0648148 = 3.857143; u = 0.7071068.
        AnalysisResult result = Analysis.Run(
            Rehearsed.Campaign(
                Rehearsed.Sweeps(SweepRole.Reference, [-10], [-11], [-12]),
                Rehearsed.Sweeps(SweepRole.Covered, [-51], [-53], [-52], [-52])),
            new AnalysisPlan { DeclaredFloorDb = -400, Averaging = Averaging.Power });
        var measured = Assert.IsType<ShieldingReading.Measured>(Assert.Single(result.Curves[0].Readings));
        Assert.Equal(41, measured.Shielding.Value.Value, 9);
        Assert.Equal(0.70710678, measured.Evidence.StandardUncertaintyDb!.Value, 8);
        Assert.Equal(3.85714286, measured.Evidence.DegreesOfFreedom!.Value, 6);
        // R 4.2.2: t.test(c(-10,-11,-12), c(-51,-53,-52,-52))$conf.int = 39.0077452 42.9922548
        Assert.Equal(39.0077452, measured.Shielding.Low.Value, 6);
        Assert.Equal(42.9922548, measured.Shielding.High.Value, 6);
    }

    // Whole decibels that one role alone shows: the error of rounding, 1/√12 = 0.288675 dB, is that of all levels.
    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void TheRoundingThatOneRoleShowsHoldsForAll(bool coarseFloor, bool coarseSpecimen)
    {
        var random = new RandomSource(1);
        double[][] Levels(double mean, bool coarse) => [.. Enumerable.Range(0, 3).Select(_ => Enumerable.Range(0, 61)
            .Select(_ => mean + (2 * random.Normal())).Select(level => coarse ? Math.Round(level) : level).ToArray())];
        Campaign campaign = Rehearsed.Campaign(
            Rehearsed.Sweeps(SweepRole.Floor, Levels(-100, coarseFloor)),
            Rehearsed.Sweeps(SweepRole.Reference, Levels(-10, false)),
            Rehearsed.Sweeps(SweepRole.Covered, Levels(-50, false)).Select(s => Named(s, "fine")),
            Rehearsed.Sweeps(SweepRole.Covered, Levels(-50, coarseSpecimen)).Select(s => Named(s, "other")));
        AnalysisResult result = Analysis.Run(campaign, new AnalysisPlan { Averaging = Averaging.Power });
        Assert.All(result.Curves, curve => Assert.Equal(0.288675, curve.RoundingDb, 6));
    }

    [Fact]
    public void ACoveredLevelInTheNoiseIsABoundAndNeverAValue()
    {
        AnalysisResult result = Rehearsed.Analysed(Rehearsed.Plan with { ShieldingStartDb = 95, ShieldingStopDb = 95 });
        var bounds = result.Curves[0].Readings.OfType<ShieldingReading.AtLeast>().ToList();
        // Noise alone passes for a signal once in forty readings; five of 61 happen once in 30 000 runs.
        Assert.InRange(bounds.Count, 57, 61);
        Assert.All(bounds, bound =>
        {
            Assert.InRange(bound.Bound.Value, 65, 90);
            Assert.Equal(ShieldingState.Capped, bound.State);
        });
    }

    [Fact]
    public void NearTheFloorTheNoiseIsTakenOutOfTheReading()
    {
        // 3 dB over the noise the raw difference reads 1.76 dB too little (power addition), see the noise table in
        // fixtures/published.
        AnalysisResult result = Rehearsed.Analysed(
            Rehearsed.Plan with { ShieldingStartDb = 67, ShieldingStopDb = 67, Looks = 100, CoveredSweeps = 10, ScatterDb = 0 });
        var readings = result.Curves[0].Readings.OfType<ShieldingReading.Measured>().ToList();
        Assert.True(readings.Count > 50);
        Assert.All(readings, r => Assert.Equal(ShieldingState.NearFloor, r.State));
        Assert.InRange(readings.Average(r => r.Shielding.Value.Value), 66.9, 67.1);
        Assert.InRange(readings.Average(r => r.Evidence.ReferenceDb - r.Evidence.CoveredDb), 65.1, 65.4);
    }

    [Fact]
    public void WithoutAFloorOnlyALowerBoundIsClaimed()
    {
        AnalysisResult result = Rehearsed.Analysed(Rehearsed.Plan with { FloorSweeps = 0 });
        Assert.All(result.Curves[0].Readings,
            reading => Assert.Equal(ShieldingState.NoFloor, Assert.IsType<ShieldingReading.AtLeast>(reading).State));
        Assert.Contains(result.Findings, f => f.Code == "no-floor");
    }

    [Fact]
    public void SingleSweepsGiveNoInterval()
    {
        AnalysisResult result =
            Rehearsed.Analysed(Rehearsed.Plan with { ReferenceSweeps = 1, CoveredSweeps = 1, FloorSweeps = 1 });
        Assert.All(result.Curves[0].Readings, reading =>
        {
            var single = Assert.IsType<ShieldingReading.Unrepeated>(reading);
            Assert.Null(single.Evidence.StandardUncertaintyDb);
            Assert.InRange(single.Indication.Value, 38, 42);
        });
        Assert.Contains(result.Findings, f => f.Code == "too-few-repeats" && f.Role == SweepRole.Covered);
    }

    [Theory]
    [InlineData(1, 67)]
    [InlineData(1, 73)]
    [InlineData(20, 73)]
    [InlineData(20, 76)]
    public void ASingleSweepInTheNoiseIsABoundThatAllowsForNoise(double looks, double truth)
    {
        int bounds = 0;
        int above = 0;
        for (ulong seed = 1; seed <= 20; seed++)
        {
            RehearsalPlan plan = Rehearsed.Plan with
            {
                Seed = seed,
                Looks = looks,
                ReferenceSweeps = 1,
                CoveredSweeps = 1,
                FloorSweeps = 3,
                ScatterDb = 0,
                ShieldingStartDb = truth,
                ShieldingStopDb = truth,
            };
            var readings = Rehearsed.Analysed(plan).Curves[0].Readings.OfType<ShieldingReading.AtLeast>().ToList();
            bounds += readings.Count;
            above += readings.Count(r => r.Bound.Value > truth);
        }

        Assert.True(bounds > 200, $"{bounds} bounds");
        // 2.5 % may lie above; four binomial standard deviations at 200 bounds are 4.4 %.
        Assert.InRange((double)above / bounds, 0, 0.025 + 0.044);
    }

    [Fact]
    public void WhereSomethingTransmitsNothingIsTakenOutAndOnlyABoundRemains()
    {
        AnalysisResult result = Rehearsed.Analysed(Rehearsed.Plan with
        {
            Ambient =
                [new AmbientCarrier(new SweepStats.Quantities.Hertz(150e6), new SweepStats.Quantities.Decibels(25))],
        });
        ShieldingReading reading = Assert.Single(result.Curves[0].Readings, r => r.Evidence.Ambient);
        var bound = Assert.IsType<ShieldingReading.AtLeast>(reading);
        Assert.True(bound.Bound.Value <= reading.Evidence.ReferenceDb - reading.Evidence.CoveredDb);
        Assert.InRange(bound.Bound.Value, 36, 40);
    }

    [Theory]
    [InlineData(-2, 67)]
    [InlineData(2, 67)]
    [InlineData(-2, 64)]
    [InlineData(2, 61)]
    public void ADeclaredFloorMayBeOffByAsMuchAsIsSaid(double off, double truth)
    {
        int points = 0, low = 0, high = 0, bandLow = 0, bandHigh = 0, campaigns = Draws.Of(40);
        foreach (ulong seed in Draws.Seeds(40))
        {
            RehearsalPlan plan = Rehearsed.Plan with
            {
                Seed = seed,
                Points = 31,
                FloorSweeps = 0,
                ShieldingStartDb = truth,
                ShieldingStopDb = truth,
            };
            AnalysisResult result = Rehearsed.Analysed(plan,
                new AnalysisPlan
                {
                    Averaging = Averaging.Power,
                    DeclaredFloorDb = -100 + new SweepStats.Floor.DetectorNoise(20).LogMeanOffset + off,
                });
            foreach (ShieldingReading reading in result.Curves[0].Readings)
            {
                (double l, double h) = Ends(reading);
                points++;
                low += l > truth ? 1 : 0;
                high += h < truth ? 1 : 0;
            }

            SweepStats.Bands.BandStatement band = result.Bands[0];
            bandLow += band.MeanDb.Low > truth ? 1 : 0;
            bandHigh += band.MeanDb.High < truth || band.TenthPercentileDb.High < truth ? 1 : 0;
        }

        // 2.5 % a side at the declared limits.
        Often.AtMost(low, points, 0.025, whenFull: 48);
        Often.AtMost(high, points, 0.025, whenFull: 48);
        Often.AtMost(bandLow, campaigns, 0.025, whenFull: 4);
        Often.AtMost(bandHigh, campaigns, 0.025, whenFull: 4);
    }

    [Fact]
    public void RoundingOfTheDisplayIsNotAveragedAway()
    {
        AnalysisResult result = Rehearsed.Analysed(
            Rehearsed.Plan with { QuantisationDb = 1, ReferenceSweeps = 20, CoveredSweeps = 20, Points = 201 });
        // 1/√12 = 0.289 dB for each of the two levels: at least 2 · 1.96 · 0.408 = 1.6 dB of width.
        Assert.All(result.Curves[0].Readings.OfType<ShieldingReading.Measured>(),
            r => Assert.True(r.Shielding.High.Value - r.Shielding.Low.Value > 1.6));
        int held = result.Curves[0].Readings.OfType<ShieldingReading.Measured>()
            .Count(r => r.Shielding.Low.Value <= 40 && 40 <= r.Shielding.High.Value);
        Assert.InRange(held / 201.0, 0.93, 1);
        Assert.Contains(result.Findings, f => f.Code == "quantised");
    }

    [Theory]
    [InlineData(60)]
    [InlineData(60.3)]
    [InlineData(60.45)]
    public void ASteadyLevelOnACoarseDisplayIsNotKnownWithoutError(double referenceSnr)
    {
        RehearsalPlan plan = Rehearsed.Plan with
        {
            QuantisationDb = 1,
            Looks = 1000,
            ScatterDb = 0.02,
            ReferenceDbm = -100 + referenceSnr,
            ReferenceRippleDb = 3,
            FloorTiltDb = 3,
            ShieldingStartDb = referenceSnr - 20,
            ShieldingStopDb = referenceSnr - 20,
        };
        AnalysisResult result = Rehearsed.Analysed(plan);
        Assert.Contains(result.Findings, f => f.Code == "quantised");
        Assert.All(result.Curves[0].Readings, reading =>
        {
            (double low, double high) = Ends(reading);
            Assert.True(high - low > 1.5, $"{low} to {high}");
            Assert.InRange(referenceSnr - 20, low, high);
        });
    }

    [Fact]
    public void LevelsBeyondAllReasonEndInABoundAndNotInACrash()
    {
        IEnumerable<double[]> Levels(double level) => [[level, level + 1], [level + 1, level]];
        AnalysisResult result = Analysis.Run(
            Rehearsed.Campaign(
                Rehearsed.Sweeps(SweepRole.Floor, [.. Levels(-5000)]), Rehearsed.Sweeps(SweepRole.Reference, [.. Levels(5000)]),
                Rehearsed.Sweeps(SweepRole.Covered, [.. Levels(0)])),
            new AnalysisPlan { Confidence = new SweepStats.Statistics.Confidence(0.9999) });
        Assert.All(result.Curves[0].Readings,
            r => Assert.False(r is ShieldingReading.Measured { Shielding.Value.Value: double.NaN }));
    }

    [Fact]
    public void AReferenceInTheFloorGivesABoundAtBest()
    {
        AnalysisResult result =
            Rehearsed.Analysed(Rehearsed.Plan with { ReferenceDbm = -95, ShieldingStartDb = 20, ShieldingStopDb = 20 });
        Assert.DoesNotContain(result.Curves[0].Readings, r => r is ShieldingReading.Measured or ShieldingReading.Unrepeated);
        Assert.Contains(result.Findings, f => f is { Code: "under-ranged", Severity: SweepStats.Checks.Severity.Fault });
    }

    [Fact]
    public void AShiftOfAllCoveredSweepsFarAboveTheFloorShiftsTheShielding()
    {
        Campaign campaign = Rehearser.Draw(Rehearsed.Plan with { FloorDbm = -300 }).Campaign;
        Campaign shifted = Rehearsed.Changed(campaign, (s, _, level) => s.Role == SweepRole.Covered ? level - 2.5 : level);
        Compare(campaign, shifted, 2.5);
    }

    [Fact]
    public void AGainThatAllSweepsShareCancels() =>
        Compare(Rehearser.Draw(Rehearsed.Plan).Campaign,
            Rehearsed.Changed(Rehearser.Draw(Rehearsed.Plan).Campaign, (_, _, level) => level + 13), 0);

    [Fact]
    public void TheOrderOfTheSweepsDoesNotMatter()
    {
        Campaign campaign = Rehearser.Draw(Rehearsed.Plan).Campaign;
        Compare(campaign, campaign with { Sweeps = [.. campaign.Sweeps.Reverse()] }, 0);
    }

    [Fact]
    public void PlacementsAreTheUnitsThatCount()
    {
        RehearsalPlan plan = Rehearsed.Plan with { Placements = 3, CoveredSweeps = 4, PlacementDeviationDb = 2 };
        AnalysisResult result = Rehearsed.Analysed(plan);
        ShieldingCurve curve = result.Curves[0];
        Assert.Equal(12, curve.SweepCount);
        Assert.Equal(3, curve.PlacementCount);
        Assert.InRange(curve.RepeatabilityDb!.Value, 0.15, 0.3);
        Assert.All(curve.Readings.OfType<ShieldingReading.Measured>(),
            r => Assert.InRange(r.Evidence.DegreesOfFreedom!.Value, 2, 3));
    }

    [Fact]
    public void TypeBUncertaintyWidensTheIntervalAndIsNotShrunkByRepeats()
    {
        var entry = new UncertaintyEntry
        {
            Name = "scale",
            HalfWidthDb = Math.Sqrt(3),
            Distribution = ErrorDistribution.Rectangular,
            ActsOn = ErrorActsOn.Covered,
        };
        RehearsalPlan plan = Rehearsed.Plan with { CoveredSweeps = 20, ReferenceSweeps = 20 };
        var with = Rehearsed.Analysed(plan, new AnalysisPlan { Averaging = Averaging.Power, Uncertainties = [entry] });
        Assert.All(with.Curves[0].Readings.Cast<ShieldingReading.Measured>(),
            r => Assert.InRange(r.Shielding.High.Value - r.Shielding.Low.Value, 2 * 0.945 * Math.Sqrt(3),
                2 * 0.97 * Math.Sqrt(3)));
    }

    [Fact]
    public void AnErrorCommonToReferenceAndCoveredCancels()
    {
        var common = new UncertaintyEntry
        {
            Name = "cable",
            HalfWidthDb = 3,
            Distribution = ErrorDistribution.Normal,
            ActsOn = ErrorActsOn.Both,
            Common = true,
        };
        AnalysisResult plain = Rehearsed.Analysed(Rehearsed.Plan);
        AnalysisResult with =
            Rehearsed.Analysed(Rehearsed.Plan, new AnalysisPlan { Averaging = Averaging.Power, Uncertainties = [common] });
        Assert.Equal(plain.Curves[0].Readings.AsEnumerable(), with.Curves[0].Readings);
    }

    [Fact]
    public void UnknownAveragingHoldsBothIntervals()
    {
        RehearsalPlan plan = Rehearsed.Plan with { ShieldingStartDb = 55, ShieldingStopDb = 75 };
        AnalysisResult Under(Averaging averaging) => Rehearsed.Analysed(plan, new AnalysisPlan { Averaging = averaging });
        (AnalysisResult unknown, AnalysisResult power, AnalysisResult log) =
            (Under(Averaging.Unknown), Under(Averaging.Power), Under(Averaging.Log));
        for (int f = 0; f < plan.Points; f++)
        {
            (double low, double high) = Ends(unknown.Curves[0].Readings[f]);
            foreach (AnalysisResult one in (AnalysisResult[])[power, log])
            {
                (double l, double h) = Ends(one.Curves[0].Readings[f]);
                Assert.True(low <= l + 1e-12 && high >= h - 1e-12);
            }
        }
    }

    // As many as somebody types: a thousand are no mistake.
    [Theory]
    [InlineData(2)]
    [InlineData(1000)]
    public void OneThreadAndManyGiveTheSameResult(int threads)
    {
        RehearsalPlan plan = Rehearsed.Plan with { Lots = 3, SpecimensPerLot = 3 };
        AnalysisResult one = Rehearsed.Analysed(plan, new AnalysisPlan { Threads = 1 });
        AnalysisResult many = Rehearsed.Analysed(plan, new AnalysisPlan { Threads = threads });
        Assert.Equal(one.Curves.SelectMany(c => c.Readings), many.Curves.SelectMany(c => c.Readings));
    }

    private static void Compare(Campaign before, Campaign after, double shift)
    {
        var plan = new AnalysisPlan { Averaging = Averaging.Power };
        var pairs = Analysis.Run(before, plan).Curves[0].Readings.Zip(Analysis.Run(after, plan).Curves[0].Readings);
        foreach ((ShieldingReading a, ShieldingReading b) in pairs)
        {
            Assert.Equal(a.GetType(), b.GetType());
            (double low, double high) = Ends(a);
            (double low2, double high2) = Ends(b);
            Assert.Equal(low + shift, low2, 7);
            Assert.Equal(high + shift, high2, 7);
        }
    }

    private static (double Low, double High) Ends(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured m => (m.Shielding.Low.Value, m.Shielding.High.Value),
        ShieldingReading.AtLeast b => (b.Bound.Value, double.PositiveInfinity),
        _ => throw new Xunit.Sdk.XunitException($"{reading} has no limits."),
    };

    private static Sweep Named(Sweep sweep, string specimen) =>
        new(sweep.Name + specimen, sweep.Role, sweep.Grid, sweep.Levels, sweep.Scale) { Specimen = specimen };
}
