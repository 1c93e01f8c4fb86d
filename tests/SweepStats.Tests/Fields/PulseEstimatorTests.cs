using System.Collections.Immutable;
using SweepStats.Checks;
using SweepStats.Fields;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;
using SweepStats.Verdicts;
using Xunit;
using Xunit.Abstractions;

namespace SweepStats.Tests.Fields;

/// <summary>
/// What is left of a pulse behind the specimens of a campaign. Truths are drawn by R (fixtures/oracles/pulse.R), the sweeps by
/// the runtime's generator.
/// </summary>
public sealed class PulseEstimatorTests(ITestOutputHelper output)
{
    private const int Points = 41;

    // Sweeps that are alike to the last digit are copies and count once.
    private const double Tiny = 0.002;

    // Fewer than elsewhere day by day: each draw is an analysis and two transforms of a quarter of a million numbers.
    private static readonly int Drawable = Draws.Full ? 160 : 12;

    private static readonly double[][] Truths = Fixtures.Numbers("oracles/pulse-truths.csv");

    private static readonly FrequencyGrid Grid =
        new([.. Enumerable.Range(0, Points)
            .Select(i => Math.Round(30e6 * Math.Pow(1e9 / 30e6, i / (Points - 1.0)) / 1e3) * 1e3)]);

    [Fact]
    public void WithoutNoiseThePeakIsThatOfRUnderEachAssumption()
    {
        foreach (double[] truth in Truths.Take(Draws.Of(24)))
        {
            ResidualPulse pulse = Of(Drawn(truth, Tiny, Tiny, 3));
            // A slope that goes on past the highest frequency of either grid ends there, and the two grids differ.
            Assert.All(Enum.GetValues<OutsideBand>(), a => Agreement.Relative(
                a == OutsideBand.Slope ? 1.5e-2 : 2e-3, truth[1 + (int)a],
                pulse.Under(a)!.Estimate!.PeakVoltsPerMetre, truth[0]));
        }
    }

    // Sweeps scatter from point to point and as a whole; three, and eight of each.
    [Theory]
    [InlineData(0.3, 0.3, 3)]
    [InlineData(1, 0.2, 5)]
    [InlineData(0.2, 1, 8)]
    public void TheIntervalOfThePeakHoldsTheTruthUnderEachAssumption(double scatter, double offset, int sweeps)
    {
        double[][] drawn = [.. Truths.Take(Drawable)];
        // Where chance makes a floor reading look like a transmitter, a reading is a bound and no interval is given.
        int[] given = new int[3], held = new int[3];
        var bounded = new int[3];
        foreach (double[] truth in drawn)
        {
            ResidualPulse pulse = Of(Drawn(truth, scatter, offset, sweeps));
            foreach (OutsideBand outside in Enum.GetValues<OutsideBand>())
            {
                PulseLeft left = pulse.Under(outside)!;
                given[(int)outside] += left.PeakLimits is null ? 0 : 1;
                held[(int)outside] += left.PeakLimits?.Contains(truth[1 + (int)outside]) == true ? 1 : 0;
                bounded[(int)outside] += left.PeakAtMost is not { } most || truth[1 + (int)outside] <= most ? 1 : 0;
            }
        }

        output.WriteLine($"{drawn.Length} truths; none, hold, slope: interval given {string.Join(", ", given)}, holds "
            + $"{string.Join(", ", held)}; any phase {string.Join(", ", bounded)}");
        Assert.All(given.Zip(held), both => Often.AtLeast(both.Second, both.First, 0.95, about: string.Join(", ", held)));
        Assert.All(given, g => Assert.True(g > 0.9 * drawn.Length));
        Assert.All(bounded, b => Often.AtLeast(b, drawn.Length, 0.975, about: string.Join(", ", bounded)));
    }

    [Fact]
    public void WhereNothingIsAssumedOutsideTheBoundHoldsWhateverTheCurveDoesThere()
    {
        double[][] drawn = [.. Truths.Take(Drawable)];
        int held = drawn.Count(truth => Of(Drawn(truth, 0.3, 0.3, 4))
            .Under(OutsideBand.None)!.PeakAtMost is not { } most || truth[4] <= most);
        Often.AtLeast(held, drawn.Length, 0.975);
    }

    [Fact]
    public void AKnownErrorAtAllFrequenciesWidensThePeakByAsMuch()
    {
        var cable = new UncertaintyEntry { Name = "cable", HalfWidthDb = 2, Distribution = ErrorDistribution.Normal };
        AnalysisResult plain = Analysed(Drawn(Truths[0], Tiny, Tiny, 3), new AnalysisPlan { Averaging = Averaging.Power });
        AnalysisResult stated = Analysed(
            Drawn(Truths[0], Tiny, Tiny, 3), new AnalysisPlan { Averaging = Averaging.Power, Uncertainties = [cable] });
        Assert.True(Width(stated) > Width(plain) + 1.5);
        double Width(AnalysisResult result) =>
            result.Pulses[0].Under(OutsideBand.Hold)!.PeakLimits is { } l ? 20 * Math.Log10(l.High / l.Low) : double.NaN;
    }

