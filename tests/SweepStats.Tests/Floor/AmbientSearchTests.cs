using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Floor;

public sealed class AmbientSearchTests
{
    // Points, shape of the floor in dB at a point.
    private static readonly Dictionary<string, (int Points, Func<int, double> Db)> Shapes = new(StringComparer.Ordinal)
    {
        ["flat, 201 points"] = (201, _ => 0),
        ["3 points over 20 dB a decade"] = (3, f => 10 * f),
        ["3 points, falling"] = (3, f => -10 * f),
        ["10 points, 30 dB"] = (10, f => 3.3 * f),
        ["51 points, 30 dB, even steps of frequency"] = (51, f => -20 * Math.Log10(1 + (0.65 * f))),
        ["201 points, 30 dB"] = (201, f => 0.15 * f),
        ["five waves"] = (201, f => Math.Sin(2 * Math.PI * 5 * f / 201)),
        ["twenty waves"] = (201, f => Math.Sin(2 * Math.PI * 20 * f / 201)),
        ["a step of 2 dB"] = (201, f => f < 77 ? 0 : 2),
        ["two steps of 10 dB"] = (201, f => f < 50 ? 0 : f < 120 ? 10 : -10),
        ["a range of 12 points, 5 dB up"] = (201, f => f is >= 90 and < 102 ? 5 : 0),
        ["a range of 12 points, 10 dB down"] = (201, f => f is >= 90 and < 102 ? -10 : 0),
        ["12 points at each end, 10 dB"] = (201, f => f < 12 ? 10 : f >= 189 ? -10 : 0),
    };

