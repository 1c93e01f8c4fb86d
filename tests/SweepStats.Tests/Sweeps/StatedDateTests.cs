using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Sweeps;

public sealed class StatedDateTests
{
    private static readonly DateOnly Monday = new(2026, 10, 5), Tuesday = new(2026, 10, 6);

    [Fact]
    public void EveryDayInFiguresIsReadWhereverItStands() =>
        Assert.Equal([Monday, Tuesday], StatedDate.Days("from 2026-10-05 to 2026-10-06, hall 3").ToArray());

    [Theory]
    [InlineData("5.10.2026")]
    [InlineData(" 5 October 2026 ")]
    [InlineData("October 5, 2026")]
    [InlineData("5 Oct 2026")]
    public void ASingleDayMayBeWrittenOut(string text) => Assert.Equal([Monday], StatedDate.Days(text).ToArray());

    [Theory]
    [InlineData("")]
    [InlineData("10/5/2026")]
    [InlineData("2026-13-05")]
    public void WhatHasSeveralReadingsOrNoneIsNoDay(string text) => Assert.Empty(StatedDate.Days(text));
}