    [Fact]
    public void WhereTheFloorHidesReadingsOnlyABoundIsLeft()
    {
        double[] truth = [0, 0, 0, 0, 0, .. Enumerable.Range(0, Points).Select(i => i is > 10 and < 20 ? 120.0 : 20)];
        PulseLeft left = Of(Drawn(truth, 0.2, 0.2, 5)).Under(OutsideBand.Hold)!;
        Assert.Null(left.Estimate);
        Assert.Null(left.PeakLimits);
        // 20 dB everywhere would leave 5 kV/m, and 1.6 times as much whatever the phase; where the floor hides it is less.
        Assert.InRange(left.PeakAtMost!.Value, 4e3, 9e3);
        Assert.Null(left.Lowest);
    }

    // Flat 40 dB leaves a hundredth; where half a decade was not measured, what came in there comes through.
    [Fact]
    public void InAGapOfTheFrequenciesNoShieldingIsTaken()
    {
        double[] flat = [0, 0, 0, 0, 0, .. Enumerable.Repeat(40.0, Points)];
        Campaign whole = Drawn(flat, Tiny, Tiny, 3);
        int[] kept = [.. Enumerable.Range(0, Points).Where(f => Grid.Hertz[f] is < 60e6 or > 200e6)];
        Campaign parted = whole with
        {
            Sweeps = [.. whole.Sweeps.Select(s => new Sweep(s.Name, s.Role,
            new FrequencyGrid([.. kept.Select(f => s.Grid.Hertz[f])]), [.. kept.Select(f => s.Levels[f])],
                s.Scale) { Specimen = s.Specimen })],
        };
        double all = Of(whole).Under(OutsideBand.Hold)!.PeakLimits!.Value.High;
        PulseLeft left = Of(parted).Under(OutsideBand.Hold)!;
        Assert.Equal(500, all, 5.0);
        Assert.True(left.PeakLimits!.Value.Low > 4 * all);
        Assert.True(left.PeakAtMost > left.PeakLimits.Value.High);
        var pulse = new PulseQuestion().Pulse;
        Assert.True(
            pulse.EnergyShareIn(new FrequencyGrid([.. kept.Select(f => Grid.Hertz[f])])) < 0.7 * pulse.EnergyShareIn(Grid));
    }

    [Fact]
    public void UnderAFaultNothingIsTold()
    {
        AnalysisResult result = Analysed(Drawn(Truths[0], 0.2, 0.2, 5));
        ResidualPulse silent = PulseEstimator.Of(
            new PulseBasis(result.Campaign, result.Curves, result.Findings, Trust.Untrustworthy), new PulseQuestion(), 1)[0];
        Assert.Equal(FieldSilence.Untrustworthy, silent.Silence);
        Assert.Empty(silent.Assumed);
        Assert.Null(silent.Waveform);
    }

    [Fact]
    public void WhatAFindingMayTakeOffRaisesWhatIsLeft()
    {
        AnalysisResult result = Analysed(Drawn(Truths[0], 0.2, 0.2, 5));
        PulseLeft plain = Left(result, []), lower = Left(result, [Told(new Bias(3, 0))]),
            unknown = Left(result, [Told(Bias.Unknown)]);
        Agreement.Relative(0.01, plain.PeakAtMost!.Value * Math.Pow(10, 3 / 20.0), lower.PeakAtMost!.Value);
        Assert.True(lower.PeakLimits!.Value.High > plain.PeakLimits!.Value.High * 1.35);
        Assert.Equal(FieldSilence.FindingOfUnknownSize, unknown.Silence);
        Assert.Null(unknown.PeakAtMost);
        Assert.Null(unknown.Estimate);
    }

    [Fact]
    public void SingleSweepsGiveAnEstimateWithoutLimits()
    {
        PulseLeft left = Of(Drawn(Truths[0], 0.2, 0.2, 1)).Under(OutsideBand.Hold)!;
        Assert.Null(left.PeakLimits);
        Assert.Null(left.PeakAtMost);
        Assert.Equal(FieldSilence.NoClaim, left.Silence);
    }

    // The phase of a single pole is the minimum phase of its size; a delay besides shifts the field and leaves its peak.
    [Theory]
    [InlineData(0)]
    [InlineData(0.4e-9)]
    public void AMeasuredPhaseThatIsTheMinimumPhaseGivesTheSamePeak(double delay)
    {
        double[] truth = [0, 0, 0, 0, 0, .. Grid.Hertz.ToArray()
            .Select(f => 6 + (10 * Math.Log10(1 + (f / 100e6 * (f / 100e6)))))];
        Campaign drawn = Drawn(truth, Tiny, Tiny, 3);
        Campaign phased = drawn with { Sweeps = [.. drawn.Sweeps.Select(s => Phased(s, delay))] };
        PulseLeft left = Of(phased).Under(OutsideBand.Slope)!;
        Agreement.Relative(0.1, left.Estimate!.PeakVoltsPerMetre, left.PeakWithMeasuredPhase!.Value);
        Assert.Null(Of(drawn).Under(OutsideBand.Slope)!.PeakWithMeasuredPhase);
    }

