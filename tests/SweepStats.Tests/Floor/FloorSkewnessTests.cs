using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Floor;

/// <summary>Whether the readings of a floor show which look is kept.</summary>
public sealed class FloorSkewnessTests
{
    private const double K = DetectorNoise.DecibelsPerNeper;

    [Theory]
    [InlineData(3)]
    [InlineData(1)]
    public void CumulantsAboutThePooledFloorAreThoseOfAReading(int sweeps)
    {
        // Single looks: π²/6 and −2ζ(3).
        const int Floors = 60;
        double[] second = new double[Floors], third = new double[Floors];
        for (int i = 0; i < Floors; i++)
        {
            SweepBlock floor = Drawn(Averaging.Sample, 1, sweeps, (ulong)i);
            FloorCumulants seen = FloorCumulants.Of(floor, NoiseFloorEstimator.Split(floor, Averaging.Unknown));
            (second[i], third[i]) = (seen.Second, seen.Third);
        }

        Agreement.Within(4 * Error(second), Math.PI * Math.PI / 6, Sample.Mean(second), sweeps);
        Agreement.Within(4 * Error(third), -2 * 1.2020569031595942, Sample.Mean(third), sweeps);
    }

    [Fact]
    public void AveragesLeanByTheirClosedForms()
    {
        // In dB: π²/6/L and −2ζ(3)/L²; in power ψ₁(M) and ψ₂(M). At M = 4: ψ₁ = π²/6 − 1 − 1/4 − 1/9, ψ₂ = −2ζ(3) + 2(1 + 1/8 +
        // 1/27).
        ShapeCumulants log = ShapeCumulants.LogAverages(Math.PI * Math.PI / 6 / 7);
        Assert.Equal(-2 * 1.2020569031595942 / 49, log.Third, 1e-12);
        Assert.Equal(2 * log.Third / log.Cumulants[0], log.Slope, 1e-12);
        double variance = (Math.PI * Math.PI / 6) - 1 - 0.25 - (1.0 / 9);
        Assert.Equal((-2 * 1.2020569031595942) + (2 * (1 + 0.125 + (1.0 / 27))), ShapeCumulants.ThirdOfPowerAverages(variance),
            1e-10);
    }

