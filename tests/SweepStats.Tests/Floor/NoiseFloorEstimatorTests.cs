using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Floor;

public sealed class NoiseFloorEstimatorTests
{
    [Theory]
    [InlineData(Averaging.Power, 1)]
    [InlineData(Averaging.Power, 20)]
    [InlineData(Averaging.Power, 100)]
    public void TheNumberOfLooksIsFoundFromTheScatter(Averaging averaging, double looks)
    {
        NoiseFloor floor = Estimated(new RehearsalPlan { Looks = looks, Averaging = averaging, Points = 401, Seed = 5 });
        // The scatter of 401 frequencies and 4 degrees of freedom each is known to about 2.5 %, the looks to twice that.
        Assert.InRange(floor.Noise[0].Looks, looks * 0.85, (looks * 1.15) + 0.05);
    }

    [Fact]
    public void LogAveragesAreFoundFromTheScatterToo()
    {
        NoiseFloor floor = Estimated(new RehearsalPlan { Looks = 30, Averaging = Averaging.Log, Points = 401 });
        Assert.Equal(1, floor.Noise[0].Looks);
        Assert.InRange(floor.Noise[0].LogAverages, 25, 35);
    }

    [Fact]
    public void TheLevelIsTheLogMeanOfTheNoise()
    {
        NoiseFloor floor = Estimated(new RehearsalPlan { FloorDbm = -97, Looks = 3, Points = 401 });
        double expected = -97 + new DetectorNoise(3).LogMeanOffset;
        Assert.All(floor.LevelDb, (level, f) =>
            Assert.InRange(level, expected - (5 * floor.StandardErrorDb[f]), expected + (5 * floor.StandardErrorDb[f])));
        // Chance alone would leave 1/√33 = 0.17 of it; what narrower windows disagree by is added, which on a flat floor is
        // chance too.
        Assert.True(floor.StandardErrorDb.Average() < 0.5 * floor.ReadingDeviationDb / Math.Sqrt(5),
            "Pooling over frequencies shrinks the error.");
    }

    [Fact]
    public void ACarrierIsMarkedAndKeepsItsOwnLevelWithoutRaisingItsNeighbours()
    {
        NoiseFloor floor =
            Estimated(new RehearsalPlan
            {
                Ambient = [new AmbientCarrier(new Hertz(200e6), new Decibels(12))],
                Points = 201,
                FloorDbm = -100,
            });
        int carrier = Enumerable.Range(0, 201).Single(f => floor.Ambient[f]);
        Assert.InRange(floor.LevelDb[carrier], -90, -85.5);
        Assert.InRange(floor.LevelDb[carrier - 1], -101, -99.3);
        Assert.InRange(floor.LevelDb[carrier + 1], -101, -99.3);
    }

    [Fact]
    public void FewCleanFloorsAreSuspectedOfATransmitter()
    {
        // One false alarm in 200 floors is allowed for; 200 floors, a Poisson mean of 1, exceed 5 once in 1 700 times.
        int suspected = Enumerable.Range(1, 200).Count(seed =>
            Estimated(new RehearsalPlan
            {
                Seed = (ulong)seed,
                Points = 201,
                FloorSweeps = 3 + (seed % 3),
                Looks = seed % 2 == 0 ? 1 : 20,
            }).Ambient.Contains(true));
        Assert.InRange(suspected, 0, 5);
    }

    [Theory]
    [InlineData(1, 0.45)]
    [InlineData(2, 0.30)]
    [InlineData(5, 0.05)]
    public void BesideAStepTheErrorGrowsWithWhatTheWindowsDisagreeBy(double step, double most)
    {
        // Share of levels, on the five points below the step, that lie more than 1.645 errors too high: 5 % where there is no
        // step. A step as small as the noise cannot be seen and is not wholly allowed for; without the disagreement it was 99, 89
        // and 5 %.
        int high = 0;
        var detector = new Detector(Averaging.Power, 20);
        for (ulong seed = 1; seed <= 100; seed++)
        {
            var random = new RandomSource(seed);
            double[][] levels = [.. Enumerable.Range(0, 5)
                .Select(_ =>
                    Enumerable.Range(0, 81).Select(f => -100 + (f < 40 ? 0 : step) + detector.Reading(0, random)).ToArray())];
            NoiseFloor floor = NoiseFloorEstimator.Estimate(Rehearsed.Floor(levels), Averaging.Power);
            double truth = -100 + new DetectorNoise(20).LogMeanOffset;
            high += Enumerable.Range(35, 5).Count(f => floor.LevelDb[f] - truth > 1.645 * floor.StandardErrorDb[f]);
        }

        Assert.InRange(high / 500.0, 0, most);
    }

