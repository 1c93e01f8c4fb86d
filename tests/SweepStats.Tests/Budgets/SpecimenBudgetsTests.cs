using SweepStats.Bands;
using SweepStats.Budgets;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Budgets;

/// <summary>The budget of the band mean, and the frequencies that get one.</summary>
public sealed class SpecimenBudgetsTests
{
    private static readonly UncertaintyEntry Scale =
        new() { Name = "scale", HalfWidthDb = 0.3, Distribution = ErrorDistribution.Rectangular };

    [Fact]
    public void AnOffsetThatAWholeSweepSharesIsNotAveragedAwayOverTheBand()
    {
        // Covered sweeps differ by offsets of −0.3, 0.3 and 0 dB, which are no drift, at all frequencies: the mean over the band
        // has their standard error, 0.3/√3 dB; references agree.
        double[] Sweep(double level) => [.. Enumerable.Range(0, 9).Select(f => level + (0.137 * f * f))];
        Campaign campaign = Rehearsed.Campaign(
            Rehearsed.Sweeps(SweepRole.Reference, Sweep(-20), Sweep(-20), Sweep(-20)),
            Rehearsed.Sweeps(SweepRole.Covered, Sweep(-60.3), Sweep(-59.7), Sweep(-60)));
        // The copies of a reference count once, so one of them is moved by nothing to speak of.
        campaign = campaign with
        {
            Sweeps =
            [.. campaign.Sweeps.Select((s, i) => i < 3 ? Rehearsed.Copy(s, [.. s.Levels.Select(l => l + (i * 1e-9))]) : s)],
        };
        ShieldingBudget mean = Analysis.Run(campaign,
            new AnalysisPlan { Averaging = Averaging.Log, DeclaredFloorDb = -150, Uncertainties = [Scale] }).Budgets[0].Mean!;
        Assert.Null(mean.At);
        Assert.Equal([0, 0.3 / Math.Sqrt(3), 0, 0.3 / Math.Sqrt(3)], mean.Lines.Select(l => l.StandardUncertaintyDb),
            (a, b) => Math.Abs(a - b) < 1e-6);
        Assert.Equal(2, mean.Lines[1].DegreesOfFreedom);
        Assert.Equal([0, 0.5, 0, 0.5], mean.Lines.Select(l => l.Share!.Value), (a, b) => Math.Abs(a - b) < 1e-6);
    }

    [Fact]
    public void AMeanOfNothingButBoundsHasNoBudget()
    {
        AnalysisResult result = Rehearsed.Analysed(Rehearsed.Plan with { FloorSweeps = 0 });
        Assert.NotNull(result.Bands[0].MeanDb.Low);
        Assert.Null(result.Budgets[0].Mean);
        Assert.Single(result.Budgets[0].Frequencies);
    }

    [Fact]
    public void TheMeanIsMadeOfThePartsThatItsLimitsAreMadeOf()
    {
        AnalysisResult result = Rehearsed.Analysed(Rehearsed.Plan with { SweepDeviationDb = 0.3 });
        ShieldingBudget mean = result.Budgets[0].Mean!;
        BandFigure figure = result.Bands[0].MeanDb;
        // Without stated errors and with a floor that hardly counts both are the same Student interval.
        Agreement.Relative(1e-3, (figure.High!.Value - figure.Low!.Value) / 2, mean.ExpandedUncertaintyDb!.Value);
        Assert.Equal(figure.Value!.Value, mean.Linear!.Estimate, 1e-9);
        Assert.Equal((figure.Low, figure.High), (mean.Reported.Low, mean.Reported.High));
        Assert.Equal(1, mean.Lines.Sum(l => l.Share!.Value), 1e-12);
    }

    [Fact]
    public void WithoutFrequenciesTheWeakestClaimIsLookedAt()
    {
        AnalysisResult result = Rehearsed.Analysed(Rehearsed.Plan with { ShieldingStartDb = 30, ShieldingStopDb = 50 });
        Assert.Equal(result.Bands[0].WeakestAt, result.Budgets[0].Frequencies.Single().At);
    }

    [Fact]
    public void WithARequirementTheFrequencyWithTheLeastRoomOverItIsLookedAt()
    {
        // The shielding rises by 20 dB over the band and what is asked for by 40 dB: the least room is at the stop.
        Requirement steep = Requirement.Line([new(new Hertz(30e6), new Decibels(5)), new(new Hertz(1e9), new Decibels(45))]);
        AnalysisResult result = Rehearsed.Analysed(
            Rehearsed.Plan with { ShieldingStartDb = 30, ShieldingStopDb = 50 },
            new AnalysisPlan { Averaging = Averaging.Power, Requirement = steep });
        Assert.True(result.Budgets[0].Frequencies.Single().At!.Value.Value > 9e8);
    }

    [Fact]
    public void AskedFrequenciesAreTakenToTheNearestAnalysedOneOnceEach()
    {
        FrequencyGrid grid = Rehearser.Draw(Rehearsed.Plan).Grid;
        double between = (grid[10].Value + grid[11].Value) / 2;
        AnalysisResult result = Rehearsed.Analysed(Rehearsed.Plan, new AnalysisPlan
        {
            Averaging = Averaging.Power,
            BudgetFrequencies = [new Hertz(1e9), new Hertz(between - 1), new Hertz(between - 2), new Hertz(30e6)],
        });
        Assert.Equal([grid[0], grid[10], grid[^1]], result.Budgets[0].Frequencies.Select(b => b.At!.Value));
    }

    [Fact]
    public void TheNumberOfThreadsChangesNothing()
    {
        RehearsalPlan plan = Rehearsed.Plan with { SpecimensPerLot = 3, ShieldingStopDb = 66 };
        double[] Figures(int threads) =>
            [.. Rehearsed.Analysed(plan,
                new AnalysisPlan { Averaging = Averaging.Power, Threads = threads, Uncertainties = [Scale] }).Budgets
            .SelectMany(s => s.All)
                .SelectMany(b => b.Lines.Select(l => l.ContributionDb ?? -1).Append(b.Propagate(3).Propagated.Symmetric.High))];
        Assert.Equal(Figures(1), Figures(4));
    }
}
