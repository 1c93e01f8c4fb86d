using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Alignment;

public sealed class InterpolationTests
{
    private static readonly double[] FineMhz = [.. Enumerable.Range(0, 31).Select(i => 10 + i)];
    private static readonly double[] CoarseMhz = [.. Enumerable.Range(0, 12).Select(i => 11.5 + (2.5 * i))];

    // R's approx and the definition written out: fixtures/oracles/interpolation.R.
    [Fact]
    public void ValuesAndBoundsAreThoseOfR()
    {
        string[][] cells = Fixtures.Cells("oracles/interpolation.csv");
        double[][] numbers = Fixtures.Numbers("oracles/interpolation.csv");
        double[][] readings = [.. numbers.Where((_, i) => cells[i][0] == "reading")];
        double[][] between = [.. numbers.Where((_, i) => cells[i][0] == "between")];
        var grid = new FrequencyGrid([.. readings.Select(r => r[1])]);
        double[] levels = [.. readings.Select(r => r[2])];
        Assert.Equal(25, between.Length);
        foreach (double[] row in between)
        {
            GridPlace place = GridPlaces.Of(grid, row[1], nearest: false)!.Value;
            Assert.Equal(row[2], place.Of(levels), 1e-9);
            Assert.Equal(row[3], Bend.BoundDb(grid, levels, place), 1e-9);
        }
    }

    // By hand: of y = x² (x in MHz) the line between neighbours 1 MHz apart is 0.25 off in the middle, and the bound is twice
    // that.
    [Fact]
    public void OfAParabolaTheBoundIsTwiceTheError()
    {
        var grid = new FrequencyGrid([.. FineMhz.Select(f => f * 1e6)]);
        double[] levels = [.. FineMhz.Select(f => f * f)];
        GridPlace place = GridPlaces.Of(grid, 15.5e6, nearest: false)!.Value;
        Assert.Equal((15.5 * 15.5) + 0.25, place.Of(levels), 1e-9);
        Assert.Equal(0.5, Bend.BoundDb(grid, levels, place), 1e-9);
    }