    [Fact]
    public void AStepOfTheFloorStaysWhereItIs()
    {
        var random = new RandomSource(3);
        double[][] levels = [.. Enumerable.Range(0, 5)
            .Select(_ => Enumerable.Range(0, 100).Select(f => (f < 50 ? -100 : -95) + (0.3 * random.Normal())).ToArray())];
        NoiseFloor floor = NoiseFloorEstimator.Estimate(Rehearsed.Floor(levels), Averaging.Power);
        Assert.All(Enumerable.Range(0, 50), f => Assert.InRange(floor.LevelDb[f], -100.6, -99.4));
        Assert.All(Enumerable.Range(50, 50), f => Assert.InRange(floor.LevelDb[f], -95.6, -94.4));
        Assert.DoesNotContain(true, floor.Ambient);
    }

    [Fact]
    public void OffsetsBetweenSweepsAreNotShrunkByPoolingOverFrequency()
    {
        var random = new RandomSource(4);
        double[] offsets = [-1, -0.5, 0, 0.5, 1];
        double[][] levels =
            [.. offsets.Select(o => Enumerable.Range(0, 200).Select(_ => -100 + o + (0.2 * random.Normal())).ToArray())];
        NoiseFloor floor = NoiseFloorEstimator.Estimate(Rehearsed.Floor(levels), Averaging.Power);
        // Standard deviation of the offsets: sqrt(2.5 / 4) = 0.7906; standard error 0.3536 with 5 sweeps.
        Assert.InRange(floor.SweepOffsetDeviationDb!.Value, 0.77, 0.81);
        Assert.All(floor.StandardErrorDb, error => Assert.InRange(error, 0.34, 0.40));
        Assert.InRange(floor.ReadingDeviationDb, 0.18, 0.22);
    }

    [Fact]
    public void OneSweepStillGivesAFloorPooledOverFrequency()
    {
        NoiseFloor floor = Estimated(new RehearsalPlan { FloorSweeps = 1, Looks = 10, Points = 401 });
        Assert.InRange(floor.Noise[0].Looks, 7.5, 13);
        Assert.Null(floor.SweepOffsetDeviationDb);
        Assert.InRange(floor.LevelDb.Average(), -100.6, -99.9);
    }

    // Levels 0.01 dB up and down by turns: the mean over 33 neighbours is known to 0.002 dB, and how far this one sweep as a
    // whole is off cannot be seen. 0.5 dB are allowed for it.
    [Fact]
    public void OneSweepMayBeOffAsAWholeByHalfADecibelThatItDoesNotShow()
    {
        double[] levels = [.. Enumerable.Range(0, 401).Select(f => -100 + (f % 2 == 0 ? 0.01 : -0.01))];
        NoiseFloor floor = NoiseFloorEstimator.Estimate(Rehearsed.Floor(levels), Averaging.Power);
        Assert.All(floor.StandardErrorDb, error => Assert.InRange(error, 0.5, 0.51));
        Assert.All(NoiseFloorEstimator.InScatter(3, [1, 2]).StandardErrorDb, error => Assert.Equal(0.5, error));
    }

    [Fact]
    public void ShiftingEverySweepShiftsTheFloorAndNothingElse()
    {
        RehearsedCampaign rehearsed = Rehearser.Draw(Rehearsed.Plan);
        NoiseFloor before = NoiseFloorEstimator.Estimate(Aligner.Align(rehearsed.Campaign, null).Floor!, Averaging.Power);
        NoiseFloor after = NoiseFloorEstimator.Estimate(
            Aligner.Align(Rehearsed.Changed(rehearsed.Campaign, (_, _, level) => level + 7), null).Floor!, Averaging.Power);
        Assert.All(after.LevelDb, (level, f) => Assert.Equal(before.LevelDb[f] + 7, level, 9));
        Assert.All(after.StandardErrorDb, (error, f) => Assert.Equal(before.StandardErrorDb[f], error, 9));
        Assert.Equal(before.Noise[0].Looks, after.Noise[0].Looks, 6);
    }