    [Fact]
    public void TheHighestLeansByItsOwnCumulants()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/held.csv"))
        {
            ShapeCumulants shape = ShapeCumulants.Highest(row[2] / K / K);
            Agreement.Within(1e-8, row[3] / K / K / K, shape.Third, row);
            Agreement.Within(1e-8, row[4] / K / K / K / K, shape.Cumulants[2], row);
        }
    }

    [Theory]
    [InlineData(Averaging.Power, 20, 3)]
    [InlineData(Averaging.Power, 3, 5)]
    [InlineData(Averaging.Log, 20, 1)]
    public void TheStandardErrorIsWhatDrawnFloorsScatter(Averaging averaging, double looks, int sweeps)
    {
        int floors = Draws.Of(150);
        double[] away = [.. Enumerable.Range(0, floors).Select(i =>
            FloorSkewness.Of(Drawn(averaging, looks, sweeps, (ulong)(1000 + i))))
            .Select(s => (s.Skewness - s.OfLogAverages) / s.StandardError)];
        double deviation = Error(away) * Math.Sqrt(floors);
        // Three standard errors of a standard deviation; averages in power lean a little further down than those in dB.
        Assert.InRange(deviation, 1 - (3 / Math.Sqrt(2.0 * floors)), 1 + (3 / Math.Sqrt(2.0 * floors)));
        Assert.InRange(Sample.Mean(away), -1, 4 / Math.Sqrt(floors));
    }

    [Theory]
    [InlineData(Averaging.Sample, 1, 3)]
    [InlineData(Averaging.Power, 3, 3)]
    [InlineData(Averaging.Power, 20, 1)]
    [InlineData(Averaging.Power, 20, 10)]
    [InlineData(Averaging.Power, 100, 3)]
    [InlineData(Averaging.Log, 3, 3)]
    [InlineData(Averaging.Log, 20, 5)]
    public void AveragesAreNotTakenForKeptLooks(Averaging averaging, double looks, int sweeps)
    {
        int taken = Enumerable.Range(0, Draws.Of(100)).Count(i =>
            Shape(averaging, looks, sweeps, (ulong)(2000 + i)) is NoiseShape.Highest or NoiseShape.Lowest);
        // To both sides together.
        Often.AtMost(taken, Draws.Of(100), 0.002, whenFull: 2);
    }

    [Theory]
    [InlineData(10, 10, 30, 0.8)]
    [InlineData(100, 3, 30, 0.85)]
    [InlineData(100, 5, 20, 0.95)]
    [InlineData(1000, 3, 8, 0.85)]
    public void TheHighestOfSeveralLooksIsRecognised(double looks, int sweeps, int floors, double share)
    {
        int found = Enumerable.Range(0, Draws.Of(floors)).Count(i =>
            Shape(Averaging.Peak, looks, sweeps, (ulong)(3000 + i)) == NoiseShape.Highest);
        Often.AtLeast(found, Draws.Of(floors), share,
            whenFull: (int)Math.Ceiling((share * floors) - (3 * Math.Sqrt(share * (1 - share) * floors))));
    }

    [Theory]
    [InlineData(10, 3)]
    [InlineData(100, 5)]
    public void AKeptLookIsSeldomCalledAnAverage(double looks, int sweeps)
    {
        int missed = Enumerable.Range(0, 40).Count(i =>
            Shape(Averaging.Peak, looks, sweeps, (ulong)(4000 + i)) == NoiseShape.Averages);
        Assert.InRange(missed, 0, 3);
    }

    [Fact]
    public void TheLowestOfSingleLooksCannotBeToldFromASingleLook()
    {
        Assert.All(Enumerable.Range(0, 20), i =>
            Assert.Equal(NoiseShape.Untold, Shape(Averaging.Lowest, 30, 5, (ulong)(5000 + i))));
        Assert.All(Enumerable.Range(0, 20), i =>
            Assert.Equal(NoiseShape.Untold, Shape(Averaging.Sample, 1, 5, (ulong)(5000 + i))));
    }

    [Fact]
    public void TheLowestOfAveragesLeansFurtherDown()
    {
        var random = new RandomSource(77);
        double[][] levels = [.. Enumerable.Range(0, 10).Select(_ => Enumerable.Range(0, 201).Select(_ =>
            K * Math.Log(Enumerable.Range(0, 10).Min(_ => random.Gamma(20) / 20))).ToArray())];
        Assert.Equal(NoiseShape.Lowest, FloorSkewness.Of(Rehearsed.Floor(levels)).Shape);
    }

    [Fact]
    public void LittleScatterCoarseStepsAndFewReadingsTellNothing()
    {
        Assert.Equal(NoiseShape.Untold, Shape(Averaging.Power, 400, 5, 1));
        Assert.Equal(NoiseShape.Untold,
            FloorSkewness.Of(Aligner.Align(Rehearser.Draw(Plan(Averaging.Peak, 100, 5, 1) with { QuantisationDb = 2 }).Campaign,
            null).Floor!).Shape);
        Assert.Equal(NoiseShape.Untold,
            FloorSkewness.Of(Aligner.Align(Rehearser.Draw(Plan(Averaging.Peak, 100, 5, 1) with { Points = 15 }).Campaign,
            null).Floor!).Shape);
        FloorSkewness still = FloorSkewness.Of(Rehearsed.Floor([.. Enumerable.Range(0, 3).Select(_ =>
            Enumerable.Repeat(-100.0, 61).ToArray())]));
        Assert.Equal((NoiseShape.Untold, double.NaN), (still.Shape, still.Skewness));
    }

    [Fact]
    public void LevelAndOrderOfSweepsChangeNothing()
    {
        SweepBlock floor = Drawn(Averaging.Peak, 30, 5, 9);
        double[][] rows = [.. Enumerable.Range(0, 5).Select(j => floor[j].ToArray())];
        FloorSkewness plain = FloorSkewness.Of(Rehearsed.Floor(rows));
        FloorSkewness moved = FloorSkewness.Of(Rehearsed.Floor([.. rows.Reverse().Select((r, j) =>
            r.Select(l => l + 30 + j).ToArray())]));
        Assert.Equal(plain.Skewness, moved.Skewness, 1e-9);
        Assert.Equal(plain.StandardError, moved.StandardError, 1e-9);
        Assert.Equal(plain.Shape, moved.Shape);
    }

    [Fact]
    public void ARippleAndATransmitterAreNotTakenForAKeptLook()
    {
        int taken = Enumerable.Range(0, 30).Count(i =>
        {
            RehearsalPlan plan = Plan(Averaging.Power, 20, 5, (ulong)(6000 + i)) with
            {
                FloorTiltDb = 8,
                Ambient = [new AmbientCarrier(new Hertz(150e6), new Decibels(6), 1), new AmbientCarrier(new Hertz(400e6),
                    new Decibels(3), 0.5)],
            };
            return FloorSkewness.Of(Aligner.Align(Rehearser.Draw(plan).Campaign, null).Floor!).Shape == NoiseShape.Highest;
        });
        Assert.InRange(taken, 0, 1);
    }

    private static NoiseShape Shape(Averaging averaging, double looks, int sweeps, ulong seed) =>
        FloorSkewness.Of(Drawn(averaging, looks, sweeps, seed)).Shape;

    private static RehearsalPlan Plan(Averaging averaging, double looks, int sweeps, ulong seed) => new()
    {
        Seed = seed,
        FloorSweeps = sweeps,
        ReferenceSweeps = 1,
        CoveredSweeps = 1,
        SweepDeviationDb = 0.1,
        Averaging = averaging,
        Looks = looks,
    };

    private static SweepBlock Drawn(Averaging averaging, double looks, int sweeps, ulong seed) =>
        Aligner.Align(Rehearser.Draw(Plan(averaging, looks, sweeps, seed)).Campaign, null).Floor!;

    private static double Error(double[] values) =>
        Math.Sqrt(Sample.SquaredDeviations(values, Sample.Mean(values)) / (values.Length - 1) / values.Length);
}
