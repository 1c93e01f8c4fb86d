using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Choice;

public sealed class YardstickDifferenceTests
{
    private static readonly CandidateMean Sheet = new(60, 0.3, 4, false), Cloth = new(52, 0.4, 4, false);

    [Fact]
    public void ItIsTheYardstickLessTheSpecimenWithStudentsLimits()
    {
        BandFigure below = YardstickDifference.Of(Sheet, Cloth, Confidence.NinetyFive);
        // √(0.09 + 0.16) = 0.5 with 0.0625/((0.0081 + 0.0256)/4) = 7.418 degrees of freedom; t(0.975, 7.418) lies between those
        // of 7 and 8, 2.3646 and 2.3060 (tables, from memory).
        Assert.Equal(8, below.Value!.Value, 1e-12);
        Assert.InRange(below.High!.Value - 8, 0.5 * 2.3060, 0.5 * 2.3646);
        Assert.Equal(16, below.Low!.Value + below.High.Value, 1e-9);
        Assert.Equal(-8, YardstickDifference.Of(Cloth, Sheet, Confidence.NinetyFive).Value!.Value, 1e-12);
    }

    [Fact]
    public void ASideOnWhichEitherIsNotBoundedStaysOpen()
    {
        (double? low, double? high) = (YardstickDifference.Of(Sheet, Cloth, Confidence.NinetyFive).Low,
            YardstickDifference.Of(Sheet, Cloth, Confidence.NinetyFive).High);
        Assert.Equal(new BandFigure(null, low, null),
            YardstickDifference.Of(Sheet with { Open = true }, Cloth, Confidence.NinetyFive));
        Assert.Equal(new BandFigure(null, null, high),
            YardstickDifference.Of(Sheet, Cloth with { Open = true }, Confidence.NinetyFive));
        Assert.Equal(default,
            YardstickDifference.Of(Sheet with { Open = true }, Cloth with { Open = true }, Confidence.NinetyFive));
        Assert.Equal(default, YardstickDifference.Of(Sheet, Cloth with { Value = double.NaN }, Confidence.NinetyFive));
    }

    [Fact]
    public void WhatMovesBothAlikeDropsOutAndAShiftThatDiffersWidens()
    {
        BandFigure plain = YardstickDifference.Of(Sheet, Cloth, Confidence.NinetyFive);
        Assert.Equal(plain, YardstickDifference.Of(Sheet with { Shared = 2, Shift = 1 }, Cloth with { Shared = 2, Shift = 1 },
            Confidence.NinetyFive));
        BandFigure wide = YardstickDifference.Of(Sheet with { Shift = 1 }, Cloth with { Shift = 0.4 }, Confidence.NinetyFive);
        Assert.Equal((plain.Low!.Value - 0.6, plain.High!.Value + 0.6), (wide.Low!.Value, wide.High!.Value),
            (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-9);
        BandFigure exact =
            YardstickDifference.Of(Sheet with { StandardError = 0 }, Cloth with { StandardError = 0 }, Confidence.NinetyFive);
        Assert.Equal(new BandFigure(8, 8, 8), exact);
    }
}
