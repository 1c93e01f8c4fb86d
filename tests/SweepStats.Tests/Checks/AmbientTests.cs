using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class AmbientTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { Points = 201 };

    [Fact]
    public void ACarrierTenDecibelsOverTheFloorIsFound()
    {
        Assert.All(Draws.Seeds(60), seed => Assert.NotEmpty(Transmitters(10, 1, seed, 5)));
    }

    [Theory]
    [InlineData(1, "in every floor sweep")]
    [InlineData(0.5, "now and then")]
    public void WhatStaysIsToldFromWhatComesAndGoes(double share, string word)
    {
        int told = Draws.Seeds(60).Count(
            seed => Transmitters(15, share, seed, 5) is [{ } only] && only.Message.Contains(word, StringComparison.Ordinal));
        // A carrier of share ½ is in all or none of five sweeps in 2/32 of the campaigns.
        Often.AtLeast(told, Draws.Of(60), 30 / 32.0, whenFull: 50);
    }

    [Fact]
    public void OneFloorSweepDoesNotShowWhichOfTheTwo() =>
        Assert.Contains("does not show whether it pauses", Assert.Single(Transmitters(20, 1, 1, 1)).Message,
            StringComparison.Ordinal);

    [Fact]
    public void BothKindsAreNamedApartWithTheirFrequencies()
    {
        RehearsalPlan both = Plan with
        {
            Seed = 3,
            FloorSweeps = 8,
            Ambient = [new AmbientCarrier(new Hertz(100e6), new Decibels(20)),
                new AmbientCarrier(new Hertz(600e6), new Decibels(25), 0.5)],
        };
        Finding[] found = Ambient(both);
        Assert.Equal(2, found.Length);
        Assert.InRange(found[0].Where[0].Start.Value, 98e6, 102e6);
        Assert.InRange(found[1].Where[0].Start.Value, 590e6, 610e6);
        // 20 dB of carrier and the noise itself: 20.04 dB above the noise; the highest of eight readings lies a little higher.
        Assert.InRange(found[0].Size!.Value.Value, 19.5, 21.5);
    }

    [Theory]
    [InlineData(8, 2)]
    [InlineData(20, 1)]
    [InlineData(61, 1)]
    [InlineData(61, 2)]
    public void TheScatterOfAFewSingleLooksIsNoTransmitter(int points, int sweeps)
    {
        RehearsalPlan few = Plan with { Points = points, FloorSweeps = sweeps, Looks = 1, Averaging = Averaging.Sample };
        int alarms = Draws.Seeds(100).Count(
            seed => Ambient(few with { Seed = seed }).Any(f => f.Message.StartsWith("Floor readings", StringComparison.Ordinal)));
        Often.AtMost(alarms, Draws.Of(100), 0.01, whenFull: 4);
    }

    [Fact]
    public void ReadingsThatScatterByMoreThanNoiseAreToldAsOne()
    {
        var random = new RandomSource(7);
        var restless = Rehearsed.Changed(Rehearser.Draw(Plan).Campaign,
            (s, _, level) => s.Role == SweepRole.Floor ? level + (8 * random.Normal()) : level);
        Finding finding = Assert.Single(Analysis.Run(restless, new AnalysisPlan()).Findings,
            f => f.Code == "ambient" && f.Message.StartsWith("Floor readings", StringComparison.Ordinal));
        Assert.InRange(finding.Size!.Value.Value, 7, 9);
    }

    private static Finding[] Transmitters(double above, double share, ulong seed, int sweeps) =>
        Ambient(Plan with
        {
            Seed = seed,
            FloorSweeps = sweeps,
            Ambient = [new AmbientCarrier(new Hertz(150e6), new Decibels(above), share)],
        });

    private static Finding[] Ambient(RehearsalPlan plan) =>
        [.. Rehearsed.Analysed(plan).Findings.Where(f => f.Code == "ambient")];
}
