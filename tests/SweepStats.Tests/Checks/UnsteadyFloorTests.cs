using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class UnsteadyFloorTests
{
    // Shielding hides the signal, so that all depends on the floor.
    private static readonly RehearsalPlan Deep =
        Rehearsed.Plan with { FloorSweeps = 5, ShieldingStartDb = 90, ShieldingStopDb = 90 };

    [Theory]
    [InlineData(new[] { 1, 3 }, 6.0)]
    [InlineData(new[] { 0, 1 }, 4.0)]
    [InlineData(new[] { 0, 2, 4 }, -8.0)]
    public void FloorSweepsOnTwoLevelsAreToldAndTheHigherOnesNamed(int[] moved, double byDb)
    {
        Finding told = Assert.Single(Told(Deep, (j, level) => moved.Contains(j) ? level + byDb : level));
        Assert.Equal(Severity.Warning, told.Severity);
        Assert.Equal(Math.Abs(byDb), told.Size!.Value.Value, 0.5);
        Assert.All(Enumerable.Range(0, 5), j =>
            Assert.Equal(moved.Contains(j) == byDb > 0, told.Message.Contains($"floor-{j + 1:00}", StringComparison.Ordinal)));
        Assert.StartsWith("Take the floor again before you add source power", told.NextStep, StringComparison.Ordinal);
    }

    // Names of placements mean nothing for a floor, but whoever lists them may give some.
    [Fact]
    public void SweepsOfOtherPlacementsAreFloorSweepsToo()
    {
        Campaign drawn = Rehearser.Draw(Deep with { FloorSweeps = 6 }).Campaign;
        Sweep[] floor = [.. drawn.Sweeps.Where(s => s.Role == SweepRole.Floor)];
        Sweep Placed(Sweep s, int j) => new(s.Name, s.Role, s.Grid, [.. s.Levels.Select(l => j >= 4 ? l + 8 : l)],
            s.Scale)
        { Placement = j >= 4 ? "b" : "a" };
        Campaign placed = drawn with
        {
            Sweeps =
            [.. drawn.Sweeps.Select(s => s.Role == SweepRole.Floor ? Placed(s, Array.IndexOf(floor, s)) : s)],
        };
        AnalysisResult result =
            Analysis.Run(placed, new AnalysisPlan { Averaging = Deep.Averaging, FloorTaking = SweepTaking.Once });
        Assert.Single(result.Findings, f => f.Code == "floor-unsteady");
    }

    [Fact]
    public void WhereNoReadingLiesNearTheFloorItIsANote()
    {
        RehearsalPlan clear = Deep with { ShieldingStartDb = 30, ShieldingStopDb = 30 };
        Finding told = Assert.Single(Told(clear, (j, level) => j < 2 ? level + 5 : level));
        Assert.Equal(Severity.Note, told.Severity);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(20)]
    public void FloorsThatScatterAsUsualAreLeftAlone(int sweeps)
    {
        RehearsalPlan usual = Deep with { FloorSweeps = sweeps, SweepDeviationDb = 0.5 };
        int alarms = Draws.Seeds(100).Count(seed => Told(usual with { Seed = seed }, (_, level) => level).Length > 0);
        Often.AtMost(alarms, Draws.Of(100), 0.01, whenFull: 4);
    }

    // The move is one finding, not two; no odd sweep is told twice either.
    [Fact]
    public void WhatAnotherFindingExplainsIsNotToldAgain()
    {
        RehearsalPlan four = Deep with { FloorSweeps = 4 };
        AnalysisResult moved = Analysed(four, (j, level) => j >= 2 ? level + 6 : level, SweepTaking.BeforeAndAfter);
        Assert.Equal(Severity.Warning, Assert.Single(moved.Findings, f => f.Code == "floor-moved").Severity);
        Assert.DoesNotContain(moved.Findings, f => f.Code == "floor-unsteady");
        AnalysisResult odd = Analysed(Deep, (j, level) => j == 2 ? level + 6 : level, SweepTaking.Unstated);
        Assert.Contains(odd.Findings, f => f.Code == "odd-sweep" && f.Role == SweepRole.Floor);
        Assert.DoesNotContain(odd.Findings, f => f.Code == "floor-unsteady");
    }

    [Fact]
    public void TheBoundsHoldWhicheverLevelIsTheFloor()
    {
        // Two of five floor sweeps were taken with less gain: the receiver's noise is the higher level.
        AnalysisResult result = Analysed(Deep, (j, level) => j < 2 ? level - 6 : level, SweepTaking.Unstated);
        Assert.All(result.Curves.SelectMany(c => c.Readings),
            r => Assert.False(r is SweepStats.Shielding.ShieldingReading.Measured { Shielding.High.Value: < 90 }));
    }

    private static Finding[] Told(RehearsalPlan plan, Func<int, double, double> change) =>
        [.. Analysed(plan, change, SweepTaking.Once).Findings.Where(f => f.Code == "floor-unsteady")];

    private static AnalysisResult Analysed(RehearsalPlan plan, Func<int, double, double> change, SweepTaking taking)
    {
        Campaign drawn = Rehearser.Draw(plan).Campaign;
        Sweep[] floor = [.. drawn.Sweeps.Where(s => s.Role == SweepRole.Floor)];
        Campaign changed =
            Rehearsed.Changed(drawn, (s, _, level) => s.Role == SweepRole.Floor ? change(Array.IndexOf(floor, s), level) : level);
        return Analysis.Run(changed, new AnalysisPlan { Averaging = plan.Averaging, FloorTaking = taking });
    }
}