    [Fact]
    public void TheOrderOfTheSweepsDoesNotMatter()
    {
        Campaign campaign = Rehearser.Draw(Rehearsed.Plan).Campaign;
        NoiseFloor before = NoiseFloorEstimator.Estimate(Aligner.Align(campaign, null).Floor!, Averaging.Power);
        NoiseFloor after = NoiseFloorEstimator.Estimate(
            Aligner.Align(campaign with { Sweeps = [.. campaign.Sweeps.Reverse()] }, null).Floor!, Averaging.Power);
        Assert.All(after.LevelDb, (level, f) => Assert.Equal(before.LevelDb[f], level, 9));
    }

    [Fact]
    public void ADeclaredFloorMayBeTwoDecibelsOffAndOfAnyNumberOfLooks()
    {
        NoiseFloor floor = NoiseFloorEstimator.Declare(-104, 7, Averaging.Power);
        Assert.Equal(Enumerable.Repeat(-104.0, 7), floor.LevelDb);
        Assert.Equal(FloorSource.Declared, floor.Source);
        Assert.Equal(2, floor.HalfWidthDb);
        Assert.Equal([10_000, 1], floor.Noise.Select(n => n.Looks));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void ADeepDipOfSingleLookNoiseIsNotTakenForALowFloor(int sweeps)
    {
        // Of 10 000 single looks about 100 lie 20 dB and 10 lie 30 dB under the power mean.
        NoiseFloor floor = Estimated(new RehearsalPlan { Looks = 1, FloorSweeps = sweeps, Points = 10_000, Seed = 17 });
        double expected = -100 + new DetectorNoise(1).LogMeanOffset;
        int low = floor.LevelDb.Count(level => level < expected - 6);
        Assert.InRange(low, 0, 20);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    public void AtTheEndsOfASlopingFloorFewLevelsLieOffByMoreThanTheirError(int sweeps)
    {
        // 10 dB over 61 points; 200 floors of 10 end points each. Two-sided 95 %, a binomial three-sigma of 1.5 %, and some bias
        // of the slope.
        int off = 0;
        int suspected = 0;
        for (ulong seed = 1; seed <= 200; seed++)
        {
            RehearsedCampaign rehearsed =
                Rehearser.Draw(new RehearsalPlan { Seed = seed, Points = 61, FloorTiltDb = 10, FloorSweeps = sweeps });
            NoiseFloor floor = NoiseFloorEstimator.Estimate(Aligner.Align(rehearsed.Campaign, null).Floor!, Averaging.Power);
            double offset = new DetectorNoise(20).LogMeanOffset;
            off += Enumerable.Range(0, 5).Concat(Enumerable.Range(56, 5))
                .Count(f => Math.Abs(floor.LevelDb[f] - rehearsed.NoiseDbm[f] - offset) > 2 * floor.StandardErrorDb[f]);
            suspected += floor.Ambient.Contains(true) ? 1 : 0;
        }

        Assert.InRange(off / 2000.0, 0, 0.12);
        // One false alarm in 200 floors is allowed for: a Poisson mean of 1.
        Assert.InRange(suspected, 0, 5);
    }

    [Fact]
    public void OneTraceSmoothedByTheDisplayIsNotTakenForOneOfManyLooks()
    {
        // Single-look noise, averaged over 5 neighbours in dB: each point still belongs to single-look noise of a fifth of the
        // independent points.
        var random = new RandomSource(21);
        var detector = new Detector(Averaging.Sample, 1);
        double[] raw = [.. Enumerable.Range(0, 405).Select(_ => -100 + detector.Reading(0, random))];
        double[] smooth = [.. Enumerable.Range(0, 401).Select(f => Enumerable.Range(f, 5).Average(i => raw[i]))];
        NoiseFloor floor = NoiseFloorEstimator.Estimate(Rehearsed.Floor(smooth), Averaging.Log);
        // A mean of 5 single looks scatters by 5.57/√5 = 2.49 dB; the pooled level over 33 points by about 5.57/√37 = 0.92 dB,
        // besides the unseen offset.
        Assert.InRange(floor.ReadingDeviationDb, 1.9, 3.1);
        Assert.InRange(floor.StandardErrorDb[200], 0.75, 1.5);
    }

    private static NoiseFloor Estimated(RehearsalPlan plan) =>
        NoiseFloorEstimator.Estimate(Aligner.Align(Rehearser.Draw(plan).Campaign, null).Floor!, plan.Averaging);
}
