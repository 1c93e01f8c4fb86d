using SweepStats.Checks;
using SweepStats.Linearity;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Linearity;

/// <summary>Linearity sweeps 10 dB below the reference, as the user is told to take them, and nothing else.</summary>
public sealed class ReferenceLinearityTests
{
    private const double Truth = 40;

    // 10^(0.1) − 1, as in the model of compression.
    private const double OneDecibel = 0.25892541179416723;

    private static readonly RehearsalPlan Plan =
        Rehearsed.Plan with { ReferenceRippleDb = 3, LinearitySourcesDbm = [0], LinearitySweeps = 5 };

    [Fact]
    public void OneLevelBesideTheReferenceIsATest()
    {
        // Two sweeps 10 dB down, three of the reference, worked by hand: −41 and −41.1 against −31.5, −31.7 and −31.6 of a step
        // of 10 dB: short by 10 − 9.45.
        LinearityCurve curve =
            Analysis.Run(ByHand([-41, -41.1], [-31.5, -31.7, -31.6], referenceDbm: 10), new AnalysisPlan()).Linearity!;
        LinearityStep step = Assert.Single(curve.Steps);
        Assert.Same(step, curve.Reference);
        Assert.Equal((0, 10, 2, 3), (step.LowDbm, step.HighDbm, step.LowSweeps, step.HighSweeps));
        Assert.Equal(0.55, step.ShortfallDb, 9);
        // R 4.2.2: 10 + t.test(c(-41,-41.1), c(-31.5,-31.7,-31.6))$conf.int = 0.30122662 0.79877338
        Assert.Equal(0.30122662, step.Interval!.Value.Low, 7);
        Assert.Equal(0.79877338, step.Interval.Value.High, 7);
        Assert.Equal(10, curve.ReferenceDbm);
        Assert.Equal(double.NegativeInfinity, curve.OverloadedFromDb);
    }

    [Fact]
    public void TheCampaignsSourceLevelStandsInForAReferenceThatStatesNone()
    {
        Campaign unstated = ByHand([-41, -41.1], [-31.5, -31.7, -31.6], referenceDbm: null);
        Assert.Null(Analysis.Run(unstated, new AnalysisPlan()).Linearity);
        Assert.Equal(0.55, Analysis.Run(unstated, new AnalysisPlan { SourceDbm = 10 }).Linearity!.Reference!.ShortfallDb, 9);
        // What a sweep states goes before.
        Assert.Equal(10, Analysis.Run(ByHand([-41, -41.1], [-31.5, -31.7, -31.6], 10),
            new AnalysisPlan { SourceDbm = 20 }).Linearity!.ReferenceDbm);
    }

