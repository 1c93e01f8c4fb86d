using SweepStats.Lots;
using Xunit;

namespace SweepStats.Tests.Lots;

public sealed class ControlChartTests
{
    // Constants of ISO 7870-2 for n = 2 to 15 (fixtures/published/control-charts): c4, A3, B3, B4, B5, B6 in these columns.
    private const int C4 = 1, A3 = 6, B3 = 7, B4 = 8, B5 = 9, B6 = 10;

    private static readonly Dictionary<int, double[]> Constants =
        Fixtures.Numbers("published/control-charts/constants.csv").ToDictionary(row => (int)row[0]);

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(7)]
    public void LotsOfOneSizeHaveTheLimitsOfTheTables(int size)
    {
        double[][] lots = [.. Enumerable.Range(0, 5)
            .Select(l => Enumerable.Range(0, size).Select(i => 40 + l + (0.3 * ((i * (l + 2)) % 5))).ToArray())];
        double centre = lots.Average(l => l.Average()), usual = lots.Average(Deviation);
        (ControlChart means, ControlChart deviations) = OfLots(lots);
        Assert.Equal((ControlFigure.LotMean, ControlFigure.LotDeviation), (means.Figure, deviations.Figure));
        Assert.Equal(centre, means.CentreDb, 1e-9);
        Assert.Equal(usual, deviations.CentreDb, 1e-9);
        Assert.All(means.Points.Zip(lots), p =>
        {
            Assert.Equal(p.Second.Average(), p.First.Value, 1e-9);
            Assert.Equal(centre - (Constants[size][A3] * usual), p.First.Low, 1e-6);
            Assert.Equal(centre + (Constants[size][A3] * usual), p.First.High, 1e-6);
        });
        Assert.All(deviations.Points.Zip(lots), p =>
        {
            Assert.Equal(Deviation(p.Second), p.First.Value, 1e-9);
            Assert.Equal(Constants[size][B3] * usual, p.First.Low, 1e-6);
            Assert.Equal(Constants[size][B4] * usual, p.First.High, 1e-6);
        });
    }

    [Fact]
    public void LotsOfDifferentSizeHaveLimitsOfTheirOwn()
    {
        double[][] lots = [[40, 41], [40.5, 41.5, 40.2, 41.1], [39, 40, 41, 40.5, 40.2, 39.7]];
        // The usual scatter is the mean of s/c4, since small lots show too little of theirs.
        double usual = lots.Average(l => Deviation(l) / Constants[l.Length][C4]);
        (ControlChart means, ControlChart deviations) = OfLots(lots);
        Assert.All(means.Points.Zip(lots),
            p => Assert.Equal(3 * usual / Math.Sqrt(p.Second.Length), p.First.High - means.CentreDb, 1e-6));
        Assert.All(means.Points.Zip(lots),
            p => Assert.Equal(3 * usual / Math.Sqrt(p.Second.Length), means.CentreDb - p.First.Low, 1e-6));
        Assert.All(deviations.Points.Zip(lots), p =>
        {
            Assert.Equal(Constants[p.Second.Length][B5] * usual, p.First.Low, 1e-6);
            Assert.Equal(Constants[p.Second.Length][B6] * usual, p.First.High, 1e-6);
        });
    }

    [Fact]
    public void ALotThatIsOffLiesOutsideAndDoesNotWidenItsLimits()
    {
        double[][] alike = [[40, 41, 40.4], [40.2, 40.9, 40.5], [40.1, 41.1, 40.3], [40.3, 40.8, 40.4]];
        ControlChart with = OfLots([.. alike, [42, 42.9, 42.4]]).Means, without = OfLots([.. alike, [40, 40.9, 40.4]]).Means;
        Assert.Equal([false, false, false, false, true], with.Points.Select(p => p.Outside));
        Assert.All(without.Points, p => Assert.False(p.Outside));
        Assert.Equal(without.Points[0].High - without.Points[0].Low, with.Points[0].High - with.Points[0].Low, 1e-9);
    }

    // Common practice (from memory): mean ± 2.66 mean moving ranges, and 3.267 of them for the range itself.
    [Fact]
    public void SingleSpecimensHaveTheLimitsOfTheirMovingRanges()
    {
        double[] values = [40, 41, 40.5, 42, 41.2, 60];
        ControlChart[] charts = [.. ControlChart.OfSpecimens([.. values.Select((v, i) => Specimen("A", i, v))])];
        double step = (1 + 0.5 + 1.5 + 0.8 + 18.8) / 5, centre = values.Average();
        Assert.Equal([ControlFigure.Specimen, ControlFigure.MovingRange], charts.Select(c => c.Figure));
        Assert.Equal(values, charts[0].Points.Select(p => p.Value));
        Assert.All(charts[0].Points, p => Assert.Equal(centre + (2.66 * step), p.High, 0.005 * step));
        Assert.All(charts[0].Points, p => Assert.Equal(centre - (2.66 * step), p.Low, 0.005 * step));
        Assert.Equal(step, charts[1].CentreDb, 1e-9);
        Assert.Equal(5, charts[1].Points.Length);
        Assert.All(charts[1].Points, p => Assert.Equal((0.0, 3.267 * step), (p.Low, p.High), Close(0.0005 * step)));
        Assert.Equal([false, false, false, false, true], charts[1].Points.Select(p => p.Outside));
        Assert.Equal("A/A01", charts[1].Points[0].Label);
    }

    [Fact]
    public void TooLittleMakesNoChart()
    {
        Assert.Empty(Charts([[40, 41], [42, 43]]));
        Assert.Empty(Charts([[40, 41], [42, 43], [44]]));
        Assert.Empty(Charts([[40, 40], [42, 42], [44, 44]]));
        Assert.Empty(ControlChart.OfSpecimens([Specimen("A", 0, 40), Specimen("A", 1, 41), Specimen("A", 2, 42)]));
        Assert.Empty(ControlChart.OfSpecimens([.. Enumerable.Range(0, 5).Select(i => Specimen("A", i, 40))]));
        Assert.Equal(2, ControlChart.OfSpecimens([.. Enumerable.Range(0, 4).Select(i => Specimen("A", i, 40 + i))]).Length);
    }

    [Fact]
    public void ALotOfASingleSpecimenHasNoPoint()
    {
        (ControlChart means, _) = OfLots([[40, 41], [50], [42, 43], [41, 42.5]]);
        Assert.Equal(["A", "C", "D"], means.Points.Select(p => p.Label));
        Assert.Equal((40.5 + 42.5 + 41.75) / 3, means.CentreDb, 1e-9);
    }

    [Fact]
    public void SpecimensGoByTimeOnlyWhereAllHaveOne()
    {
        DateTimeOffset noon = new(2026, 10, 5, 12, 0, 0, TimeSpan.Zero);
        TimedSpecimen[] timed = [Specimen("A", 0, 40) with { TakenAt = noon.AddHours(2) },
            Specimen("A", 1, 41) with { TakenAt = noon }, Specimen("A", 2, 42) with { TakenAt = noon.AddHours(1) }];
        Assert.Equal([41.0, 42, 40], TimedSpecimen.InOrder(timed).Select(p => p.MeanDb));
        Assert.Equal([40.0, 41, 43], TimedSpecimen.InOrder([timed[0], timed[1], Specimen("B", 0, 43)]).Select(p => p.MeanDb));
    }

    private static double Deviation(double[] values) =>
        Math.Sqrt(values.Sum(v => Math.Pow(v - values.Average(), 2)) / (values.Length - 1));

    private static TimedSpecimen Specimen(string lot, int number, double mean) => new(lot, $"{lot}{number:00}", null, mean);

    private static ControlChart[] Charts(double[][] lots) =>
        [.. ControlChart.OfLots(
            [.. lots.SelectMany((values, l) => values.Select((v, i) => Specimen(((char)('A' + l)).ToString(), i, v)))])];

    private static (ControlChart Means, ControlChart Deviations) OfLots(double[][] lots) =>
        Charts(lots) is [var means, var deviations] ? (means, deviations) : throw new InvalidOperationException("No charts.");

    private static Func<(double, double), (double, double), bool> Close(double tolerance) =>
        (a, b) => Math.Abs(a.Item1 - b.Item1) <= tolerance && Math.Abs(a.Item2 - b.Item2) <= tolerance;
}
