using System.Collections.Immutable;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Rehearsal;

/// <summary>
/// Each planned fault against the same campaign without it: the draws are the same, so the levels differ by the fault alone. The
/// signal stands 70 dB (reference) and 40 dB (covered) over the noise, where a shift of the signal changes a reading by the shift
/// to within a few hundredths of a dB.
/// </summary>
public sealed class FaultTests
{
    private const double Slack = 4.5;

    private static readonly RehearsalPlan Clean =
        new() { Points = 401, ShieldingStartDb = 30, ShieldingStopDb = 30, SweepDeviationDb = 0.1 };

    [Fact]
    public void FaultsAndFurtherSweepsLeaveAllOtherLevelsAsTheyWere()
    {
        RehearsalPlan full = Clean with
        {
            LinearitySourcesDbm = [-10, 0, 10],
            PlateSweeps = 4,
            StartsAt = DateTimeOffset.UnixEpoch,
            OddSweeps = [new OddSweep(SweepRole.Reference, 2, 1, 1)],
        };
        Campaign drawn = Draw(full);
        Assert.Equal(15 + 9 + 4, drawn.Sweeps.Length);
        foreach (Sweep sweep in Draw(Clean).Sweeps.Where(s => s.Name != "reference/reference-02.csv"))
        {
            Assert.Equal(sweep.Levels.AsEnumerable(), drawn.Sweeps.Single(s => s.Name == sweep.Name).Levels.AsEnumerable());
        }
    }

    [Fact]
    public void AnOddSweepIsOffByItsOffsetAndNoOtherIs()
    {
        foreach ((SweepRole role, int number, double offset) in new[] { (SweepRole.Reference, 3, 2.0),
            (SweepRole.Covered, 5, -1.0), (SweepRole.Floor, 1, 0.5) })
        {
            foreach ((Sweep with, Sweep without,
                int n) in Pairs(Clean with { OddSweeps = [new OddSweep(role, number, offset)] }, role))
            {
                double[] difference = Difference(with, without);
                if (n == number)
                {
                    Assert.All(difference, d => Assert.Equal(offset, d, 0.05));
                }
                else
                {
                    Assert.All(difference, d => Assert.Equal(0, d));
                }
            }
        }
    }

    [Fact]
    public void AnOddSweepIsOffFromFreshRepeatsToo()
    {
        // Against the mean of the other four of the same campaign: scatter 0.2 dB and noise of 20 looks over 401 points, offsets
        // of 0.1 dB a sweep.
        Sweep[] reference = [.. Draw(Clean with { OddSweeps = [new OddSweep(SweepRole.Reference, 3, 2)] }).Sweeps
            .Where(s => s.Role == SweepRole.Reference)];
        double others = reference.Where((_, i) => i != 2).Average(s => Sample.Mean([.. s.Levels]));
        Agreement.Within(Slack * 0.1 * Math.Sqrt(1 + 0.25), 2, Sample.Mean([.. reference[2].Levels]) - others, 3);
    }

    [Fact]
    public void AStandingWaveHasItsRootMeanSquareAndNoMean()
    {
        (Sweep with, Sweep without, _) =
            Pairs(Clean with { OddSweeps = [new OddSweep(SweepRole.Reference, 1, 0, 0.8)] }, SweepRole.Reference).First();
        double[] wave = Difference(with, without);
        Assert.Equal(0, Sample.Mean(wave), 0.01);
        Assert.Equal(0.8, Math.Sqrt(wave.Average(w => w * w)), 0.01);
    }

    [Fact]
    public void TheDisplayShowsNothingOverItsLimitAndTheRestAsItIs()
    {
        foreach ((Sweep with, Sweep without, _) in Pairs(Clean with { LimitDbm = -30.1 }, SweepRole.Reference))
        {
            Assert.Equal(without.Levels.Select(level => Math.Min(level, -30.1)), with.Levels);
            Assert.InRange(with.Levels.Count(level => level == -30.1), 20, 380);
        }
    }

    [Fact]
    public void AJumpingPointIsOffByTheJumpAndAsOftenAsPlanned()
    {
        RehearsalPlan plan = Clean with { JumpShare = 0.1, JumpDb = -1 };
        double[] all = [.. new[] { SweepRole.Reference, SweepRole.Covered }.SelectMany(role => Pairs(plan, role))
            .SelectMany(p => Difference(p.With, p.Without))];
        Assert.All(all, d => Assert.Equal(d > -0.5 ? 0 : -1, d, 0.1));
        Agreement.Within(Slack * Math.Sqrt(0.1 * 0.9 / all.Length), 0.1,
            all.Count(d => d < -0.5) / (double)all.Length, all.Length);
        Assert.All(Pairs(plan, SweepRole.Floor),
            p => Assert.Equal(p.Without.Levels.AsEnumerable(), p.With.Levels.AsEnumerable()));
    }