    public static TheoryData<string> Names => [.. Shapes.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void ACleanFloorOfAnyShapeIsSeldomSuspected(string name)
    {
        (int points, Func<int, double> db) = Shapes[name];
        int suspected = 0;
        for (int seed = 1; seed <= 100; seed++)
        {
            double looks = new[] { 20, 200, 2000, 1 }[seed % 4];
            suspected += Found(points, db, (looks, 1 + (seed % 5), (ulong)seed), (_, _) => 0).Contains(true) ? 1 : 0;
        }

        // 0.5 % are allowed for: of 100 floors more than 4 come once in 6000 times (Poisson mean 0.5).
        Assert.InRange(suspected, 0, 4);
    }

    [Theory]
    [InlineData("flat, 201 points", 20, 1, 10, 1)]
    [InlineData("flat, 201 points", 20, 5, 3, 1)]
    [InlineData("flat, 201 points", 20, 5, 6, 3)]
    [InlineData("flat, 201 points", 2000, 3, 3, 3)]
    [InlineData("flat, 201 points", 1, 5, 10, 1)]
    [InlineData("201 points, 30 dB", 20, 5, 6, 3)]
    [InlineData("twenty waves", 2000, 3, 10, 3)]
    [InlineData("twenty waves", 20, 3, 10, 3)]
    [InlineData("a range of 12 points, 5 dB up", 200, 3, 10, 3)]
    [InlineData("10 points, 30 dB", 200, 3, 15, 1)]
    public void ASteadyCarrierIsFoundAtAllItsPoints(string name, double looks, int sweeps, double above, int wide)
    {
        (int points, Func<int, double> db) = Shapes[name];
        int found = 0;
        for (int seed = 1; seed <= 40; seed++)
        {
            int at = points < 20 ? points / 2 : 20 + (seed * 3);
            bool[] marks = Found(points, db, (looks, sweeps, (ulong)seed),
                (_, f) => f >= at && f < at + wide ? Math.Pow(10, above / 10) : 0);
            found += Enumerable.Range(at, wide).All(f => marks[f]) ? 1 : 0;
        }

        Assert.InRange(found, 38, 40);
    }

    [Theory]
    [InlineData("flat, 201 points")]
    [InlineData("twenty waves")]
    [InlineData("3 points over 20 dB a decade")]
    public void ACarrierThatPausesStandsAboveTheOtherSweeps(string name)
    {
        // On in two sweeps of five, 10 dB over noise of 200 looks, also at the end of a band of three points.
        (int points, Func<int, double> db) = Shapes[name];
        int found = Enumerable.Range(1, 40)
            .Count(seed => Found(points, db, (200, 5, (ulong)seed),
                (j, f) => f == points - 1 && j is 1 or 3 && f == points - 1 ? 10 : 0)[^1]);
        Assert.InRange(found, 38, 40);
    }

    [Fact]
    public void WhatIsFoundDoesNotDependOnLevelOrDirection()
    {
        double[][] levels = Levels(201, f => 0.05 * f, (20, 3, 9), (_, f) => f is 60 or 61 ? 30 : 0);
        bool[] marks = Of(levels);
        Assert.Equal([60, 61], Enumerable.Range(0, 201).Where(f => marks[f]));
        Assert.Equal(marks, Of([.. levels.Select(l => l.Select(x => x - 13.7).ToArray())]));
        Assert.Equal(marks.Reverse(), Of([.. levels.Select(l => l.Reverse().ToArray())]));
        Assert.Equal(marks, Of([.. levels.Reverse()]));
    }

    [Fact]
    public void TheLimitsAreThoseOfNoise()
    {
        // A single look is exponential: −ln(p) times its mean power is passed with chance p, 2.507 dB over the log mean more.
        var limits = new AmbientLimits(new DetectorNoise(1), 1, 1e-5, double.PositiveInfinity);
        Assert.Equal((10 * Math.Log10(-Math.Log(1e-5))) + 2.5068158, limits.Single, 1e-6);
        Assert.Equal(limits.Single, limits.Mean, 1e-6);
        Assert.True(double.IsPositiveInfinity(limits.AboveOthers));
        // Three degrees of freedom: no limit lies above that of single looks, however badly the scatter is known.
        Assert.Equal(limits.Single, new AmbientLimits(new DetectorNoise(1000), 1, 1e-5, 1).Single, 1e-6);
        // The second lowest of four: 6p² − 8p³ + 3p⁴ = α/2 for the share α = 1e-4/5.
        Assert.Equal(1, new AmbientLimits(new DetectorNoise(20), 5, 1e-4, 12).MiddleOfOthers);
        double p = Root(1e-5);
        var noise = new DetectorNoise(20);
        Assert.Equal(noise.HighestReading(1 - 1e-5) - noise.HighestReading(p),
            new AmbientLimits(noise, 5, 1e-4, double.PositiveInfinity).AboveOthers, 1e-6);
    }

    [Fact]
    public void TheHigherSideOfAStepIsWhatALevelIsHeldAgainst()
    {
        double[] step = [.. Enumerable.Range(0, 100).Select(f => f < 50 ? 0.0 : 10)];
        var beside = new FloorProminence(step, new bool[100], 0.1);
        // Tukey's line between the medians of the outer thirds: 10 dB over 67 points.
        Assert.Equal(10.0 / 67 * 3.5, beside.BendDb, 1e-9);
        Assert.All(Enumerable.Range(6, 88), f => Assert.InRange(beside.ExcessDb[f], -11, 10.0 / 67 * 4));
    }

    private static double Root(double half)
    {
        (double low, double high) = (0, 0.5);
        for (int i = 0; i < 100; i++)
        {
            double p = (low + high) / 2;
            (low, high) = (6 * p * p) - (8 * p * p * p) + (3 * p * p * p * p) < half ? (p, high) : (low, p);
        }

        return low;
    }

    private static bool[] Found(int points, Func<int, double> db, (double Looks, int Sweeps, ulong Seed) drawn,
        Func<int, int, double> snr) => Of(Levels(points, db, drawn, snr));

    private static double[][] Levels(int points, Func<int, double> db, (double Looks, int Sweeps, ulong Seed) drawn,
        Func<int, int, double> snr)
    {
        var random = new RandomSource(drawn.Seed);
        var detector = new Detector(Averaging.Power, drawn.Looks);
        return [.. Enumerable.Range(0, drawn.Sweeps)
            .Select(j => Enumerable.Range(0, points).Select(f => -100 + db(f) + detector.Reading(snr(j, f), random)).ToArray())];
    }

    private static bool[] Of(double[][] levels) =>
        [.. NoiseFloorEstimator.Estimate(Rehearsed.Floor(levels), Averaging.Power).Ambient];
}
