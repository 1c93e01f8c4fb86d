using System.Collections.Immutable;
using SweepStats.Quantities;
using SweepStats.Receivers;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Receivers;

/// <summary>Bounds and interval hold the truth as often as they say, whichever way the uncertainty is read and whatever the
/// stations share.</summary>
public sealed class MarginCoverage
{
    private const int All = 2000;

    [Theory]
    [InlineData(1, 3.0, "own", false)]
    [InlineData(2, 3.0, "own", true)]
    [InlineData(3, 3.0, "own", false)]
    [InlineData(3, 3.0, "receiver", true)]
    [InlineData(3, 1.0, "source", true)]
    [InlineData(4, 6.0, "both", true)]
    [InlineData(5, 6.0, "own", true)]
    [InlineData(8, 1.0, "receiver", false)]
    [InlineData(12, 3.0, "own", false)]
    [InlineData(12, 3.0, "own", true)]
    public void BoundsHoldAsOftenAsTheySay(int stations, double u, string shared, bool near)
    {
        var tally = new Tally();
        foreach (ulong seed in Draws.Seeds(All))
        {
            tally.Take(Drawn(new RandomSource(seed), new Design(stations, u, shared, near)), 60);
        }

        tally.Check($"{stations} stations, u {u}, shared {shared}, {(near ? "all near" : "spread")}");
    }

    /// <summary>Drawn by R's generator, true values about the stated ones or the other way round; two thousand tests.</summary>
    [Fact]
    public void BoundsHoldInTestsThatRDrew()
    {
        var tally = new Tally();
        foreach (IGrouping<double, double[]> test in Fixtures.Numbers("oracles/receivers-drawn.csv").GroupBy(row => row[0])
            .Take(Draws.Of(All)))
        {
            tally.Take([.. test.Select(Read)], test.First()[1]);
        }

        tally.Check("drawn by R");
    }

    /// <summary>Shielding as claimed, and true margins just there, are the hardest case. Each band by itself is refuted in one
    /// test of twenty, so that some of the thirty is in four of five.</summary>
    [Fact]
    public void ATrueClaimIsSeldomRefutedInManyBands()
    {
        const int bands = 30, all = 1000;
        int whole = 0, some = 0, tests = 0;
        var asked = new ReceiverQuestion { Claim = new Decibels(60), Ratio = 1 };
        foreach (ulong seed in Draws.Seeds(all))
        {
            var random = new RandomSource(seed);
            var test = ReceiverTest.Of([.. Enumerable.Range(1, bands).Select(i =>
                Station.Heard(60 + (3 * random.Normal())) with { Frequency = new Hertz(i * 1e8) })], asked);
            tests++;
            whole += test.Claim == ClaimOutcome.Refuted ? 1 : 0;
            some += test.Groups.Any(g => g.Claim == ClaimOutcome.Refuted) ? 1 : 0;
        }

        Often.AtMost(whole, tests, 0.05);
        Often.AtLeast(some, tests, 0.7);
    }

    [Fact]
    public void AClaimFarTooHighIsRefutedByOneOfManyBands() =>
        Assert.Equal(ClaimOutcome.Refuted, ReceiverTest.Of([Station.Heard(40), .. Enumerable.Range(2, 29).Select(i =>
            Station.Silent(80) with { Frequency = new Hertz(i * 1e9) })], new() { Claim = new Decibels(60) }).Claim);

    private static ReceiverObservation Read(double[] row) => new()
    {
        Name = "drawn",
        Frequency = null,
        Level = new ReceivedLevel(row[2], row[3], LevelOrigin.Level),
        SensitivityDbm = row[4],
        SensitivityUncertaintyDb = row[5],
        Receiver = row[6].ToString("R", System.Globalization.CultureInfo.InvariantCulture),
        Source = row[7].ToString("R", System.Globalization.CultureInfo.InvariantCulture),
        HeardUncovered = true,
        HeardCovered = row[8] == 1,
    };

    // What is stated scatters about the truth, and in the hardest case all true margins lie at the shielding itself, 60 dB.
    private static ImmutableArray<ReceiverObservation> Drawn(RandomSource random, Design design)
    {
        double oneSensitivity = random.Normal(), oneLevel = random.Normal();
        var stations = ImmutableArray.CreateBuilder<ReceiverObservation>();
        for (int i = 0; i < design.Stations; i++)
        {
            bool receiver = design.Shared is "receiver" or "both", source = design.Shared is "source" or "both";
            double margin = 60 + (design.Near ? 0.1 * random.Normal() : 60 * (random.Uniform() - 0.5));
            double sensitivity = 0.6 * design.U * (receiver ? oneSensitivity : random.Normal()),
                level = 0.8 * design.U * (source ? oneLevel : random.Normal());
            ReceiverObservation stated = margin <= 60 ? Station.Silent(margin + level - sensitivity, design.U)
                : Station.Heard(margin + level - sensitivity, design.U);
            stations.Add(stated with { Receiver = receiver ? "one" : null, Source = source ? "one" : null });
        }

        return stations.ToImmutable();
    }

    private sealed record Design(int Stations, double U, string Shared, bool Near);

    /// <summary>Counts tests in which a limit misses the truth. Nothing claimed counts as held for limits, and is counted by
    /// itself.</summary>
    private sealed class Tally
    {
        private int _tests, _low, _high, _interval, _withdrawn;

        public void Take(ImmutableArray<ReceiverObservation> observations, double truth)
        {
            _tests++;
            _low += MarginBound.AtLeast(observations, 0.95) > truth ? 1 : 0;
            _high += MarginBound.AtMost(observations, 0.95) < truth ? 1 : 0;
            _interval += MarginBound.AtLeast(observations, 0.975) > truth || MarginBound.AtMost(observations, 0.975) < truth ? 1
                : 0;
            _withdrawn += MarginContradiction.Of(observations, Confidence.NinetyFive) is null ? 0 : 1;
        }

        public void Check(string about)
        {
            string counts =
                $"{about}: of {_tests} the lower bound missed {_low}, the upper {_high}, the interval {_interval}; "
                    + $"contradictions {_withdrawn}";
            if (Environment.GetEnvironmentVariable("SWEEPSTATS_SHOW") is { Length: > 0 } file)
            {
                File.AppendAllText(file, counts + "\n");
            }

            Often.AtMost(_low, _tests, 0.05, about: counts);
            Often.AtMost(_high, _tests, 0.05, about: counts);
            Often.AtMost(_interval, _tests, 0.05, about: counts);
            Often.AtMost(_withdrawn, _tests, 0.05, about: counts);
        }
    }
}
