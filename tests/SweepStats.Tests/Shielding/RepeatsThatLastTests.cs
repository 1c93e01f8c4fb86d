using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Lots;
using SweepStats.Planning;
using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.StudyRuns.Lasting;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Shielding;

/// <summary>
/// Where sweeps resemble those before them, every result counts them for what they are worth; the same sweeps counted as
/// independent stand beside it.
/// </summary>
public sealed class RepeatsThatLastTests
{
    private static readonly LastingCell Cell = new(LastingKind.WholeAndEachFrequency, 10, 0.6) { Points = 60 };
    private static readonly AnalysisResult Found =
        Analysis.Run(LastingStudy.Draw(Cell, 2), new AnalysisPlan { Averaging = Averaging.Power });
    private static readonly RepeatWorth Reference = Found.SerialCorrelation.Worth(RepeatKind.Reference, 10)!;
    private static readonly RepeatWorth Covered = Found.SerialCorrelation.Worth(RepeatKind.Covered, 10)!;
    private static readonly ShieldingCurve Independent =
        new ShieldingEstimator(Found.Campaign, Found.Floor, Confidence.NinetyFive, []).Estimate(Found.Campaign.Covered[0]);

    [Fact]
    public void LevelsKeepTheirMeansAndWidenTheirErrors()
    {
        for (int f = 0; f < Cell.Points; f++)
        {
            ReadingLevels now = Found.Curves[0].Levels![f], before = Independent.Levels![f];
            Assert.Equal(before.Reference.MeanDb, now.Reference.MeanDb);
            Assert.Equal(before.Covered.MeanDb, now.Covered.MeanDb);
            Assert.Equal(Math.Sqrt(Reference.Factor) * before.Reference.Error.StandardUncertainty,
                now.Reference.Error.StandardUncertainty, 1e-12);
            Assert.Equal(Math.Sqrt(Covered.Factor) * before.Covered.UsualErrorDb, now.Covered.UsualErrorDb, 1e-12);
            Assert.Equal(Covered.DegreesOfFreedom, now.Covered.Error.DegreesOfFreedom);
            Assert.True(now.Covered.Error.DegreesOfFreedom < before.Covered.Error.DegreesOfFreedom);
        }
    }

    [Fact]
    public void ReadingsStayWhereTheyAreAndTheirLimitsMoveApart()
    {
        foreach ((ShieldingReading now, ShieldingReading before) in Found.Curves[0].Readings.Zip(Independent.Readings))
        {
            var a = Assert.IsType<ShieldingReading.Measured>(now);
            var b = Assert.IsType<ShieldingReading.Measured>(before);
            Assert.Equal(b.Shielding.Value.Value, a.Shielding.Value.Value, 1e-9);
            Assert.True(a.Shielding.Low < b.Shielding.Low && a.Shielding.High > b.Shielding.High);
            Assert.True(now.Evidence.OneSidedLow < before.Evidence.OneSidedLow);
            // Scatter of the noise correction goes by what sweeps show, not by what their mean is worth.
            Assert.True(now.Evidence.DynamicRange <= before.Evidence.DynamicRange);
        }
    }

    [Fact]
    public void TheMeanOverTheBandTakesTheLargerFactor()
    {
        FigureParts now = Mean(Found.Curves[0]), before = Mean(Independent);
        Assert.Equal(before.Value, now.Value, 1e-9);
        Assert.Equal(Math.Sqrt(Reference.FigureFactor) * before.Reference.StandardUncertainty, now.Reference.StandardUncertainty,
            1e-12);
        Assert.Equal(Math.Sqrt(Covered.FigureFactor) * before.Covered.StandardUncertainty, now.Covered.StandardUncertainty,
            1e-12);
        Assert.Equal(Covered.FigureDegreesOfFreedom, now.Covered.DegreesOfFreedom);
        Assert.Equal(before.Floor, now.Floor);
    }

    [Fact]
    public void BudgetsAndBandBelongToTheSameErrors()
    {
        Assert.All(Found.Budgets[0].Frequencies, b => Assert.Equal(
            Found.Curves[0].Readings.Single(r => r.Evidence.At == b.At).Evidence.StandardUncertaintyDb!.Value,
                b.Linear!.StandardUncertainty, 1e-6));
        Assert.True(Found.Bands[0].MeanDb.Low < BandEstimator.State(Independent, Found.Campaign.Grid, null,
            Confidence.NinetyFive).MeanDb.Low);
    }

