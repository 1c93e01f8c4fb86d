using SweepStats.Budgets;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Tests.Leaking;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Budgets;

/// <summary>
/// The linear budget at one frequency: by hand far above the floor, by the noise curve's closed forms near it, and as
/// shielding.csv reports it.
/// </summary>
public sealed class ReadingBudgetTests
{
    private static readonly UncertaintyEntry Scale =
        new() { Name = "scale", HalfWidthDb = 0.3, Distribution = ErrorDistribution.Rectangular, ActsOn = ErrorActsOn.Both };
    private static readonly UncertaintyEntry Antenna = new()
    {
        Name = "antenna",
        HalfWidthDb = 0.4,
        Distribution = ErrorDistribution.Normal,
        DegreesOfFreedom = 8,
        ActsOn = ErrorActsOn.Covered,
    };
    private static readonly UncertaintyEntry Cable = new()
    {
        Name = "cable",
        HalfWidthDb = 0.5,
        Distribution = ErrorDistribution.Arcsine,
        ActsOn = ErrorActsOn.Both,
        Common = true,
    };

    [Fact]
    public void FarAboveTheFloorTheVariancesAddUpAsByHand()
    {
        // Standard deviations 0.2 and 0.3 dB of three readings each: standard errors 0.2/√3 and 0.3/√3, two degrees of freedom.
        // Rectangle 0.3/√3 twice, normal 0.4/2.
        ShieldingBudget budget = ByHand(-130);
        double[] uncertainties =
            [0.2 / Math.Sqrt(3), 0.3 / Math.Sqrt(3), 0, 0.3 / Math.Sqrt(3), 0.3 / Math.Sqrt(3), 0.2, 0.5 / Math.Sqrt(2)];
        double[] slopes = [1, -1, 0, 1, -1, -1, 0];
        double variance = (0.04 / 3) + (0.09 / 3) + (2 * 0.09 / 3) + 0.04;
        double freedom = variance * variance / ((0.04 / 3 * 0.04 / 3 / 2) + (0.09 / 3 * 0.09 / 3 / 2) + (0.04 * 0.04 / 8));
        Assert.Equal(uncertainties, budget.Lines.Select(l => l.StandardUncertaintyDb), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(slopes, budget.Lines.Select(l => l.Sensitivity!.Value), (a, b) => Math.Abs(a - b) < 1e-6);
        Agreement.Relative(1e-6, Math.Sqrt(variance), budget.Linear!.StandardUncertainty);
        Agreement.Relative(1e-6, freedom, budget.Linear.DegreesOfFreedom);
        Agreement.Relative(1e-6, StudentT.Quantile(0.975, freedom) * Math.Sqrt(variance), budget.ExpandedUncertaintyDb!.Value);
        Assert.Equal(40, budget.Linear.Estimate, 1e-6);
        Assert.Equal(0.04 / variance, budget.Lines[5].Share!.Value, 1e-6);
        Assert.Equal(1, budget.Lines.Sum(l => l.Share!.Value), 1e-12);
        Assert.Equal([false, false, false, false, false, false, true], budget.Lines.Select(l => l.Cancels));
    }

    [Fact]
    public void MovingAllLevelsTogetherChangesNoLine()
    {
        (ShieldingBudget plain, ShieldingBudget moved) = (ByHand(-64), ByHand(-64, 17));
        Assert.Equal(plain.Lines.Select(l => l.ContributionDb!.Value), moved.Lines.Select(l => l.ContributionDb!.Value),
            (a, b) => Math.Abs(a - b) < 1e-7);
        Assert.Equal(plain.Linear!.Estimate, moved.Linear!.Estimate, 1e-9);
    }

    [Theory]
    [InlineData(1, 0.5)]
    [InlineData(1, 3)]
    [InlineData(double.PositiveInfinity, 0.5)]
    [InlineData(double.PositiveInfinity, 3)]
    public void NearTheFloorTheSlopesAreThoseOfTheNoiseCurve(double looks, double snr)
    {
        // From the closed forms of the rise, K·(ln γ + E₁(γ) + 0.577) for one look and K·ln(1 + γ) for many: slope of the level
        // 1/(1 − e^−γ) and (1 + γ)/γ.
        var noise = new DetectorNoise(looks);
        double slope = double.IsFinite(looks) ? 1 / (1 - Math.Exp(-snr)) : (1 + snr) / snr;
        var inputs = new BudgetInputs();
        inputs.Mean(BudgetPart.Reference, -30, new Contribution(0.1, 4));
        inputs.Mean(BudgetPart.Covered, -100 + noise.Rise(snr), new Contribution(0.2, 4));
        inputs.Mean(BudgetPart.Floor, -100, new Contribution(0.05, 30));
        LinearBudget budget = LinearBudget.Of(new ShieldingModel(new AveragedLaw(noise), false, []).Shielding, inputs.Inputs);
        Assert.Equal(1, budget.Lines[0].Sensitivity, 1e-4);
        Agreement.Relative(1e-4, -slope, budget.Lines[1].Sensitivity);
        Agreement.Relative(2e-4, slope - 1, budget.Lines[2].Sensitivity);
        Assert.Equal(-30 - (-100 - noise.LogMeanOffset + (10 * Math.Log10(snr))), budget.Estimate, 1e-4);
    }

    [Theory]
    [InlineData(Averaging.Power)]
    [InlineData(Averaging.Log)]
    [InlineData(Averaging.Sample)]
    [InlineData(Averaging.Unknown)]
    [InlineData(Averaging.Peak)]
    [InlineData(Averaging.Lowest)]
    public void ItAgreesWithTheReadingAtEveryFrequency(Averaging averaging)
    {
        // Two ends where a look is kept, two ways of averaging where none is stated.
        bool several = averaging is Averaging.Unknown or Averaging.Peak or Averaging.Lowest;
        RehearsalPlan plan = Rehearsed.Plan with
        {
            ShieldingStartDb = 40,
            ShieldingStopDb = 76,
            ReferenceRippleDb = 3,
            Looks = averaging is Averaging.Sample ? 1 : 10,
            Averaging = averaging is Averaging.Unknown ? Averaging.Power : averaging,
        };
        FrequencyGrid grid = Rehearser.Draw(plan).Grid;
        AnalysisResult result = Rehearsed.Analysed(plan, new AnalysisPlan
        {
            Averaging = averaging,
            Uncertainties = [Scale, Antenna, Cable],
            BudgetFrequencies = [.. Enumerable.Range(0, grid.Count).Select(f => grid[f])],
        });
        var measured = result.Budgets[0].Frequencies.Zip(result.Curves[0].Readings)
            .Where(p => p.Second is ShieldingReading.Measured).ToList();
        Assert.Contains(measured, p => p.Second.State == ShieldingState.NearFloor);
        Assert.True(measured.Count > 40);
        Assert.All(measured, p =>
        {
            Assert.Equal(p.Second.Evidence.At, p.First.At);
            Agreement.Relative(2e-4, p.Second.Evidence.StandardUncertaintyDb!.Value, p.First.Linear!.StandardUncertainty);
            if (!several)
            {
                Agreement.Relative(1e-3, p.Second.Evidence.DegreesOfFreedom!.Value, p.First.Linear.DegreesOfFreedom);
                Assert.Equal(((ShieldingReading.Measured)p.Second).Shielding.Value.Value, p.First.Linear.Estimate, 1e-9);
            }

            Assert.Equal(several, p.First.LargestOfSeveral);
        });
    }

    [Fact]
    public void WhereTheCoveredLevelIsInTheNoiseThereIsNoLinearBudget()
    {
        ShieldingBudget budget = ByHand(-59.5);
        Assert.Null(budget.Linear);
        Assert.Null(budget.ExpandedUncertaintyDb);
        Assert.All(budget.Lines, l =>
            Assert.True(l.Sensitivity is null && l.Share is null && l.ContributionDb is null && l.StandardUncertaintyDb >= 0));
        Assert.Equal(double.PositiveInfinity, budget.Reported.High);
    }

    [Fact]
    public void SingleSweepsHaveNoBudget()
    {
        AnalysisResult result = Rehearsed.Analysed(Rehearsed.Plan with { CoveredSweeps = 1 });
        Assert.Empty(result.Budgets[0].All);
    }

    // A plate 50 dB below the covered level shows noise alone. A leakage as strong as that noise, an amplitude of 0.003, would
    // move the level by 0.03 dB.
    [Fact]
    public void WhatTheNoiseOfAPlateMayHideHasItsLineHoweverSmall()
    {
        Campaign campaign = new Analyser { LeakageDb = double.PositiveInfinity, PlateSweeps = 5 }.Draw();
        ShieldingBudget budget = Assert.Single(Analysis.Run(campaign, new AnalysisPlan
        {
            Averaging = Averaging.Sample,
            BudgetFrequencies = [campaign.Sweeps[0].Grid[50]],
        }).Budgets[0].Frequencies);
        Assert.True(budget.LeakageBehindPlate);
        Assert.InRange(Assert.Single(budget.Lines, l => l.Part == BudgetPart.Leakage).StandardUncertaintyDb, 0.001, 0.05);
    }

    [Fact]
    public void WithoutAFloorTheBudgetIsThatOfTheDifferenceOfTheReadings()
    {
        ShieldingBudget budget = ByHand(null);
        Assert.DoesNotContain(budget.Lines, l => l.Part == BudgetPart.Floor);
        Assert.Equal(Math.Sqrt((0.13 / 3) + (0.18 / 3) + 0.04), budget.Linear!.StandardUncertainty, 1e-9);
    }

    // Readings of 0.2 and 0.3 dB standard deviation about −20 and −60 dB.
    private static ShieldingBudget ByHand(double? declaredFloor, double moved = 0)
    {
        double[][] Role(double level, double step) => [.. new[] { -step, 0, step }.Select(d => new[] { level + d + moved })];
        Campaign campaign = Rehearsed.Campaign(Rehearsed.Sweeps(SweepRole.Reference, Role(-20, 0.2)),
            Rehearsed.Sweeps(SweepRole.Covered, Role(-60, 0.3)));
        var plan = new AnalysisPlan
        {
            Averaging = Averaging.Log,
            DeclaredFloorDb = declaredFloor + moved,
            Uncertainties = [Scale, Antenna, Cable],
            BudgetFrequencies = [new Hertz(1e6)],
        };
        return Analysis.Run(campaign, plan).Budgets[0].Frequencies.Single();
    }
}