    [Fact]
    public void AReferenceOfUnknownSourceLevelIsSaidToBeUntested()
    {
        foreach (double[] sources in new[] { new[] { 0.0 }, [-10, 0] })
        {
            Campaign drawn = Rehearser.Draw(Plan with { LinearitySourcesDbm = [.. sources] }).Campaign;
            Campaign unstated = drawn with
            {
                Sweeps =
                [.. drawn.Sweeps.Select(s => s.Role == SweepRole.Linearity ? s : Rehearsed.Copy(s, s.Levels))],
            };
            AnalysisResult result = Analysis.Run(unstated, new AnalysisPlan());
            Finding finding = Assert.Single(result.Findings, f => f.Code == "linearity-untested");
            Assert.Contains("nothing says at which source level the reference was taken", finding.Message,
                StringComparison.Ordinal);
            Assert.Contains("[setup] source_dbm", finding.NextStep, StringComparison.Ordinal);
            Assert.Contains("source level the reference was taken",
                Assert.Single(result.Checks, c => c.Code == "saturation-step").UntestedBecause, StringComparison.Ordinal);
            Assert.DoesNotContain(Analysis.Run(unstated, new AnalysisPlan { SourceDbm = 10 }).Findings,
                f => f.Code == "linearity-untested");
        }
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void ACompressedReferenceIsFoundAndNoValueIsLeftThatMissesTheTruth(double shortfall)
    {
        (int found, int held, int all) = (0, 0, 0);
        foreach (ulong seed in Draws.Seeds(40))
        {
            AnalysisResult result = Compressed(Plan with { Seed = seed, SweepDeviationDb = 0.1 }, shortfall);
            found += result.Findings.Any(f => f.Code == "saturation-step") ? 1 : 0;
            held += result.Curves[0].Readings.Count(Holds);
            all += result.Curves[0].Readings.Length;
        }

        Often.AtLeast(found, Draws.Of(40), 0.95, whenFull: 38);
        Assert.True(held >= 0.92 * all, $"{held} of {all}");
    }

    [Theory]
    [InlineData(0.5, 12)]
    [InlineData(1, 20)]
    public void WhereTheReferenceIsWeakEnoughValuesStayAndHold(double shortfall, double ripple)
    {
        (int held, int measured, int all) = (0, 0, 0);
        for (ulong seed = 1; seed <= 40; seed++)
        {
            ShieldingReading[] readings =
                [.. Compressed(Plan with { Seed = seed, SweepDeviationDb = 0.1, ReferenceRippleDb = ripple },
                    shortfall).Curves[0].Readings];
            measured += readings.Count(r => r is ShieldingReading.Measured);
            held += readings.Count(r => r is ShieldingReading.Measured && Holds(r));
            all += readings.Length;
            double[] values = [.. readings.Where(r => r is ShieldingReading.Measured).Select(r => r.Evidence.ReferenceDb)];
            double[] bounds = [.. readings.Where(r => r is ShieldingReading.AtLeast).Select(r => r.Evidence.ReferenceDb)];
            Assert.True(values.Length == 0 || bounds.Length == 0 || values.Max() < bounds.Min());
        }

        Assert.InRange(measured, 1, all / 2);
        // 95 % are promised; half a standard error of bias and chance that all frequencies of a campaign share leave 85 % at
        // least.
        Assert.True(held >= 0.85 * measured, $"{held} of {measured}");
    }

    [Fact]
    public void AReceiverThatFollowsIsNotAccused()
    {
        int alarms =
            Draws.Seeds(300)
                .Count(seed => Rehearsed.Analysed(Plan with { Seed = seed, Points = 21, SweepDeviationDb = 0.1 }).Findings
                    .Any(f => f.Code == "saturation-step"));
        Often.AtMost(alarms, Draws.Of(300), 0.005, whenFull: 5);
    }

    [Fact]
    public void OverloadAboveTheReferencesLevelChangesNothingAboutTheReference()
    {
        RehearsalPlan plan = Plan with { LinearitySourcesDbm = [-10, 0, 20], SourceDbm = 0, CompressionDbm = -14 };
        AnalysisResult result = Rehearsed.Analysed(plan);
        Finding finding = Assert.Single(result.Findings, f => f.Code == "saturation-step");
        Assert.Contains("taken at 0 dBm, is not shown to read too low", finding.Message, StringComparison.Ordinal);
        Assert.Null(result.Linearity!.OverloadedFromDb);
        Assert.All(result.Curves[0].Readings, r => Assert.IsType<ShieldingReading.Measured>(r));
    }

    [Fact]
    public void AShortfallBelowTheReferencesLevelTellsOfTheReferenceToo()
    {
        // Linearity sweeps at −10 and 0 dBm fall apart by 2 dB, a reference at 10 dBm that a loose cable weakens by as much seems
        // to follow: it may not be relied on.
        Campaign drawn = Rehearser.Draw(Plan with { LinearitySourcesDbm = [-10, 0], SourceDbm = 10 }).Campaign;
        Campaign odd = drawn with
        {
            Sweeps = [.. drawn.Sweeps.Select(s => s is { Role: SweepRole.Linearity, SourceDbm: 0 }
                ? new Sweep(s.Name, s.Role, s.Grid, [.. s.Levels.Select(l => l - 2)], s.Scale) { SourceDbm = 0 } : s)],
        };
        AnalysisResult result = Analysis.Run(odd, new AnalysisPlan());
        Assert.False(result.Linearity!.Reference!.IsShort);
        Assert.All(result.Curves[0].Readings, r => Assert.Equal(ShieldingState.Overloaded, r.State));
    }

    [Fact]
    public void AReferenceThatReadsLowerThanLinearitySweepsOfItsLevelIsFound()
    {
        // Both at 10 dBm; the reference alone is 1 dB short, as where less attenuation was in when it was taken.
        Campaign drawn = Rehearser.Draw(Plan with { LinearitySourcesDbm = [0, 10] }).Campaign;
        Campaign low = Rehearsed.Changed(drawn, (_, _, level) => level);
        low = low with
        {
            Sweeps =
            [.. low.Sweeps.Zip(drawn.Sweeps,
                (s, was) => was.Role == SweepRole.Reference ? Stated(s, was, -1) : Stated(s, was, 0))],
        };
        AnalysisResult result = Analysis.Run(low, new AnalysisPlan());
        Assert.False(result.Linearity!.StepsHoldReference);
        Assert.False(Assert.Single(result.Linearity.Steps).IsShort);
        Assert.InRange(result.Linearity.Reference!.ShortfallDb, 0.9, 1.1);
        Assert.Contains(result.Findings, f => f.Code == "saturation-step");
        Assert.All(result.Curves[0].Readings, r => Assert.Equal(ShieldingState.Overloaded, r.State));

        static Sweep Stated(Sweep sweep, Sweep was, double by) =>
            new(sweep.Name, sweep.Role, sweep.Grid, [.. sweep.Levels.Select(l => l + by)], sweep.Scale)
            {
                Lot = sweep.Lot,
                Specimen = sweep.Specimen,
                SourceDbm = was.SourceDbm,
            };
    }

    [Fact]
    public void OverloadOfANarrowPeakOfTheReferenceIsFound()
    {
        // 12 dB higher over a tenth of the band, where the receiver is 1 dB short: half of the band shows next to nothing of it.
        int found = Enumerable.Range(1, 20).Count(seed =>
        {
            Campaign drawn = Rehearser.Draw(
                Plan with { Seed = (ulong)seed, Points = 101, ReferenceRippleDb = 1, SweepDeviationDb = 0.1 }).Campaign;
            Campaign peaked = drawn with
            {
                Sweeps =
                [.. drawn.Sweeps.Select(s => s.Role is SweepRole.Reference or SweepRole.Linearity ? Peaked(s) : s)],
            };
            AnalysisResult result = Analysis.Run(peaked, new AnalysisPlan());
            return result.Findings.Any(f => f.Code == "saturation-step")
                && Enumerable.Range(45, 10).All(f => result.Curves[0].Readings[f].State == ShieldingState.Overloaded);
        });
        Assert.InRange(found, 19, 20);

        static Sweep Peaked(Sweep sweep) => new(
            sweep.Name, sweep.Role, sweep.Grid,
            [.. sweep.Levels.Select((l, f) => f is >= 45 and < 55 ? l + 12 - (sweep.Role == SweepRole.Reference ? 1 : 0) : l)],
            sweep.Scale)
        {
            SourceDbm = sweep.SourceDbm,
        };
    }

    private static bool Holds(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured m => m.Shielding.Low.Value <= Truth && Truth <= m.Shielding.High.Value,
        ShieldingReading.AtLeast bound => bound.Bound.Value <= Truth,
        _ => true,
    };

    // Short by the given amount at the middle of the reference level: 10·lg(1 + k·10^((level − onset)/10)) solved for the onset.
    private static AnalysisResult Compressed(RehearsalPlan plan, double shortfall) =>
        Rehearsed.Analysed(plan with
        {
            CompressionDbm =
            plan.ReferenceDbm - (10 * Math.Log10((Math.Pow(10, shortfall / 10) - 1) / OneDecibel)),
        });

    private static Campaign ByHand(double[] linearity, double[] reference, double? referenceDbm) => Rehearsed.Campaign(
        Rehearsed.Sweeps(SweepRole.Reference, [.. reference.Select(l => new[] { l })])
            .Select(s => new Sweep(s.Name, s.Role, s.Grid, s.Levels, s.Scale) { SourceDbm = referenceDbm }),
        Rehearsed.Sweeps(SweepRole.Covered, [-70], [-70.1]),
        Rehearsed.Sweeps(SweepRole.Linearity, [.. linearity.Select(l => new[] { l })])
            .Select(s => new Sweep(s.Name, s.Role, s.Grid, s.Levels, s.Scale) { SourceDbm = 0 }));
}