    [Fact]
    public void ErrorsThatLotsOfSeveralCampaignsShareAreWiderToo()
    {
        double[] weights = LogWeights.Of(Found.Campaign.Grid);
        Contribution[] now = SharedErrors.Of([Found.Curves[0]], own => LogWeights.Mean(weights, own))!,
            before = SharedErrors.Of([Independent], own => LogWeights.Mean(weights, own))!;
        Assert.Equal(Math.Sqrt(Reference.FigureFactor) * before[0].StandardUncertainty, now[0].StandardUncertainty, 1e-12);
        Assert.Equal(Reference.FigureDegreesOfFreedom, now[0].DegreesOfFreedom);
        Assert.Equal(before[1], now[1]);
    }

    [Fact]
    public void CandidatesAreToldApartLess()
    {
        double[] weights = LogWeights.Of(Found.Campaign.Grid);
        CandidateMean now = Candidate(Found.Curves[0], weights), before = Candidate(Independent, weights);
        Assert.Equal(before.Value, now.Value, 1e-9);
        Assert.Equal(Math.Sqrt(Covered.FigureFactor) * before.StandardError, now.StandardError, 1e-12);
        Assert.Equal(Covered.FigureDegreesOfFreedom, now.DegreesOfFreedom, 1e-12);
    }

    [Fact]
    public void APlanOfThePilotsNumbersPromisesWhatThePilotShows()
    {
        PlanBasis basis = PilotComponents.Of(Found.Campaign, Found.Floor, [], Found.SerialCorrelation)!,
            independent = PilotComponents.Of(Found.Campaign, Found.Floor, [])!;
        var numbers = new SweepNumbers(1, 10, 10);
        double planned = HalfWidthForecast.Db(basis, numbers, Confidence.NinetyFive);
        double shown =
            Sample.Median([.. Found.Curves[0].Readings.Cast<ShieldingReading.Measured>()
            .Select(m => (m.Shielding.High.Value - m.Shielding.Low.Value) / 2)]);
        Assert.InRange(planned / shown, 0.85, 1.15);
        Assert.True(planned > 1.5 * HalfWidthForecast.Db(independent, numbers, Confidence.NinetyFive));
        // Twice the sweeps help less than they would if they were independent, but they help.
        double Twice(PlanBasis of) =>
            HalfWidthForecast.Db(of, new SweepNumbers(1, 20, 20), Confidence.NinetyFive)
            / HalfWidthForecast.Db(of, numbers, Confidence.NinetyFive);
        Assert.InRange(Twice(basis), Twice(independent) + 0.01, 0.98);
        Assert.True(new ResultForecast(basis, numbers, Confidence.NinetyFive)
            .UsableRangeDb(60) < new ResultForecast(independent, numbers, Confidence.NinetyFive).UsableRangeDb(60));
    }

    [Fact]
    public void DrawnCampaignsOfThePlanAreAsWideAsItPromises()
    {
        PlanBasis basis = PilotComponents.Of(Found.Campaign, Found.Floor, [], Found.SerialCorrelation)!;
        var numbers = new SweepNumbers(1, 10, 10);
        ExpectedResult drawn = new ResultForecast(basis, numbers, Confidence.NinetyFive).At(30, 70);
        Assert.InRange((drawn.MedianHighDb - drawn.MedianLowDb) / 2 / HalfWidthForecast.Db(basis, numbers, Confidence.NinetyFive),
            0.9, 1.1);
        Assert.InRange((drawn.MedianHighDb + drawn.MedianLowDb) / 2, 29.9, 30.1);
        // One-sided 95 % limits of campaigns that shield 30 dB lie above it in 5 %.
        Assert.InRange(drawn.OneSidedLowDb.Count(low => low > 30) / (double)drawn.OneSidedLowDb.Length, 0.03, 0.07);
    }

    private static FigureParts Mean(ShieldingCurve curve)
    {
        double[] weights = LogWeights.Of(Found.Campaign.Grid);
        return new FigureEstimator(curve, weights, Confidence.NinetyFive).Parts()!.Value;
    }

    private static CandidateMean Candidate(ShieldingCurve curve, double[] weights) =>
        CandidateFigures.Of([SpecimenSweeps.Of(Found.Campaign.Covered[0], curve)], ImmutableArray.Create(curve),
            weights, byPlacement: false)[0].Mean;
}
