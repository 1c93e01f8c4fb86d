using SweepStats.Files.Traces;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// How files word their detector and what a trace keeps; the words are kept as they are. Every sample is invented.
/// </summary>
public sealed class DetectorWordings : IDisposable
{
    private const string Rows = "Frequency (Hz),Level (dBm)\n1000000,-50\n2000000,-51\n3000000,-52\n";

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("DETECTOR,RMS\n", "RMS")]
    [InlineData("Det: QP\n", "QP")]
    [InlineData("DET TYPE;Positive Peak\n", "Positive Peak")]
    [InlineData("Detector Type = Max Peak\n", "Max Peak")]
    [InlineData("# Detector Mode: CISPR Average\n", "CISPR Average")]
    [InlineData("Trace 1 Detector,Sample\n", "Sample")]
    [InlineData("Detector 1: Sample\n", "Sample")]
    [InlineData("! Detector RMS\n", "RMS")]
    [InlineData("! DET TYPE Quasi-Peak\n", "Quasi-Peak")]
    [InlineData("Trace 1 Detector,RMS\nTrace 2 Detector,Peak\nTrace 1 Mode,Clear Write\nTrace 2 Mode,Blank\n", "RMS")]
    public void TheDetectorIsFoundHoweverItIsWorded(string preamble, string word) =>
    Assert.Equal(word, Settings(preamble).Detector);

    [Theory]
    [InlineData("Detector test of the cabin\n")]
    [InlineData("Detector\n")]
    [InlineData("Trace 1 Detector,RMS\nTrace 2 Detector,Peak\n")]
    [InlineData("Detector,RMS\nDetector,Peak\n")]
    public void WhatIsNoPlainStatementOfADetectorIsNone(string preamble) => Assert.Null(Settings(preamble).Detector);

    [Theory]
    [InlineData("Trace Mode,Max Hold\n", "Max Hold")]
    [InlineData("TRACE TYPE: MAXH\n", "MAXH")]
    [InlineData("Trace 1 Mode,Min Hold\n", "Min Hold")]
    [InlineData("Trace1 Mode;Average\n", "Average")]
    [InlineData("Trace: Max Hold\n", "Max Hold")]
    [InlineData("Trace 1: Clear/Write\n", "Clear/Write")]
    [InlineData("! Trace Mode Max Hold\n", "Max Hold")]
    [InlineData("! Trace 1 Max Hold\n", "Max Hold")]
    [InlineData("Hold: On\n", "Hold")]
    [InlineData("Max Hold,On\n", "Max Hold")]
    [InlineData("MAXHOLD = ON\n", "MAXHOLD")]
    [InlineData("! MAXHOLD ON\n", "MAXHOLD")]
    [InlineData("Max Hold,20,sweeps\n", null)]
    [InlineData("Max Hold,20\n", "Max Hold")]
    [InlineData("Min Hold: yes\n", "Min Hold")]
    [InlineData("Hold: Max\n", "Max Hold")]
    [InlineData("Hold,Max Hold\n", "Max Hold")]
    [InlineData("Max Hold,Off\nMin Hold,On\n", "Min Hold")]
    [InlineData("Trace Mode,Clear Write\nMax Hold,On\n", "Max Hold")]
    [InlineData("Trace Mode,Average\nMax Hold,Off\n", "Average")]
    [InlineData("Trace 1 Mode,Max Hold\nTrace 2 Mode,Blank\nTrace 3 Mode,Blank\n", "Max Hold")]
    [InlineData("Trace 2 Mode,Max Hold\n", "Max Hold")]
    public void TheModeIsFoundHoweverItIsWorded(string preamble, string? word) =>
    Assert.Equal(word, Settings(preamble).TraceMode);

    [Theory]
    [InlineData("Trace Mode,View\n")]
    [InlineData("Trace 1,BLANK\n")]
    [InlineData("Trace: VIEW\n")]
    [InlineData("Trace: north curtain\n")]
    [InlineData("Trace max of the cabin\n")]
    [InlineData("Trace,1,2,3\n")]
    [InlineData("Max Hold,Off\n")]
    [InlineData("Hold: Off\n")]
    [InlineData("Hold: 0\n")]
    [InlineData("Trace 1 Mode,Max Hold\nTrace 2 Mode,Clear Write\n")]
    public void WhatTellsNoModeIsNone(string preamble) => Assert.Null(Settings(preamble).TraceMode);

    [Fact]
    public void NumberedLinesStateOneForEachTrace()
    {
        TraceReading reading =
            Read("Trace 1 Mode,Max Hold\nTrace 2 Mode,Clear Write\nTrace 2 Detector,RMS\nFrequency (Hz),A (dBm),B "
                + "(dBm)\n1000,-50,-60\n2000,-51,-61\n");
        Assert.Equal(["Max Hold", "Clear Write"], reading.Traces.Select(t => t.Settings.TraceMode));
        Assert.Equal([null, "RMS"], reading.Traces.Select(t => t.Settings.Detector));
        Assert.Null(reading.Settings.TraceMode);
    }

    [Fact]
    public void ARowOfModesStatesOneForEachTrace()
    {
        TraceReading reading =
            Read("Trace,Max Hold,Average\nTrace Name,North,South\nY Axis Units,dBm\nX Axis "
                + "Units,Hz\nDATA\n1000,-50,-60\n2000,-51,-61\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(["Max Hold", "Average"], reading.Traces.Select(t => t.Settings.TraceMode));
    }

    [Theory]
    [InlineData("Max Hold (dBm)", null, "Max Hold")]
    [InlineData("Level [dBm] RMS", "RMS", null)]
    [InlineData("Quasi-Peak (dBµV)", "Quasi-Peak", null)]
    [InlineData("Max Peak (dBm)", "Max Peak", null)]
    [InlineData("Peak Hold (dBm)", null, "Peak Hold")]
    [InlineData("Peak max hold (dBm)", "Peak", "max hold")]
    [InlineData("Level Avg (dBm)", null, "Avg")]
    [InlineData("Sample 3 (dBm)", null, null)]
    [InlineData("Speak (dBm)", null, null)]
    public void TheNameOfAColumnTellsThem(string name, string? detector, string? mode)
    {
        ReceiverSettings settings = Assert.Single(Read($"Frequency (Hz),{name}\n1000,-50\n2000,-51\n").Traces).Settings;
        Assert.Equal((detector, mode), (settings.Detector, settings.TraceMode));
    }

    [Fact]
    public void ALineAboveGoesBeforeTheNameOfTheColumn() =>
        Assert.Equal("Positive",
            Assert.Single(Read("Detector,Positive\nFrequency (Hz),Peak (dBm)\n1000,-50\n2000,-51\n").Traces).Settings.Detector);

    [Fact]
    public void TablesBelowEachOtherHaveTheirOwn()
    {
        TraceReading reading =
            Read("Trace A\nDetector,RMS\nFrequency (Hz),Level (dBm)\n1000,-50\n2000,-51\n3000,-52\n\nTrace "
                + "B\nDetector,Peak\nFrequency (Hz),Level (dBm)\n1000,-60\n2000,-61\n3000,-62\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(["RMS", "Peak"], reading.Traces.Select(t => t.Settings.Detector));
    }

    [Fact]
    public void SectionsHaveTheirOwn()
    {
        TraceReading reading =
            Read("[Trace]\nA,dBm\nDetector,RMS\n-50,1000\n-51,2000\n[Trace]\nB,dBm\nDetector,Peak\n-60,1000\n-61,2000\n",
                new TraceReadOptions { FrequencyUnit = FrequencyUnit.Hertz });
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(["RMS", "Peak"], reading.Traces.Select(t => t.Settings.Detector));
    }

    [Fact]
    public void RowsOfSweepsHaveTheirOwn()
    {
        TraceReading reading =
            Read("Name,Detector,Unit,30 MHz,40 MHz,50 MHz\nnorth,RMS,dBm,-90,-91,-92\nsouth,RMS,dBm,-80,-81,-82\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(["RMS", "RMS"], reading.Traces.Select(t => t.Settings.Detector));
        Assert.Equal(["north", "south"], reading.Traces.Select(t => t.Column));
    }

    [Fact]
    public void RemarksOfATouchstoneFileStateTheirs() =>
        Assert.Equal("Sample", _folder.With("t.s2p", "! Detector: Sample\n# MHz S DB R 50\n1 -1 1 -20 1 -1 1 -1 1\n")
            .Trace("t.s2p").Settings.Detector);

    private ReceiverSettings Settings(string preamble)
    {
        TraceReading reading = Read(preamble + Rows);
        Assert.Equal("", string.Join('\n', reading.Faults));
        return Assert.Single(reading.Traces).Settings;
    }

    private TraceReading Read(string text, TraceReadOptions? options = null) =>
        _folder.With("t.csv", text).Trace("t.csv", options);
}
