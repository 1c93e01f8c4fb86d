using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

public sealed class TouchstoneFiles : IDisposable
{
    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    // Touchstone 1.1 lists two-port parameters as S11 S21 S12 S22 (specification, from memory); |S21| = 0.1 is −20 dB.
    [Theory]
    [InlineData("# MHz S DB R 50\n100 -1 0 -20 5 -3 0 -4 0\n200 -1 0 -20 6 -3 0 -4 0\n")]
    [InlineData("! remark\n#  ma  s r 75 mhz ! order and case do not count\n100 .9 0 0.1 5 .8 0 .7 0\n\n200 .9 0 0.1 6 .8 0 .7 "
        + "0 ! end\n")]
    [InlineData("# hz S ri R 50\n1e8\t1 0 0.06 0.08\n 1 0 1 0\n2E8 1 0 -0.08 -0.06 1 0 1 0\n")]
    [InlineData("# R 50 GHZ S MA\r\n0.1 1 0 0.1 0 1 0 1 0\r\n0.2 1 0 0.1 0 1 0 1 0\r\n")]
    [InlineData("#\n0.1 1 0 0.1 0 1 0 1 0\n0.2 1 0 0.1 0 1 0 1 0\n")]
    [InlineData("# MHz S DB R 50\n100 -1 0 -20 5 -3 0 -4 0\n200 -1 0 -20 6 -3 0 -4 0\n! noise\n100 2.5 0.3 40 0.2\n200 2.6 0.3 "
        + "41 0.2\n")]
    public void TheSecondPortsLevelIsReadInEveryFormat(string text)
    {
        TraceReading reading = _folder.With("T.S2P", text).Trace("T.S2P");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal(("S21", LevelUnit.Decibels), (trace.Quantity, trace.Unit));
        Assert.Equal([100e6, 200e6], trace.Axis.Hertz.ToArray());
        Assert.All(trace.Levels, l => Assert.Equal(-20, l, 12));
    }

    [Fact]
    public void RowsOfMorePortsWrapAndRunRowByRow()
    {
        const string Text = "# MHz S DB R 50\n1 -11 0 -12 0 -13 0\n -21 0 -22 0 -23 0\n -31 0 -32 0 -33 0\n2 -11 0 -12 0 -13 "
            + "0\n -21 0 -22 0 -23 0\n -31 0 -32 0 -33 0\n";
        TraceReading reading = _folder.With("t.s3p", Text).Trace("t.s3p", new TraceReadOptions { Columns = ["S21", "s13"] });
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal([-21.0, -21.0], reading.Traces[0].Levels.AsEnumerable());
        Assert.Equal([-13.0, -13.0], reading.Traces[1].Levels.AsEnumerable());
    }

    [Fact]
    public void FourPortsWrapAfterFourPairs()
    {
        string[] rows = [.. Enumerable.Range(1, 4)
            .Select(r => string.Join(' ', Enumerable.Range(1, 4).Select(c => FormattableString.Invariant($"-{r}{c} 0"))))];
        TraceReading reading =
            _folder.With("t.s4p", $"# GHz S DB R 50\n1 {string.Join('\n', rows)}\n2 {string.Join('\n', rows)}\n")
                .Trace("t.s4p", new TraceReadOptions { Columns = ["S43"] });
        Assert.Equal([-43.0, -43.0], Assert.Single(reading.Traces).Levels.AsEnumerable());
    }

    [Fact]
    public void TheReflectionOfOnePortIsReadOnlyWhenNamed()
    {
        _folder.With("t.s1p", "# MHz S DB R 50\n1 -3 0\n2 -4 0\n");
        Assert.Equal([-3.0, -4.0],
            Assert.Single(_folder.Trace("t.s1p", new TraceReadOptions { Columns = ["S11"] }).Traces).Levels.AsEnumerable());
        Assert.Contains("reflection", Assert.Single(_folder.Trace("t.s1p").Faults).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void AnUnusedParameterMayBeZero()
    {
        TraceReading reading =
            _folder.With("t.s2p", "# MHz S RI R 50\n1 0 0 0.1 0 0 0 0 0\n2 0 0 0.1 0 0 0 0 0\n").Trace("t.s2p");
        Assert.Empty(reading.Faults);
    }
}
