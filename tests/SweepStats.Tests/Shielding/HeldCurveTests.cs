using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Shielding;

/// <summary>
/// Where one of several looks is kept, what follows from the readings holds too: band, decision, budget, range.
/// </summary>
public sealed class HeldCurveTests
{
    private const int Campaigns = 6;
    private const double TrueDb = 55;

    // Reference 70 dB over the noise, covered 15 dB.
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with
    {
        Points = Draws.Full ? 21 : 11,
        Looks = 20,
        ShieldingStartDb = TrueDb,
        ShieldingStopDb = TrueDb,
    };

    [Theory]
    [InlineData(Averaging.Peak)]
    [InlineData(Averaging.Lowest)]
    public void TheMeanOverTheBandHoldsTheTruth(Averaging kept)
    {
        foreach (BandStatement band in Enumerable.Range(1, Campaigns).Select(seed => Analysed(kept, seed).Bands[0]))
        {
            Assert.True(band.MeanDb.Low < TrueDb, $"{band.MeanDb.Low}");
            Assert.True(band.MeanDb.High is not { } high || high > TrueDb, $"{band.MeanDb.High}");
            Assert.True(band.AtLeast?.Value < TrueDb);
        }
    }

    [Theory]
    [InlineData(Averaging.Peak)]
    [InlineData(Averaging.Lowest)]
    public void NothingIsSaidToMeetOrToFailThatDoesNot(Averaging kept)
    {
        Requirement over = Requirement.Constant(new Decibels(TrueDb + 0.1)),
            under = Requirement.Constant(new Decibels(TrueDb - 0.1));
        foreach (int seed in Enumerable.Range(1, Campaigns))
        {
            AnalysisResult result = Analysed(kept, seed);
            Assert.NotEqual(RequirementOutcome.Meets, Judged(result, over));
            Assert.NotEqual(RequirementOutcome.Fails, Judged(result, under));
        }

        Assert.Equal(RequirementOutcome.Meets, Analysed(kept, 1, Requirement.Constant(new Decibels(25))).Verdict.Requirement);
        Assert.Equal(RequirementOutcome.Fails, Analysed(Averaging.Peak, 1,
            Requirement.Constant(new Decibels(70))).Verdict.Requirement);
    }

    [Theory]
    [InlineData(Averaging.Peak)]
    [InlineData(Averaging.Lowest)]
    public void ProbabilitiesNeverContradictTheOutcome(Averaging kept)
    {
        foreach (double asked in new[] { 30.0, 52, 55, 58, 64 })
        {
            FrequencyDecision[] decisions = [.. Analysed(kept, 3,
                Requirement.Constant(new Decibels(asked))).Verdict.Specimens[0].Frequencies.OfType<FrequencyDecision>()];
            Assert.All(decisions.Where(d => d.Outcome == RequirementOutcome.Meets), d =>
                Assert.True(d.Probability!.Value.Least >= 0.95));
            Assert.All(decisions.Where(d => d.Outcome == RequirementOutcome.Fails), d =>
                Assert.True(d.Probability!.Value.Most <= 0.05));
        }
    }

    [Theory]
    [InlineData(Averaging.Peak)]
    [InlineData(Averaging.Lowest)]
    public void BudgetsCanBePropagated(Averaging kept)
    {
        AnalysisResult result = Analysed(kept, 4);
        Assert.NotEmpty(result.Budgets[0].All);
        Assert.All(result.Budgets[0].All, budget => Assert.True(budget.Propagate(1).Propagated.Trials > 0));
        Assert.All(result.Budgets[0].Frequencies, budget => Assert.True(budget.LargestOfSeveral));
    }

    [Fact]
    public void PlacementsAndLotsAreComparedAllTheSame()
    {
        RehearsalPlan lots = Plan with
        {
            Lots = 2,
            SpecimensPerLot = 3,
            Placements = 2,
            CoveredSweeps = 2,
            Averaging = Averaging.Peak,
        };
        AnalysisResult result = Rehearsed.Analysed(lots);
        Assert.Equal(6, result.Curves.Length);
        Assert.All(result.Curves.SelectMany(c => c.Readings), r => Assert.IsType<ShieldingReading.Measured>(r));
        Assert.NotNull(result.Choice);
    }

    [Fact]
    public void SingleSweepsGiveAnIndicationBetweenTheEnds()
    {
        AnalysisResult result = Rehearsed.Analysed(Plan with
        {
            Averaging = Averaging.Peak,
            CoveredSweeps = 1,
            ReferenceSweeps = 1,
        });
        Assert.All(result.Curves[0].Readings, r => Assert.InRange(Assert.IsType<ShieldingReading.Unrepeated>(r).Indication.Value,
            TrueDb - 8, TrueDb + 8));
    }

    [Fact]
    public void ADeclaredFloorOfAPeakDetectorIsReckonedWithAtBothItsEnds()
    {
        RehearsalPlan blind = Plan with { FloorSweeps = 0, Averaging = Averaging.Peak };
        // The highest of 20 looks at −100 dBm reads 5.31 dB higher (fixtures/oracles/held.csv).
        AnalysisResult result = Rehearsed.Analysed(blind, new AnalysisPlan
        {
            Averaging = Averaging.Peak,
            DeclaredFloorDb = -94.7,
        });
        Assert.All(result.Curves[0].Readings, r =>
        {
            ShieldingReading.Measured measured = Assert.IsType<ShieldingReading.Measured>(r);
            Assert.InRange(TrueDb, measured.Shielding.Low.Value, measured.Shielding.High.Value);
        });
    }

    // Without the findings, which could leave a decision open: none may be wrong.
    private static RequirementOutcome? Judged(AnalysisResult result, Requirement requirement) =>
        Judge.Of([], result.Curves, (result.Plan with { Requirement = requirement }).Rule, []).Requirement;

    private static AnalysisResult Analysed(Averaging kept, int seed, Requirement? requirement = null)
    {
        UncertaintyEntry scale = new()
        {
            Name = "scale",
            HalfWidthDb = 0.3,
            Distribution = ErrorDistribution.Rectangular,
            ActsOn = ErrorActsOn.Both,
        };
        return Rehearsed.Analysed(Plan with { Seed = (ulong)seed, Averaging = kept }, new AnalysisPlan
        {
            Averaging = kept,
            Requirement = requirement,
            Uncertainties = [scale],
        });
    }
}