    [Fact]
    public void ATransmitterThatComesAndGoesIsSeenAsOftenAsPlanned()
    {
        RehearsalPlan plan = Clean with { Points = 3, FloorSweeps = 400 };
        ImmutableArray<AmbientCarrier> carriers =
            [new(new Hertz(30e6), new Decibels(30), 0.25), new(new Hertz(1e9), new Decibels(30))];
        Sweep[] floor = [.. Draw(plan with { Ambient = carriers }).Sweeps.Where(s => s.Role == SweepRole.Floor)];
        Agreement.Within(Slack * Math.Sqrt(0.25 * 0.75 / 400), 0.25, floor.Count(s => s.Levels[0] > -85) / 400.0, 400);
        Assert.All(floor, s => Assert.True(s.Levels[2] > -85 && s.Levels[1] < -90));
    }

    [Theory]
    [InlineData(DriftShape.Steady, 1.0 / 3)]
    [InlineData(DriftShape.WarmUp, 0.9)]
    public void TheSourceDriftsInItsShape(DriftShape shape, double afterThird)
    {
        // Seven sweeps at 0, 1/6 … 1 of the campaign; the third reference is taken at a third of it and the last at its end.
        RehearsalPlan plan =
            Clean with { FloorSweeps = 0, ReferenceSweeps = 6, CoveredSweeps = 1, DriftDb = 3, DriftShape = shape };
        double[] moved = [.. Pairs(plan, SweepRole.Reference, plan with { DriftDb = 0 })
            .Select(p => Sample.Mean(Difference(p.With, p.Without)))];
        Assert.Equal(0, moved[0], 1e-9);
        Assert.Equal(3 * afterThird, moved[2], 0.01);
        Assert.Equal(3, moved[5], 0.01);
    }

    [Fact]
    public void TimesFollowTheOrderAtTheBench()
    {
        var start = new DateTimeOffset(2026, 3, 5, 14, 30, 0, TimeSpan.FromHours(1));
        ImmutableArray<Sweep> sweeps =
            Draw(Clean with
            {
                Points = 3,
                StartsAt = start,
                SecondsPerSweep = 90.5,
                PlateSweeps = 1,
                LinearitySourcesDbm = [0, 10],
                LinearitySweeps = 1,
            }).Sweeps;
        Assert.Equal(Enumerable.Range(0, 18).Select(i => (DateTimeOffset?)start.AddSeconds(90.5 * i)),
            sweeps.Select(s => s.TakenAt));
        string order = string.Concat(sweeps.Select(s => s.Role.ToString()[0]));
        Assert.Equal("FFFLLRRRPCCCCCRRFF", order);
        Assert.All(Draw(Clean).Sweeps, s => Assert.Null(s.TakenAt));
    }

    [Fact]
    public void APlanThatCannotBeDrawnIsRefused()
    {
        RehearsalPlan[] plans =
        [
            Clean with { OddSweeps = [new OddSweep(SweepRole.Reference, 6, 1)] },
            Clean with { OddSweeps = [new OddSweep(SweepRole.Plate, 1, 1)] },
            Clean with { OddSweeps = [new OddSweep(SweepRole.Floor, 1, 0, -1)] }, Clean with { JumpShare = 1.1 },
            Clean with { SecondsPerSweep = 0 }, Clean with { LinearitySourcesDbm = [0, 0] }, Clean with { LinearitySweeps = 0 },
            Clean with { PlateSweeps = -1 }, Clean with { PlateDb = -60 }, Clean with { ReferenceRippleDb = -1 },
            Clean with { Ambient = [new AmbientCarrier(new Hertz(1e8), new Decibels(10), -0.1)] },
        ];
        Assert.All(plans,
            plan => Assert.StartsWith("A rehearsal needs ", Assert.Throws<ArgumentException>(() => Rehearser.Draw(plan)).Message,
                StringComparison.Ordinal));
    }

    private static Campaign Draw(RehearsalPlan plan) => Rehearser.Draw(plan).Campaign;

    private static IEnumerable<(Sweep With, Sweep Without, int Number)> Pairs(RehearsalPlan plan, SweepRole role,
        RehearsalPlan? without = null) =>
        Draw(plan).Sweeps.Where(s => s.Role == role).Zip(Draw(without ?? Clean).Sweeps.Where(s => s.Role == role))
            .Select((p, i) => (p.First, p.Second, i + 1));

    private static double[] Difference(Sweep with, Sweep without) => [.. with.Levels.Zip(without.Levels, (a, b) => a - b)];
}
