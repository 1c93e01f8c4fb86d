using SweepStats.Floor;
using SweepStats.Leakage;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Leaking;

public sealed class PlateReadingsTests
{
    private const double FloorDb = -100;

    // A leakage as strong as the noise of single looks raises their log mean by 3.4596 dB, and the log mean of noise lies 2.5068
    // dB under its power.
    [Fact]
    public void ALeakageAsStrongAsTheNoiseIsReadAsThat() =>
        Assert.Equal(FloorDb + 2.5068, Readings(1).At(FloorDb + 3.4596, 0).EstimateDb, 1e-3);

    // Variances of readings with a signal in them are read off a table: some hundredths of a dB.
    [Fact]
    public void TheLimitIsThatOfAnotherProgram()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/plate.csv"))
        {
            Assert.Equal(row[2], Readings(row[0]).At(FloorDb + row[1], 0).LimitDb - FloorDb, row[1] == 0 ? 1e-6 : 0.02);
        }
    }

    [Fact]
    public void TheLimitRisesWithTheReadingAndStandsStillBelowTheFloor()
    {
        double[] limits = [.. Enumerable.Range(-5, 40).Select(rise => Readings(20).At(FloorDb + rise, 0).LimitDb)];
        Assert.All(limits.Zip(limits.Skip(1)), pair => Assert.True(pair.Second >= pair.First));
        Assert.Equal(limits[0], limits[5], 12);
    }

    // Far over the noise the limit is the level itself.
    [Fact]
    public void AStrongLeakageIsKnown() => Assert.Equal(FloorDb + 50, Readings(20).At(FloorDb + 50, 0).LimitDb, 0.05);

    [Fact]
    public void MoreSweepsLowerTheLimit() =>
        Assert.True(Readings(20, 10).At(FloorDb, 0).LimitDb < Readings(20, 3).At(FloorDb, 0).LimitDb - 2);

    [Fact]
    public void ALowerLimitNeverWidensAnInterval()
    {
        var limits = new ShieldingLimits(40, 39, 41, 0.5, 10);
        ShieldingLimits[] widened = [.. Enumerable.Range(0, 60)
            .Select(i => LeakageLaw.Widened(limits, Levels(new LeakageLevel(double.NegativeInfinity, -100 + i)), 0.975))];
        Assert.All(widened.Zip(widened.Skip(1)), pair =>
        {
            Assert.True(pair.First.LowDb >= pair.Second.LowDb);
            Assert.True(pair.First.HighDb <= pair.Second.HighDb);
        });
        Assert.Equal(39, widened[0].LowDb, 0.01);
        Assert.Equal(double.PositiveInfinity, widened[^1].HighDb);
    }

    private static ReadingLevels Levels(LeakageLevel leakage) => new(
        new RepeatedLevel(0, Contribution.None), new RepeatedLevel(-40, Contribution.None),
        new RepeatedLevel(FloorDb, Contribution.None), SystematicError.None)
    {
        Leakage = leakage,
    };

    private static PlateReadings Readings(double looks, int sweeps = 1)
    {
        var noise = new DetectorNoise(looks);
        var floor = new NoiseFloor
        {
            Source = FloorSource.Measured,
            SweepCount = 5,
            Noise = [noise],
            ReadingDeviationDb = noise.LogStandardDeviation,
            SweepOffsetDeviationDb = null,
            LevelDb = [FloorDb],
            StandardErrorDb = [0],
            DegreesOfFreedom = [double.PositiveInfinity],
            Ambient = [false],
        };
        return new PlateReadings(noise, floor, sweeps);
    }
}
