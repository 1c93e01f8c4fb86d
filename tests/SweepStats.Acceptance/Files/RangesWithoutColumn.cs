using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// Levels without a column of frequencies, which follow from range and number of points; every file is invented.
/// </summary>
public sealed class RangesWithoutColumn : IDisposable
{
    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("Start Freq,30000000,Hz\nStop Freq,90000000,Hz\nPoints,3\nUnit,dBm\nTrace Data\n-60.5\n-61\n-62.25\n")]
    [InlineData("Mittenfrequenz;0,06;GHz\nDarstellbreite;60;MHz\nMesspunkte;3;\nEinheit;dBm;\nWerte;;\n-60,5;;\n-61,0;;\n"
        + "-62,25;;\n")]
    [InlineData("Start: 30 MHz\nStop: 90 MHz\nNumber of Points: 3\nLevels (DBM):\n-60.5\n-61\n-62.25\n")]
    [InlineData("Start;30 MHz\nStop;90 MHz\nSchritte;3 Punkte\nNr.;Pegel in dBm\n1;-60,5\n2;-61,0\n3;-62,25\n")]
    [InlineData("Frequency range: 30 MHz to 90 MHz\nPoints: 3\n-60.5 dBm\n-61 dBm\n-62.25 dBm\n")]
    [InlineData("Fréquence centrale : 60 MHz\nExcursion : 60 MHz\nNombre de points : 3\nTrace 1 (dBm)\n-60.5\n-61\n-62.25\n")]
    [InlineData("Start Freq,30 MHz,Stop Freq,90 MHz\nStep,30 MHz\nLevel Unit,dBm\n-60.5\n-61\n-62.25\n")]
    [InlineData("Start,30\nStop,90\nX Unit,MHz\nY Unit,dBm\nPoints,3\n1,-60.5\n2,-61\n3,-62.25\n")]
    public void EqualStepsAreTaken(string text)
    {
        TraceReading reading = Read(text);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal([30e6, 60e6, 90e6], trace.Axis.Hertz.ToArray());
        Assert.Equal([-60.5, -61, -62.25], trace.Levels.ToArray());
        Assert.Equal(LevelUnit.DecibelMilliwatts, trace.Unit);
        Assert.Contains(reading.Assumptions,
            a => a.StartsWith("no column holds the frequency; 3 points at equal steps from ", StringComparison.Ordinal));
    }

    [Fact]
    public void EqualRatiosAreTakenWhereTheFileSaysSo() =>
        Assert.Equal([1e6, 10e6, 100e6],
            Read("Start: 1 MHz\nStop: 100 MHz\nPoints: 3\nSweep Type: Log\nUnit: "
                + "dBm\n-60\n-61\n-62\n").Traces[0].Axis.Hertz.Select(f => Math.Round(f, 6)));

    [Fact]
    public void SeveralTracesShareTheAxis()
    {
        TraceReading reading =
            Read("Start: 30 MHz\nStop: 90 MHz\nPoints: 3\nUnit: dBm\nTrace A,Trace B\n-40,-50\n-41,-51\n-42,-52\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal([[-40.0, -41, -42], [-50.0, -51, -52]], reading.Traces.Select(t => t.Levels.ToArray()));
        Assert.All(reading.Traces, t => Assert.Equal([30e6, 60e6, 90e6], t.Axis.Hertz.ToArray()));
    }

    [Fact]
    public void AllLevelsMayStandInARow()
    {
        TraceReading reading =
            Read("Start Freq,30 MHz,Stop Freq,70 MHz,Points,5\nLevel Unit,dBm\nTrace A,-60.5,-61,-62.25,-60,-61\nTrace "
                + "B,-70,-71,-72,-73,-70\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(["Trace A", "Trace B"], reading.Traces.Select(t => t.Column));
        Assert.Equal([30e6, 40e6, 50e6, 60e6, 70e6], reading.Traces[0].Axis.Hertz.ToArray());
        Assert.Equal([-70.0, -71, -72, -73, -70], reading.Traces[1].Levels.ToArray());
    }

    [Theory]
    [InlineData("Start: 30 MHz\nPoints: 3\n", "only the start frequency is stated", null)]
    [InlineData("Points: 3\n", "neither start nor stop is stated", null)]
    [InlineData("Start: 30 MHz\nStop: 90 MHz\n", "the number of points is not stated", null)]
    [InlineData("Start: 30 MHz\nStop: 90 MHz\nPoints: 4\n", "the file states 4 points and holds 3 levels", 3)]
    [InlineData("Center: 60 MHz\nSpan: 0 Hz\nPoints: 3\n", "a record over time, not a sweep", 1)]
    [InlineData("Start: 30\nStop: 90 MHz\nPoints: 3\n", "with a unit at one end only", 1)]
    [InlineData("Start: 30\nStop: 90\nPoints: 3\n", "the file does not say the unit of its start and stop frequency", 1)]
    [InlineData("Start: 30 MHz\nStop: 90 MHz\nStep: 20 MHz\n",
        "3 levels at steps of 20000000 Hz do not reach from start to stop", 3)]
    [InlineData("Start: 30 MHz\nStop: 90 MHz\nPoints: 3\nSweep Type: Segment\n",
        "whose frequencies start and stop do not tell", 2)]
    [InlineData("Start: 0 Hz\nStop: 90 MHz\nPoints: 3\nSweep Type: Logarithmic\n", "a logarithmic sweep cannot start at 0 Hz", 4)]
    [InlineData("Start: 90 MHz\nStop: 30 MHz\nPoints: 3\n", "does not rise", 2)]
    public void WhatIsNotStatedInFullIsRefused(string above, string problem, int? line)
    {
        ReadFault fault = Assert.Single(Read(above + "Unit: dBm\n-60\n-61\n-62\n").Faults);
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.Equal(line, fault.Line);
    }

    [Fact]
    public void WholeNumbersBetweenCommasAreNoDecimals()
    {
        TraceReading reading = Read("Start: 30 MHz\nStop: 90 MHz\nUnit: dBµV\nfrequency (MHz),level\n30,45\n60,44\n90,43\n");
        Assert.Equal([45.0, 44, 43], Assert.Single(reading.Traces).Levels.ToArray());
    }

    private TraceReading Read(string text) => _folder.With("t.csv", text).Trace("t.csv");
}