    // The least phase that a size can have leaves the highest early peak, but not always the highest of all.
    [Fact]
    public void WhereTheMeasuredPhaseLeavesMoreOnlyTheBoundIsLeft()
    {
        var left = new PulseLeft(OutsideBand.Hold)
        {
            PeakLimits = new Interval(400, 500),
            PeakAtMost = 800,
            PeakWithMeasuredPhase = 520,
        };
        Assert.True(left.MeasuredPhaseLeavesMore);
        Assert.Equal(800, left.Highest);
        Assert.Null(left.Lowest);
        PulseLeft less = left with { PeakWithMeasuredPhase = 450 };
        Assert.False(less.MeasuredPhaseLeavesMore);
        Assert.Equal(500, less.Highest);
        Assert.Equal(400, less.Lowest);
        Assert.False((left with { PeakWithMeasuredPhase = null }).MeasuredPhaseLeavesMore);
    }

    [Fact]
    public void ARecordThatEndsEarlyIsSaid()
    {
        Assert.True(new PulseGrid(new PulseQuestion().Pulse, 1e6).EndsEarly);
        Assert.False(new PulseGrid(new PulseQuestion().Pulse, 30e6).EndsEarly);
    }

    [Fact]
    public void ThreadsChangeNothing()
    {
        AnalysisResult result = Analysed(Drawn(Truths[3], 0.3, 0.3, 4));
        ResidualPulse Made(int threads) =>
            PulseEstimator.Of(
            new PulseBasis(result.Campaign, result.Curves, result.Findings, result.Verdict.Trust),
                new PulseQuestion(), threads)[0];
        Assert.Equal(Made(1).Assumed[1].Estimate, Made(4).Assumed[1].Estimate);
    }

    private static Sweep Phased(Sweep sweep, double delay) => new(sweep.Name, sweep.Role, sweep.Grid, sweep.Levels, sweep.Scale)
    {
        Lot = sweep.Lot,
        Specimen = sweep.Specimen,
        Phases = [.. sweep.Grid.Hertz.ToArray()
            .Select(f => 70 - (sweep.Role == SweepRole.Covered ? (Math.Atan(f / 100e6) * 180 / Math.PI) + (360 * f * delay)
            : 0))],
    };

    private static Finding Told(Bias bias) =>
        new()
        {
            Code = "told",
            Severity = Severity.Warning,
            Message = "A finding.",
            Basis = "A rule.",
            NextStep = "Mend it.",
            Bias = bias,
        };

    private static PulseLeft Left(AnalysisResult result, ImmutableArray<Finding> findings) =>
        PulseEstimator.Of(new PulseBasis(result.Campaign, result.Curves, findings, Trust.Limited), new PulseQuestion(),
            1)[0].Under(OutsideBand.Hold)!;

    private static ResidualPulse Of(Campaign campaign)
    {
        AnalysisResult result = Analysed(campaign);
        return PulseEstimator.Of(new PulseBasis(result.Campaign, result.Curves, [], Trust.Limited), new PulseQuestion(), 2)[0];
    }

    private static AnalysisResult Analysed(Campaign campaign, AnalysisPlan? plan = null) =>
        Analysis.Run(campaign, plan ?? new AnalysisPlan { Averaging = Averaging.Power, Threads = 2 });

    // Noise of power averaging, 100 looks, so far below that it does not show where the specimen shields 45 dB.
    private static Campaign Drawn(double[] truth, double scatter, double offset, int sweeps)
    {
        var random = new Random((int)((truth[0] * 1000) + (scatter * 10) + sweeps));
        double[] reference = new double[Points], covered = [.. truth[5..].Select(se => -se)],
            floor = [.. covered.Select(_ => -100.0)];
        return Rehearsed.Campaign(Sweeps(SweepRole.Floor, floor, 0.45, 0),
            Sweeps(SweepRole.Reference, reference, scatter, offset), Sweeps(SweepRole.Covered, covered, scatter, offset));

        IEnumerable<Sweep> Sweeps(SweepRole role, double[] level, double points, double whole) =>
            Enumerable.Range(0, sweeps).Select(j =>
        {
            double moved = whole * Normal(random);
            ImmutableArray<double> levels = [.. level.Select(l => l + moved + (points * Normal(random)))];
            return new Sweep($"{role}-{j + 1}", role, Grid, levels,
                LevelScale.DecibelMilliwatts)
            {
                Lot = role == SweepRole.Covered ? "A" : null,
                Specimen = role == SweepRole.Covered ? "A01" : null,
            };
        });
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
