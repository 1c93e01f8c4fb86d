using SweepStats.Budgets;
using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Budgets;

/// <summary>
/// Where the linear budget agrees with the propagation of distributions, and where it has to say that it does not.
/// </summary>
public sealed class BudgetComparisonTests
{
    [Fact]
    public void FarAboveTheFloorWithManyRepeatsTheLinearBudgetHolds()
    {
        BudgetComparison compared = At(rise: 30, freedom: 200);
        Assert.Equal(BudgetValidity.Holds, compared.Validity);
        Assert.Equal(0, compared.Propagated.OpenShare);
        Assert.True(compared.Propagated.Stable);
        // Two normal errors of 0.1 and 0.2 dB.
        Assert.Equal(1.96 * Math.Sqrt(0.05), compared.Propagated.Symmetric.Width / 2, 0.01);
    }

    [Fact]
    public void NearTheFloorItBends() => Assert.Equal(BudgetValidity.Bent, At(rise: 1, freedom: 200).Validity);

    [Fact]
    public void WhereTooManyTrialsFallIntoTheNoiseTheUpperEndIsOpen()
    {
        BudgetComparison compared = At(rise: 0.3, freedom: 200);
        Assert.Equal(BudgetValidity.Open, compared.Validity);
        Assert.Equal(double.PositiveInfinity, compared.Propagated.Symmetric.High);
        Assert.True(double.IsFinite(compared.Propagated.Symmetric.Low));
        // A normal error of 0.2 dB takes a rise of 0.3 dB away in 1 − Φ(1.5) = 6.68 % of the trials.
        Assert.Equal(0.0668, compared.Propagated.OpenShare, 0.005);
        Assert.True(double.IsNaN(compared.Propagated.Estimate));
    }

    [Fact]
    public void FewerTrialsInTheNoiseThanMayLieBeyondTheEndLeaveItFinite()
    {
        // 1 − Φ(2.25) = 1.2 %.
        BudgetComparison compared = At(rise: 0.45, freedom: 200);
        Assert.InRange(compared.Propagated.OpenShare, 0.009, 0.016);
        Assert.True(double.IsFinite(compared.Propagated.Symmetric.High));
    }

    [Fact]
    public void WithThreeRepeatsOfEachTheWidthsDifferAndTheTrialsStillEnd()
    {
        BudgetComparison compared = At(rise: 30, freedom: 2);
        Assert.Equal(BudgetValidity.Width, compared.Validity);
        Assert.InRange(compared.Propagated.Trials, 20_000, 50_000);
        // The difference of two Student variables with two degrees of freedom is the wider one: Behrens and Fisher's problem.
        Assert.True(compared.Propagated.Symmetric.Width > compared.Linear!.Value.Width);
    }

    [Fact]
    public void WithoutALinearBudgetTheEndIsOpen()
    {
        BudgetComparison compared = At(rise: -0.5, freedom: 200);
        Assert.Null(compared.Linear);
        Assert.Equal(BudgetValidity.Open, compared.Validity);
        Assert.True(compared.Propagated.OpenShare > 0.9);
    }

    [Fact]
    public void TheSameSeedGivesTheSameAndAnotherOneNearlyTheSame()
    {
        (MonteCarlo one, MonteCarlo again, MonteCarlo other) =
            (At(5, 9).Propagated, At(5, 9).Propagated, At(5, 9, seed: 8).Propagated);
        Assert.Equal(one, again);
        Assert.NotEqual(one.Symmetric, other.Symmetric);
        Assert.Equal(one.Symmetric.Low, other.Symmetric.Low, 0.03);
    }

    [Fact]
    public void LinearScalingScalesTheInterval()
    {
        (Interval narrow, Interval wide) = (At(60, 9).Propagated.Symmetric, At(60, 9, scale: 2).Propagated.Symmetric);
        Agreement.Relative(0.03, 2 * narrow.Width, wide.Width);
    }

    private static BudgetComparison At(double rise, double freedom, ulong seed = 7, double scale = 1)
    {
        var inputs = new BudgetInputs();
        inputs.Mean(BudgetPart.Reference, -20, new Contribution(0.1 * scale, freedom));
        inputs.Mean(BudgetPart.Covered, -100 + rise, new Contribution(0.2 * scale, freedom));
        inputs.Mean(BudgetPart.Floor, -100, Contribution.None);
        MeasurementModel model = new ShieldingModel(new AveragedLaw(new DetectorNoise(20)), false, []).Shielding;
        LinearBudget? linear = rise > 0.05 ? LinearBudget.Of(model, inputs.Inputs) : null;
        return BudgetComparison.Of(
            model, inputs.Inputs, linear, new MonteCarloPlan { Confidence = Confidence.NinetyFive, Seed = seed });
    }
}
