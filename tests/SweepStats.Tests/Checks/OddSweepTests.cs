using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class OddSweepTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { SweepDeviationDb = 0.1 };

    [Theory]
    [InlineData(SweepRole.Reference)]
    [InlineData(SweepRole.Covered)]
    [InlineData(SweepRole.Floor)]
    public void OneSweepTwoDecibelsOffAmongFiveIsFoundAndNamed(SweepRole role)
    {
        int found = Draws.Seeds(60).Count(seed => Odd(Plan with { Seed = seed }, role, (_, level) => level - 2) is [{ } only]
            && only.Role == role && only.Message.Contains("below the other 4", StringComparison.Ordinal)
            && only.Size!.Value.Value is > 1.5 and < 2.6);
        Often.AtLeast(found, Draws.Of(60), 0.95, whenFull: 54);
    }

    // A reference has no specimen that could be put back: names of its sweeps change nothing.
    [Fact]
    public void AReferenceWhosePlacementsAreNamedIsLookedAtAllTheSame()
    {
        Taken taken = Taken.With(Plan);
        Sweep odd = taken.Campaign.Sweeps.Last(s => s.Role == SweepRole.Reference);
        Taken named = taken.But(s => s.Role != SweepRole.Reference ? s
            : (s == odd ? s.Shifted(-2) : s).As(placement: $"p{s.Name}"));
        Assert.Equal(odd.Name, Assert.Single(named.Analysed().Findings, f => f.Code == "odd-sweep").Sweep);
    }

    [Fact]
    public void ASweepOfAnotherShapeIsFoundThoughItsMeanIsRight()
    {
        int found = Draws.Seeds(60)
            .Count(seed =>
                Odd(Plan with { Seed = seed }, SweepRole.Covered, (f, level) => level + (1.5 * Math.Sin(f / 3.0))) is [{ } only]
            && only.Message.Contains("another shape", StringComparison.Ordinal) && only.Size!.Value.Value is > 0.9 and < 1.3);
        Often.AtLeast(found, Draws.Of(60), 0.95, whenFull: 54);
    }

    [Theory]
    [InlineData(5, 0.1)]
    [InlineData(5, 0.5)]
    [InlineData(10, 0.5)]
    [InlineData(20, 0.5)]
    public void SweepsThatScatterAllAlikeAreLeftAlone(int sweeps, double deviation)
    {
        int alarms =
            Draws.Seeds(100)
                .Count(seed =>
                    Rehearsed.Analysed(Plan with
                    {
                        Seed = seed,
                        SweepDeviationDb = deviation,
                        FloorSweeps = sweeps,
                        ReferenceSweeps = sweeps,
                        CoveredSweeps = sweeps,
                    })
            .Findings.Any(f => f.Code == "odd-sweep"));
        Often.AtMost(alarms, Draws.Of(100), 0.02, whenFull: 6);
    }

    [Fact]
    public void OneOfThreeSweepsOfAPlacementIsToldWhereManyOthersShowTheScatter()
    {
        RehearsalPlan hung = Plan with { SpecimensPerLot = 3, Placements = 3, CoveredSweeps = 3, PlacementDeviationDb = 0.4 };
        int found = Draws.Seeds(40).Count(seed =>
            Odd(Rehearser.Draw(hung with
            {
                Seed = seed,
                OddSweeps = [new SweepStats.Rehearsal.OddSweep(SweepRole.Covered, 4,
                    2)],
            }).Campaign) is [{ Role: SweepRole.Covered } only]
            && only.Sweep!.Contains("A01/p2", StringComparison.Ordinal));
        Often.AtLeast(found, Draws.Of(40), 0.95, whenFull: 38);
        Assert.Equal(0, Draws.Seeds(40).Count(seed => Odd(Rehearser.Draw(hung with { Seed = seed }).Campaign).Length > 0));
    }

    [Fact]
    public void ThreePlacementsBesideASteadyReferenceAreNotOdd()
    {
        RehearsalPlan swept = Plan with { Placements = 3, CoveredSweeps = 1, PlacementDeviationDb = 1, ReferenceSweeps = 20 };
        Assert.Equal(0, Draws.Seeds(60).Count(seed => Odd(Rehearser.Draw(swept with { Seed = seed }).Campaign).Length > 0));
    }

    [Fact]
    public void SweepsOfSingleLooksAreLeftAlone()
    {
        RehearsalPlan noisy = Plan with
        {
            Averaging = Averaging.Sample,
            Looks = 1,
            FloorSweeps = 10,
            ReferenceSweeps = 10,
            CoveredSweeps = 10,
            ShieldingStopDb = 60,
        };
        int alarms = Draws.Seeds(100)
            .Count(seed => Rehearsed.Analysed(noisy with { Seed = seed }).Findings.Any(f => f.Code == "odd-sweep"));
        // Two families of 2 % each.
        Often.AtMost(alarms, Draws.Of(100), 0.04, whenFull: 10);
    }

    [Fact]
    public void OfFourSweepsNoneCanBeToldOdd() =>
        Assert.Empty(Odd(Plan with { ReferenceSweeps = 4 }, SweepRole.Reference, (_, level) => level - 2));

    [Theory]
    [InlineData(5, 5, null)]
    [InlineData(5, 3, "no five covered sweeps of one placement repeat each other, nor three among many others; reference sweeps "
        + "were looked at")]
    [InlineData(3, 5, "no five reference sweeps repeat each other; covered sweeps were looked at")]
    [InlineData(3, 3, "no five reference or covered sweeps of one placement repeat each other; floor sweeps were looked at")]
    public void WhatWasNotLookedAtIsSaid(int reference, int covered, string? reason) =>
        Assert.Equal(reason, Rehearsed.Analysed(Plan with { ReferenceSweeps = reference, CoveredSweeps = covered }).Checks
            .Single(c => c.Code == "odd-sweep").UntestedBecause);

    [Fact]
    public void TheOddSweepExcludedTheFindingIsGone()
    {
        Campaign campaign = Drawn(Plan, SweepRole.Reference, (_, level) => level - 2);
        Campaign without =
            campaign with
            {
                Sweeps = [.. campaign.Sweeps.Where(s => s.Role != SweepRole.Reference),
                .. campaign.Sweeps.Where(s => s.Role == SweepRole.Reference).Skip(1)],
            };
        Assert.NotEmpty(Odd(campaign));
        Assert.Empty(Odd(without));
    }

    private static Finding[] Odd(RehearsalPlan plan, SweepRole role, Func<int, double, double> change) =>
        Odd(Drawn(plan, role, change));

    private static Finding[] Odd(Campaign campaign) =>
        [.. Analysis.Run(campaign, new AnalysisPlan { Averaging = Averaging.Power }).Findings.Where(f => f.Code == "odd-sweep")];

    private static Campaign Drawn(RehearsalPlan plan, SweepRole role, Func<int, double, double> change)
    {
        Campaign campaign = Rehearser.Draw(plan).Campaign;
        Sweep first = campaign.Sweeps.First(s => s.Role == role);
        return Rehearsed.Changed(campaign, (s, f, level) => s.Name == first.Name ? change(f, level) : level);
    }
}
