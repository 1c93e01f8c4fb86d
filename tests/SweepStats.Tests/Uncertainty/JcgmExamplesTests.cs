using SweepStats.Statistics;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Uncertainty;

/// <summary>
/// Worked examples of JCGM 100:2008 (GUM), annex H. Inputs and printed results from memory; all agree on recomputation but where
/// a test says otherwise.
/// </summary>
public sealed class JcgmExamplesTests
{
    [Fact]
    public void H1EndGauge()
    {
        InputQuantity[] inputs =
        [
            new("standard", 50_000_623, new NormalSpread(25), 18),
            // 5.8 nm (24), 3.9 nm (5) and 6.7 nm (8): 9.7 nm, 25.6 printed.
            new("comparator", 215, new NormalSpread(9.7), 25.6),
            new("expansion", 11.5e-6, new RectangularSpread(2e-6)),
            new("temperature", -0.1, new NormalSpread(0.41)),
            new("difference of expansion", 0, new RectangularSpread(1e-6), 50),
            new("difference of temperature", 0, new RectangularSpread(0.05), 2),
        ];
        static double Length(ReadOnlySpan<double> x) => x[0] + x[1] - (x[0] * ((x[4] * x[3]) + (x[2] * x[5])));
        LinearBudget budget = LinearBudget.Of(Length, inputs);
        Assert.Equal(50_000_838, budget.Estimate, 0.5);
        double[] printed = [25, 9.7, 0, 0, 2.9, 16.6];
        Assert.All(budget.Lines, (line, i) => Assert.Equal(printed[i], line.Contribution, 0.06));
        Assert.Equal(32, budget.StandardUncertainty, 0.5);
        // Printed 16.7 from rounded terms; unrounded 16.76.
        Assert.Equal(16.7, budget.DegreesOfFreedom, 0.1);
        var ninetyNine = new Confidence(0.99);
        Assert.Equal(2.92, budget.CoverageFactor(ninetyNine, wholeDegrees: true), 0.005);
        // Printed 93 = 2.92·32; unrounded 92.5.
        Assert.Equal(92.5, budget.CoverageFactor(ninetyNine, wholeDegrees: true) * budget.StandardUncertainty, 0.1);
        // Second-order terms 11.7 and 1.7 nm: 34 nm in all.
        Assert.Equal(34, Math.Sqrt((budget.StandardUncertainty * budget.StandardUncertainty) + budget.SecondOrderVariance), 0.5);
        Assert.Equal((11.7 * 11.7) + (1.7 * 1.7), budget.SecondOrderVariance, 4.0);
    }

    [Fact]
    public void H1CombinesThePartsOfTheComparator()
    {
        InputQuantity[] parts = [new("repeats", 0, new NormalSpread(5.8), 24), new("random", 0, new NormalSpread(3.9), 5),
            new("systematic", 0, new NormalSpread(6.7), 8)];
        LinearBudget budget = LinearBudget.Of(x => x[0] + x[1] + x[2], parts);
        Assert.Equal(9.7, budget.StandardUncertainty, 0.05);
        // Printed 25.6; unrounded 25.4.
        Assert.Equal(25.4, budget.DegreesOfFreedom, 0.25);
    }

    [Fact]
    public void H2ResistanceReactanceAndImpedanceTogether()
    {
        double[][] rows = Fixtures.Numbers("published/jcgm/h2.csv");
        double[][] series = [.. Enumerable.Range(0, 3).Select(i => rows.Select(r => r[i]).ToArray())];
        double[][] correlation = [.. series.Select(a => series.Select(b => Correlation.Pearson(a, b)).ToArray())];
        Assert.Equal(-0.36, correlation[0][1], 0.005);
        Assert.Equal(0.86, correlation[0][2], 0.005);
        Assert.Equal(-0.65, correlation[1][2], 0.0051);
        InputQuantity[] inputs =
            [.. series.Select((s, i) => new InputQuantity(i.ToString(System.Globalization.CultureInfo.InvariantCulture),
                Sample.Mean(s), new NormalSpread(Sample.StandardDeviation(s) / Math.Sqrt(5)), 4))];
        LinearBudget Of(MeasurementModel model, bool correlated) =>
            LinearBudget.Of(model, inputs, correlated ? correlation : null);
        // mA to A.
        MeasurementModel r = x => x[0] / x[1] * 1000 * Math.Cos(x[2]), reactance = x => x[0] / x[1] * 1000 * Math.Sin(x[2]),
            z = x => x[0] / x[1] * 1000;
        (MeasurementModel Model, double Value, double U, double Alone)[] printed =
            [(r, 127.732, 0.071, 0.195), (reactance, 219.847, 0.295, 0.201), (z, 254.260, 0.236, 0.204)];
        foreach ((MeasurementModel model, double value, double u, double alone) in printed)
        {
            Assert.Equal(value, Of(model, true).Estimate, 0.0006);
            // The printed 0.295 is 0.2956 unrounded.
            Assert.Equal(u, Of(model, true).StandardUncertainty, 0.0007);
            Assert.Equal(alone, Of(model, false).StandardUncertainty, 0.0006);
        }

        Assert.Equal(-0.588, LinearBudget.Correlation(Of(r, true), Of(reactance, true), correlation), 0.001);
        Assert.Equal(-0.485, LinearBudget.Correlation(Of(r, true), Of(z, true), correlation), 0.001);
        Assert.Equal(0.993, LinearBudget.Correlation(Of(reactance, true), Of(z, true), correlation), 0.001);
        Assert.Equal(0.056, LinearBudget.Correlation(Of(r, false), Of(reactance, false)), 0.001);
        Assert.Equal(0.527, LinearBudget.Correlation(Of(r, false), Of(z, false)), 0.001);
        Assert.Equal(0.878, LinearBudget.Correlation(Of(reactance, false), Of(z, false)), 0.001);
    }