    [Fact]
    public void AStraightCurveIsExactAndCoveredReadingsStayAsTheyAre()
    {
        AlignedCampaign aligned = Align(f => -0.1 * f);
        Assert.Equal(CoarseMhz.Select(f => f * 1e6), aligned.Grid.Hertz.ToArray());
        Assert.Equal(CoarseMhz.Select(f => -0.1 * f), aligned.Reference[0].ToArray(), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(CoarseMhz.Select(f => (-0.1 * f) - 40), aligned.Covered[0].Block[0].ToArray());
        Assert.Equal(4, aligned.Interpolation!.SweepCount);
        Assert.Equal(0, aligned.Interpolation.HalfWidthDb, 1e-9);
        Assert.Equal(0, aligned.Interpolation.FrequenciesLeftOut);
        Assert.False(aligned.Interpolation.BetweenSpecimens);
    }

    // The error of a sine, for ripples with four readings and more a period, at every place between readings.
    [Theory]
    [InlineData(4)]
    [InlineData(5.3)]
    [InlineData(8)]
    [InlineData(20)]
    public void TheBoundHoldsForRipplesWithFourReadingsAPeriod(double readingsAPeriod)
    {
        var grid = new FrequencyGrid([.. Enumerable.Range(0, 200).Select(i => 1e6 * i)]);
        double Ripple(double at, double phase) => Math.Cos((2 * Math.PI * at / readingsAPeriod) + phase);
        for (double phase = 0; phase < 6.3; phase += 0.1)
        {
            double[] levels = [.. Enumerable.Range(0, 200).Select(i => Ripple(i, phase))];
            for (double at = 50.1; at < 50.95; at += 0.1)
            {
                GridPlace place = GridPlaces.Of(grid, 1e6 * at, nearest: false)!.Value;
                Assert.InRange(Math.Abs(place.Of(levels) - Ripple(at, phase)), 0, Bend.BoundDb(grid, levels, place));
            }
        }
    }

    [Fact]
    public void TheFloorKeepsItsReadings()
    {
        AlignedCampaign aligned = Align(f => -0.1 * f);
        double[] floor = aligned.Floor![0].ToArray();
        Assert.All(floor, level => Assert.Contains(level, FloorLevels(0)));
    }

    [Fact]
    public void WhatBendsTooMuchAndWhatIsNotReachedIsLeftOut()
    {
        AlignedCampaign aligned = Align(f => f == 20 ? 12 : 0);
        Assert.Equal(1, aligned.Interpolation!.FrequenciesLeftOut);
        Assert.DoesNotContain(21.5e6, aligned.Grid.Hertz.ToArray());
        Assert.InRange(aligned.Interpolation.HalfWidthDb, 0, Interpolation.LargestDb);
        AlignedCampaign beyond = Align(f => 0, CoarseMhz.Append(41.6));
        Assert.Equal(1, beyond.Interpolation!.FrequenciesLeftOut);
    }

    [Fact]
    public void WithoutAskingNothingIsInterpolatedAndOnOneGridAskingChangesNothing()
    {
        Campaign other = Drawn(f => -0.1 * f, CoarseMhz);
        Assert.Null(Aligner.Align(other, null).Interpolation);
        Campaign same = Drawn(f => -0.1 * f, FineMhz);
        AlignedCampaign asked = Aligner.Align(same, null, interpolate: true);
        Assert.Null(asked.Interpolation);
        Assert.Equal(Aligner.Align(same, null).Reference[1].ToArray(), asked.Reference[1].ToArray());
    }

    [Fact]
    public void WhereNothingIsSharedTheWayOutIsOfferedOnlyIfItIsOne()
    {
        double[] between = [.. FineMhz.SkipLast(1).Select(f => f + 0.5)];
        string offered = Assert.Throws<AlignmentException>(() => Aligner.Align(Drawn(f => f, between), null)).Message;
        Assert.Contains("interpolate = true under [band] in campaign.toml, which keeps 30 frequencies", offered,
            StringComparison.Ordinal);
        Assert.Equal(30, Aligner.Align(Drawn(f => f, between), null, interpolate: true).Grid.Count);
        Campaign apart = Drawn(f => f, [.. FineMhz.Select(f => f + 1000)]);
        Assert.DoesNotContain("interpolate", Assert.Throws<AlignmentException>(() => Aligner.Align(apart, null)).Message,
            StringComparison.Ordinal);
        Assert.Throws<AlignmentException>(() => Aligner.Align(apart, null, interpolate: true));
    }

    // Shift: levels that all move by the same move the result by it and leave the bound. Scale: frequencies in another unit
    // change nothing.
    [Fact]
    public void ShiftAndScaleAreCarriedThrough()
    {
        AlignedCampaign plain = Align(f => Math.Sin(f / 3));
        AlignedCampaign shifted = Align(f => Math.Sin(f / 3) + 7);
        Assert.Equal(plain.Interpolation!.HalfWidthDb, shifted.Interpolation!.HalfWidthDb, 1e-9);
        Assert.Equal(plain.Reference[0].ToArray().Select(l => l + 7), shifted.Reference[0].ToArray(),
            (a, b) => Math.Abs(a - b) < 1e-9);
        AlignedCampaign scaled = Aligner.Align(Drawn(f => Math.Sin(f / 3), CoarseMhz, hertz: 1e9), null, interpolate: true);
        Assert.Equal(plain.Interpolation.HalfWidthDb, scaled.Interpolation!.HalfWidthDb, 1e-9);
    }

    [Fact]
    public void TheBudgetHoldsTheErrorAndTheFindingTellsIt()
    {
        AnalysisResult result = Analysis.Run(Drawn(f => Math.Sin(f / 3), CoarseMhz), new AnalysisPlan { Interpolate = true });
        Assert.Contains(result.Budgets[0].Frequencies[0].Lines, l => l.Entry?.Name == Interpolation.ErrorName);
        Assert.Contains(result.Findings, f =>
            f.Code == "grid-mismatch" && f.Message.Contains("interpolated onto the 12 frequencies", StringComparison.Ordinal));
    }

    private static AlignedCampaign Align(Func<double, double> source, IEnumerable<double>? covered = null) =>
        Aligner.Align(Drawn(source, [.. covered ?? CoarseMhz]), null, interpolate: true);

    // Two sweeps a role; every second one 0.01 dB higher.
    private static Campaign Drawn(Func<double, double> source, double[] coveredMhz, double hertz = 1e6)
    {
        IEnumerable<Sweep> Two(SweepRole role, double[] mhz, Func<int, IEnumerable<double>> levels) =>
            Enumerable.Range(0, 2).Select(j =>
            new Sweep($"{role}-{j}", role, new FrequencyGrid([.. mhz.Select(f => f * hertz)]), [.. levels(j)],
                LevelScale.DecibelMilliwatts));
        return new Campaign("test", ImmutableArray.Create<Sweep>(
        [
            .. Two(SweepRole.Floor, FineMhz, FloorLevels),
            .. Two(SweepRole.Reference, FineMhz, j => FineMhz.Select(f => source(f) + (0.01 * j))),
            .. Two(SweepRole.Covered, coveredMhz, j => coveredMhz.Select(f => source(f) - 40 + (0.01 * j))),
        ]));
    }

    private static IEnumerable<double> FloorLevels(int sweep) =>
        FineMhz.Select((_, i) => -100 - (0.01 * ((i * 7) % 31)) - (0.3 * sweep));
}
