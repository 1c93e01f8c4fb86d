using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>What lines above the rows state and the rows contradict.</summary>
public sealed class StatementsAgainstRows : IDisposable
{
    private const string Rows = "frequency_hz,level_dbm\n1000000,-50\n2000000,-51\n3000000,-52\n";

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("Points,4\n", 1, "the file states 4 points and the table holds 3")]
    [InlineData("Start Frequency,500 kHz\nStop Frequency,3 MHz\n", null, null)]
    [InlineData("Unit,dBm\nStart Frequency,400 kHz\n", 2,
        "the file states a start frequency of 400 kHz and the rows begin at 1000000 Hz")]
    [InlineData("Stop Frequency,3.5 MHz\n", null, null)]
    [InlineData("Stop Frequency,3.6 MHz\n", 1, "the file states a stop frequency of 3.6 MHz and the rows end at 3000000 Hz")]
    [InlineData("Center,2 MHz\nSpan,2 MHz\n", null, null)]
    [InlineData("Center,2 MHz\nSpan,8 MHz\n", 1,
        "the file states a start frequency of -2000000 Hz and the rows begin at 1000000 Hz")]
    [InlineData("Start,1000\nStop,3000\n", null, null)]
    [InlineData("Start,1700\nStop,3000\n", 1, "the file states a start frequency of 1700 and the rows begin at 1000000 Hz")]
    [InlineData("Start,7\n", null, null)]
    public void AContradictionIsRefusedWithBothFigures(string above, int? line, string? problem)
    {
        ReadFault? fault = Read(above + Rows + "END\n").Faults.FirstOrDefault();
        Assert.Equal((line, problem), (fault?.Line, fault?.Problem));
    }

    [Fact]
    public void ANumberWithoutUnitIsThatOfTheRows()
    {
        TraceReading reading =
            Read("Start,300000\nStop,302000\nFrequency (kHz),Level (dBm)\n300000,-40\n301000,-41\n302000,-42\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Empty(reading.Assumptions);
    }

    [Fact]
    public void AStopALittleFurtherIsBelievedWhereStartAndPointsAgree()
    {
        string rows = string.Concat(Enumerable.Range(0, 101)
            .Select(i => FormattableString.Invariant($"{1000000 + (i * 10000)},-50.{i % 10}\n")));
        Assert.Contains(
            "the file states a stop frequency of 1.99 MHz and the rows end at 2000000 Hz; the rows were believed, since start "
                + "and number of points agree",
            Read("Start Frequency,1 MHz\nStop Frequency,1.99 MHz\nPoints,101\nfrequency_hz,level_dbm\n" + rows).Assumptions);
        Assert.Single(Read("Start Frequency,1 MHz\nStop Frequency,1.9 MHz\nPoints,101\nfrequency_hz,level_dbm\n" + rows).Faults);
    }

    [Fact]
    public void PointsAreThoseOfEachSweepOfATableThatStartsAnew() =>
        Assert.Equal(2,
            Read("Points,3\n" + Rows + "\n" + Rows[(Rows.IndexOf('\n', StringComparison.Ordinal) + 1)..]).Traces.Length);

    [Fact]
    public void AFrequencyAboveATerahertzIsDoubted()
    {
        ReadFault fault = Assert.Single(Read("Frequency (GHz),Level (dBm)\n500,-50\n1600,-51\n").Faults);
        Assert.Equal((3, "the frequency 1600000000000 Hz is above 1.5 THz: is the unit wrong?"), (fault.Line, fault.Problem));
    }

    [Theory]
    [InlineData("Format,Phase\nFrequency (MHz),Trace 1\n30,-50\n31,-51\n",
        "the file states the format 'Phase' for column Trace 1, which is no level")]
    [InlineData("Trace format: Group delay\nLevel Unit: dB\nFrequency (MHz),Trace 1\n30,-50\n31,-51\n",
        "the file states the format 'Group delay' for column Trace 1, which is no level")]
    [InlineData("Measurement format;SWR\nFrequency (MHz);Trace 1\n30;1.5\n31;1.4\n",
        "the file states the format 'SWR' for column Trace 1, which is no level")]
    public void AFormatThatIsNoLevelIsRefused(string text, string problem) =>
    Assert.Equal(problem, Assert.Single(Read(text).Faults).Problem);

    [Fact]
    public void ABlockWhoseOwnFormatIsAPhaseIsNotRead()
    {
        TraceReading reading =
            Read("Trace A\nFormat,Log Mag\nFrequency (kHz),Data\n300,-40\n301,-41\n302,-42\n\nTrace B\nFormat,Phase\nFrequency "
                + "(kHz),Data\n300,10\n301,20\n302,30\n");
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal(("Trace A: Data", LevelUnit.Decibels), (trace.Column, trace.Unit));
        Assert.Contains("the table from line 11 on shows 'Phase' and was not read", reading.Assumptions);
    }

    [Fact]
    public void EachTraceHasItsFormat()
    {
        TraceReading reading =
            Read("Trace 1 Format,Log Mag\nTrace 2 Format,Phase\nFrequency (kHz),Trace 1,Trace "
                + "2\n300,-40,10\n301,-41,20\n302,-42,30\n");
        Assert.Equal(("Trace 1", LevelUnit.Decibels), (Assert.Single(reading.Traces).Column, reading.Traces[0].Unit));
    }

    [Fact]
    public void TheNumberOfThePointIsNoFrequency()
    {
        string rows = string.Concat(Enumerable.Range(0, 6).Select(i => $"{i},-5{i}\n"));
        Assert.Contains("the first counts "
            + "the rows",
            Assert.Single(Read(rows, new TraceReadOptions
            {
                FrequencyUnit = FrequencyUnit.Megahertz,
                LevelUnit = LevelUnit.DecibelMilliwatts,
            }).Faults).Problem, StringComparison.Ordinal);
        Assert.Equal(5e6, Read("Frequency (MHz),Level (dBm)\n" + rows).Traces[0].Axis.Hertz[5]);
        string both = string.Concat(Enumerable.Range(0, 6).Select(i => $"{i},{30 + (2 * i)},-5{i}\n"));
        Assert.Contains("column 1 'Frequency (MHz)' counts the rows, and column 2 'B' rises beside it",
            Assert.Single(Read("Frequency (MHz),B,Level (dBm)\n" + both).Faults).Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("dB")]
    [InlineData("dBm")]
    public void LinearNumbersCalledDecibelsAreRefused(string unit)
    {
        const string Numbers = "30,1e-4\n31,2e-4\n32,3e-9\n33,1e-3\n34,5e-4\n";
        ReadFault fault = Assert.Single(Read($"Frequency (MHz),Level ({unit})\n{Numbers}").Faults);
        Assert.Contains($"are called {unit} and are all positive and below 0.01: they are linear in truth", fault.Problem,
            StringComparison.Ordinal);
        Assert.Equal(LevelUnit.LinearMagnitude, Assert.Single(Read("Frequency (MHz),Level (linear)\n" + Numbers).Traces).Unit);
        Assert.Equal(-0.001,
            Read($"Frequency (MHz),Level ({unit})\n30,0.001\n31,-0.001\n32,0.002\n33,0\n34,0.001\n").Traces[0].Levels[1]);
    }

    private TraceReading Read(string text, TraceReadOptions? options = null) =>
        _folder.With("t.csv", text).Trace("t.csv", options);
}