    [Fact]
    public void H3ThermometerLine()
    {
        double[][] rows = Fixtures.Numbers("published/jcgm/h3.csv");
        RegressionLine line = RegressionLine.Of([.. rows.Select(r => r[0] - 20)], [.. rows.Select(r => r[1])]);
        Assert.Equal(-0.1712, line.Intercept, 5e-5);
        Assert.Equal(0.0029, line.InterceptUncertainty, 5e-5);
        Assert.Equal(0.00218, line.Slope.Value, 5e-6);
        Assert.Equal(0.00067, line.Slope.Uncertainty, 5e-6);
        Assert.Equal(0.0035, line.ResidualDeviation, 5e-5);
        Assert.Equal(9, line.Slope.DegreesOfFreedom);
        // Prediction at 30 °C through the budget: intercept and slope correlate by -0.930.
        double mean = rows.Average(r => r[0] - 20);
        double r12 = -mean * line.Slope.Uncertainty / line.InterceptUncertainty;
        Assert.Equal(-0.930, r12, 5e-4);
        LinearBudget at30 = LinearBudget.Of(
            x => x[0] + (10 * x[1]),
            [new("intercept", line.Intercept, new NormalSpread(line.InterceptUncertainty), 9),
                new("slope", line.Slope.Value, new NormalSpread(line.Slope.Uncertainty), 9)],
            [[1, r12], [r12, 1]]);
        Assert.Equal(-0.1494, at30.Estimate, 5e-5);
        Assert.Equal(0.0041, at30.StandardUncertainty, 5e-5);
    }

    [Fact]
    public void H5DaysAndReadingsWithinDays()
    {
        // Ten days of five readings, given by day means and standard deviations; five values with these are as good as the five
        // read.
        double[][] rows = Fixtures.Numbers("published/jcgm/h5.csv");
        double[] pattern = [-Math.Sqrt(1.6), 0, 0, 0, Math.Sqrt(1.6)];
        Assert.Equal(0.8944, Sample.StandardDeviation(pattern), 5e-5);
        double[] values =
            [.. rows.SelectMany(day => pattern.Select(p => day[1] + (p * day[2] * 1e-6 / Sample.StandardDeviation(pattern))))];
        OneWayAnova days = OneWayAnova.Of(values, [.. rows.SelectMany((_, j) => Enumerable.Repeat(j, 5))]);
        Assert.Equal(10.000097, Sample.Mean(values), 5e-7);
        Assert.Equal(128e-6, Math.Sqrt(days.BetweenMeanSquare), 0.6e-6);
        Assert.Equal(85e-6, Math.Sqrt(days.WithinMeanSquare), 0.6e-6);
        // Printed 2.25; 2.268 from the printed 128 and 85, 2.262 unrounded.
        Assert.Equal(2.262, days.F, 0.002);
        Assert.InRange(days.Probability, 0.025, 0.05);
        Assert.Equal(43e-6, Math.Sqrt(days.GroupVariance), 0.6e-6);
        Assert.Equal(18e-6, Math.Sqrt(days.BetweenMeanSquare / 50), 0.2e-6);
        double pooled = (days.BetweenSumOfSquares + days.WithinSumOfSquares) / 49;
        Assert.Equal(13e-6, Math.Sqrt(pooled / 50), 0.5e-6);
    }

    [Theory]
    [InlineData(3.35, 3.97)]
    [InlineData(2.65, 3.60)]
    public void ConductedEmissionBudgetOfCispr(double networkDb, double printed)
    {
        // CISPR 16-4-2:2003, conducted disturbance, from memory. Printed from terms rounded to 0.01: unrounded 3.962 and 3.591.
        InputQuantity[] inputs =
        [
            new("reading", 0, new NormalSpread(0.1)), new("attenuation", 0, new NormalSpread(0.1 / 2)),
            new("network factor", 0, new NormalSpread(0.2 / 2)), new("sine voltage", 0, new NormalSpread(1.0 / 2)),
            new("pulse amplitude", 0, new RectangularSpread(1.5)), new("pulse repetition", 0, new RectangularSpread(1.5)),
            new("mismatch", 0, new ArcsineSpread(0.75)), new("network impedance", 0, new TrapezoidalSpread(networkDb, 0)),
        ];
        LinearBudget budget = LinearBudget.Of(x => x[0] + x[1] + x[2] + x[3] + x[4] + x[5] + x[6] + x[7], inputs);
        Assert.Equal(printed, 2 * budget.StandardUncertainty, 0.01);
    }
}
