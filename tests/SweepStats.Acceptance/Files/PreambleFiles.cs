using System.Text;
using SweepStats.Files;
using SweepStats.Files.Traces;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// What is stated above the rows: settings, dates, ranges; and the bytes they are written in. Every sample is invented.
/// </summary>
public sealed class PreambleFiles : IDisposable
{
    private const string Rows = "Frequency (Hz),Level (dBm)\n1000000,-50\n2000000,-51\n3000000,-52\n";

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("RBW,9000,Hz\n")]
    [InlineData("RBW;9000.0;Hz\n")]
    [InlineData("! RBW: 9 kHz  VBW: 30 kHz\n")]
    [InlineData("Resolution Bandwidth (kHz) = 9\n")]
    [InlineData("% IF BANDWIDTH: 9kHz\n")]
    [InlineData("X Axis Units,Hz\nRBW,9000\nRBW Filter,Gaussian\nRBW Filter BW,6dB\n")]
    [InlineData("Res BW 9 kHz\n")]
    [InlineData("\"RBW\",\"9\",\"kHz\"\n")]
    public void ResolutionBandwidthIsFoundHoweverItIsWorded(string preamble) =>
    Assert.Equal(9000.0, Settings(preamble).ResolutionBandwidthHz);

    [Theory]
    [InlineData("Filter,9000\n")]
    [InlineData("RBW,9000\nRBW,30000\n")]
    [InlineData("RBW,auto\n")]
    [InlineData("RBW,9000\n")]
    public void WhatIsNotPlainCountsAsNotStated(string preamble) => Assert.Null(Settings(preamble).ResolutionBandwidthHz);

    [Fact]
    public void EverySettingIsKept()
    {
        ReceiverSettings settings = Settings(
            "Attenuation,10,dB\nVBW: 30 kHz\nRef Level,-20,dBm\nDetector,RMS\nAverage Type,Power\nSweep Time,120,ms\nTrace "
                + "Type,Max Hold\nPreamp State,Off\n");
        Assert.Equal((10.0, 30e3, -20.0, 0.12),
            (settings.AttenuationDb, settings.VideoBandwidthHz, settings.ReferenceLevel, settings.SweepTimeSeconds));
        Assert.Equal(("RMS", "Power", "Max Hold", "Off"),
            (settings.Detector, settings.Averaging, settings.TraceMode, settings.Preamplifier));
    }

    [Fact]
    public void ALineWithAValueForEachTraceStatesOneForEach()
    {
        TraceReading reading = Read(
            "Detector,Peak,RMS\nY Axis Units,dBm\nTrace Name,North,South\nX Axis Units,Hz\nDATA\n1000,-50,-60\n2000,-51,-61\n");
        Assert.Equal(["North", "South"], reading.Traces.Select(t => t.Column));
        Assert.Equal(["Peak", "RMS"], reading.Traces.Select(t => t.Settings.Detector));
        Assert.Null(reading.Settings.Detector);
        Assert.Equal("RMS",
            Assert.Single(_folder.Trace("t.csv", new TraceReadOptions { Columns = ["South"] }).Traces).Settings.Detector);
    }

    [Theory]
    [InlineData("Date,2026-03-05\nTime,14:30:05\n", 5, 14)]
    [InlineData("! Date: 2026-03-05T14:30:05Z\n", 5, 14)]
    [InlineData("Date: 05 Mar 2026 14:30:05\n", 5, 14)]
    [InlineData("TIME: Thu Mar 05 14:30:05 2026\n", 5, 14)]
    [InlineData("Sweep,3/25/2026 2:30:05 PM\n", 25, 14)]
    [InlineData("Date,25/03/2026,14:30:05\n", 25, 14)]
    [InlineData("Datum und Ort\nDate;05.03.2026;14:30:05\n", 5, 14)]
    [InlineData("Mar 5, 2026 02:30:05\n", 5, 2)]
    public void TheDateIsReadInEveryStyle(string preamble, int day, int hour) =>
        Assert.Equal(new DateTimeOffset(2026, 3, day, hour, 30, 5, TimeSpan.Zero), Read(preamble + Rows).Traces[0].TakenAt);

    [Fact]
    public void ADateWhoseDayAndMonthCannotBeToldApartIsNotUsed()
    {
        TraceReading reading = Read("Date,03/05/2026\n" + Rows);
        Assert.Null(reading.Traces[0].TakenAt);
        Assert.Contains("the date 03/05/2026 was not used: day and month cannot be told apart", reading.Assumptions);
    }

    [Theory]
    [InlineData("Receiver,3\nCalibration due 2027-01-02\n")]
    [InlineData("Firmware 2019-05-06\n")]
    [InlineData("Calibrated: 2020-01-02\n")]
    public void DatesOfOtherThingsAreNotTheSweeps(string preamble) => Assert.Null(Read(preamble + Rows).Traces[0].TakenAt);

    [Fact]
    public void UnitsOfBothAxesMayBeCalledUnit()
    {
        TraceReading reading = Read("Unit,kHz\nUnit,dBm\nUnit,cabinet 3\nfrequency,level\n1000,-50\n2000,-51\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal((LevelUnit.DecibelMilliwatts, 1e6), (reading.Traces[0].Unit, reading.Traces[0].Axis.Hertz[0]));
    }

    [Fact]
    public void AFileThatWasCutOffIsRefused()
    {
        ReadFault fault = Assert.Single(Read("Points,1001\nStop Frequency,30 MHz\n" + Rows).Faults);
        Assert.Equal(6, fault.Line);
        Assert.Contains("states 1001 points and ends after 3, short of its stop frequency: it was cut off", fault.Problem,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-16BE")]
    public void Utf16WithoutAMarkIsRecognised(string encoding)
    {
        TraceReading reading = _folder.With("t.csv", Encoding.GetEncoding(encoding).GetBytes(Rows)).Trace("t.csv");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal([-50.0, -51, -52], reading.Traces[0].Levels.ToArray());
        Assert.Contains("the text has no byte order mark and was read as UTF-16", reading.Assumptions);
    }

    [Fact]
    public void NulsAfterFieldsArePassedOver()
    {
        TraceReading reading = _folder.With("t.csv",
            Encoding.Latin1.GetBytes("Größe;1\n" + Rows.Replace(",", "\0,", StringComparison.Ordinal))).Trace("t.csv");
        Assert.Equal([-50.0, -51, -52], reading.Traces[0].Levels.ToArray());
    }

    [Fact]
    public void UnitsThatDifferFromRowToRowAreRefusedForLevels()
    {
        ReadFault fault = Assert.Single(Read("30MHz,-50dBm\n31MHz,-51dBm\n32MHz,55dBµV\n33MHz,-53dBm\n").Faults);
        Assert.Equal(3, fault.Line);
    }

    private ReceiverSettings Settings(string preamble) => Read(preamble + Rows).Settings;

    private TraceReading Read(string text) => _folder.With("t.csv", text).Trace("t.csv");
}
