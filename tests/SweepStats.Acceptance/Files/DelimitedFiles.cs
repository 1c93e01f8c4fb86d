using System.Text;
using SweepStats.Files.Traces;
using SweepStats.Quantities;
using Xunit;

namespace SweepStats.Acceptance.Files;

public sealed class DelimitedFiles : IDisposable
{
    private static readonly double[] Hertz = [30e6, 30.1e6, 31e6];
    private static readonly double[] Levels = [-87.43, -86.5, -1.25];

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("frequency_hz,level_dbm\n30000000,-87.43\n30100000,-86.5\n31000000,-1.25\n")]
    [InlineData("Frequency [MHz];Level [dBm]\r\n30;-87.43\r\n30.1;-86.5\r\n31;-1.25\r\n")]
    [InlineData("Frequency (MHz)\tLevel (dBm)\r30\t-87.43\r30.1\t-86.5\r31\t-1.25")]
    [InlineData("Frequency (MHz)   Level (dBm)\n  30.0    -87.43\n  30.1    -86.5\n  31.0    -1.25\n")]
    [InlineData("freq_GHz, ampl_dBm\n0.03, -87.43\n0.0301, -86.5\n0.031, -1.25\n")]
    [InlineData("\"Frequency, stepped (kHz)\",\"Level (dBm)\"\n\"30000\",\"-87.43\"\n30100,-86.5\n31000,-1.25\n")]
    [InlineData("Level (dBm),Frequency (Hz)\n-87.43,30000000\n-86.5,30100000\n-1.25,31000000\n")]
    [InlineData("No.,Frequency (MHz),Level (dBm)\n1,30,-87.43\n2,30.1,-86.5\n3,31,-1.25\n")]
    [InlineData("Frequency,Trace 1\nMHz,dBm\n30,-87.43\n30.1,-86.5\n31,-1.25\n")]
    [InlineData("! taken in the hall\n! Freq(Hz)  Level(dBm)\n3.00E+07  -8.743E+01\n3.01E7 -86.5\n! remark\n3.1e7 -1.25\n")]
    [InlineData("# remark\n% frequency_hz,level_dbm\n30000000,-87.43,\n30100000,-86.5,\n31000000,-1.25,\n,,\n")]
    [InlineData("Hall,3\nRBW,10 kHz\n\nFrequency (Hz),Level (dBm)\n30000000,-87.43\n30100000,-86.5\n31000000,-1.25\nEND\n")]
    [InlineData("frequency_hz,level_dbm,phase_deg\n30000000,-87.43,12\n30100000,-86.5,13\n31000000,-1.25,14\n")]
    [InlineData("Marker,Hz,dBm\n1,100,-3,9\n2,200,-4,9\n\nFrequency (Hz),Level "
        + "(dBm)\n30000000,-87.43\n30100000,-86.5\n31000000,-1.25\n")]
    public void OneTraceIsReadAlikeHoweverItIsLaidOut(string text) => AssertTheTrace(Read(text));

    [Theory]
    [InlineData("Frequenz (MHz);Pegel (dBm)\r\n30,0;-87,43\r\n30,1;-86,5\r\n31,0;-1,25\r\n")]
    [InlineData("Frequency (MHz)\tLevel (dBm)\n30\t-87,43\n30,1\t-86,5\n31\t-1,25\n")]
    public void ASemicolonFileWithDecimalCommasIsReadRightly(string text) => AssertTheTrace(Read(text));

    [Fact]
    public void EveryEncodingOfTheSameTextGivesTheSameTrace()
    {
        const string Text = "Ort: Größe 3\nFrequency [MHz],Level [dBm]\n30,-87.43\n30.1,-86.5\n31,-1.25\n";
        Encoding[] encodings =
            [new UTF8Encoding(false), new UTF8Encoding(true), Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.Latin1];
        foreach (Encoding encoding in encodings)
        {
            TraceReading reading = _folder.With("t.csv", [.. encoding.GetPreamble(), .. encoding.GetBytes(Text)]).Trace("t.csv");
            AssertTheTrace(reading);
            Assert.Equal(encoding == Encoding.Latin1,
                reading.Assumptions.Any(a => a.Contains("Latin-1", StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void AByteOrderMarkBeforeTheFirstNumberDoesNotHideTheRow()
    {
        byte[] bytes = [0xEF, 0xBB, 0xBF, .. "30000000,-87.43\n30100000,-86.5\n31000000,-1.25\n"u8];
        TraceReading reading = _folder.With("t.csv", bytes)
            .Trace("t.csv",
            new TraceReadOptions { FrequencyUnit = FrequencyUnit.Hertz, LevelUnit = LevelUnit.DecibelMilliwatts });
        AssertTheTrace(reading);
        Assert.Equal(3, reading.Assumptions.Length);
    }

    [Fact]
    public void NulBytesArePassedOverAndSaid()
    {
        TraceReading reading = Read("frequency_hz,level_dbm\n30000000\0,-87.43\0\n30100000,-86.5\n31000000,-1.25\n");
        AssertTheTrace(reading);
        Assert.Contains(reading.Assumptions, a => a.Contains("NUL", StringComparison.Ordinal));
    }

    [Fact]
    public void EveryLevelColumnIsATrace()
    {
        TraceReading reading = Read("Frequency (MHz),Trace 1 (dBm),Trace 1 phase (deg),Trace 2 (dBm)\n1,-1,90,-2\n2,-3,91,-4\n");
        Assert.Equal(["Trace 1 (dBm)", "Trace 2 (dBm)"], reading.Traces.Select(t => t.Column));
        Assert.Equal([-2.0, -4.0], reading.Traces[1].Levels.AsEnumerable());
        Assert.Equal([[90.0, 91.0], []], reading.Traces.Select(t => t.Phases.ToArray()));
        Assert.Contains("column Trace 1 (dBm) has its phase beside it: 3 'Trace 1 phase (deg)'", reading.Assumptions);
    }

    [Theory]
    [InlineData("trace 2 (dBm)")]
    [InlineData("3")]
    public void AColumnIsPickedByHeaderOrNumber(string column)
    {
        TraceReading reading =
            Read("Frequency (MHz),Trace 1 (dBm),Trace 2 (dBm)\n1,-1,-2\n2,-3,-4\n", new TraceReadOptions { Columns = [column] });
        Assert.Equal([-2.0, -4.0], Assert.Single(reading.Traces).Levels.AsEnumerable());
    }

    [Fact]
    public void TwoColumnsOfOneNameAreToldApart()
    {
        TraceReading reading = Read("Frequency (MHz),Level (dBm),Level (dBm)\n1,-1,-2\n2,-3,-4\n");
        Assert.Equal(["Level (dBm) #2", "Level (dBm) #3"], reading.Traces.Select(t => t.Column));
    }

    // 0 dBm in 50 Ω are 107 dBµV (106.99), 47 dBmV and 0.2236 V: U = √(PR), by hand.
    [Theory]
    [InlineData("dBm", "0", LevelScale.DecibelMilliwatts, 0)]
    [InlineData("dBµV", "106.98970004336019", LevelScale.DecibelMilliwatts, 0)]
    [InlineData("dBuV", "106.98970004336019", LevelScale.DecibelMilliwatts, 0)]
    [InlineData("dBmV", "46.98970004336019", LevelScale.DecibelMilliwatts, 0)]
    [InlineData("V", "0.22360679774997896", LevelScale.DecibelMilliwatts, 0)]
    [InlineData("mV", "223.60679774997896", LevelScale.DecibelMilliwatts, 0)]
    [InlineData("uV", "223606.79774997896", LevelScale.DecibelMilliwatts, 0)]
    [InlineData("W", "1.0e-06", LevelScale.DecibelMilliwatts, -30)]
    [InlineData("mW", "2", LevelScale.DecibelMilliwatts, 3.010299956639812)]
    [InlineData("dB", "-60.5", LevelScale.DecibelRatio, -60.5)]
    public void EveryLevelUnitIsBroughtToItsScale(string unit, string level, LevelScale scale, double expected)
    {
        _folder.With("reference/r.csv", $"frequency_hz,Level ({unit})\n1000000,{level}\n2000000,{level}\n")
            .With("covered/A/A1/c.csv", $"frequency_hz,Level ({unit})\n1000000,{level}\n2000000,{level}\n");
        var reading = _folder.Read();
        Assert.Empty(reading.Faults);
        Assert.Equal(scale, reading.Campaign!.Sweeps[0].Scale);
        Assert.Equal(expected, reading.Campaign.Sweeps[0].Levels[0], 9);
    }

    [Fact]
    public void PlainlyStatedSettingsAreKept()
    {
        TraceReading reading = Read(
            "RBW,9000,Hz\nVideo Bandwidth: 30 kHz\nRF Attenuation;10 dB\nRef Level -20 dBm\nDetector,RMS\n! Averaging = "
            + "Power\nSweep Time (ms),120\n"
            + "frequency_hz,level_dbm\n1,-1\n2,-2\n");
        var settings = reading.Settings;
        Assert.Empty(reading.Faults);
        Assert.Equal((9000.0, 30000.0, 10.0, -20.0),
            (settings.ResolutionBandwidthHz, settings.VideoBandwidthHz, settings.AttenuationDb, settings.ReferenceLevel));
        Assert.Equal(("RMS", "Power"), (settings.Detector, settings.Averaging));
        Assert.Equal(0.12, settings.SweepTimeSeconds!.Value, 12);
    }

    [Fact]
    public void ASettingWithoutUnitOrStatedTwiceDifferentlyCountsAsUnknown()
    {
        TraceReading reading = Read("RBW,9000\nVBW,10 kHz\nVBW,30 kHz\nfrequency_hz,level_dbm\n1,-1\n2,-2\n");
        Assert.Null(reading.Settings.ResolutionBandwidthHz);
        Assert.Null(reading.Settings.VideoBandwidthHz);
    }

    [Fact]
    public void TheUnitOfThePreambleCountsWhereTheColumnHasNone()
    {
        TraceReading reading = Read("Y-Axis Unit;dBµV\nX-Axis Unit;kHz\nFrequency;Trace 1\n1;60\n2;61\n");
        Assert.Equal(LevelUnit.DecibelMicrovolts, Assert.Single(reading.Traces).Unit);
        Assert.Equal(2000.0, reading.Traces[0].Axis.Hertz[1]);
    }

    [Fact]
    public void AFileWithoutHeaderButWithStatedUnitsIsReadAndTheOrderOfItsColumnsSaid()
    {
        TraceReading reading =
            Read("Detector,Peak\r\nX Axis Units,MHz\r\nY Axis Units,dBm\r\nDATA\n30,-87.43\r\n30.1,-86.5\r\n31,-1.25\r\n");
        AssertTheTrace(reading);
        Assert.Equal(["no column is named; the first was taken as the frequency"], reading.Assumptions.AsEnumerable());
    }

    [Fact]
    public void ARowOfUnitsMayLeaveTheLevelToThePreamble()
    {
        TraceReading reading =
            Read("Resolution Bandwidth:    ,100000,Hz\nLevel Unit: ,dBm\n\n,Trace 1,Trace 2\nHz,   ,   \n30000000, -87.43, "
                + "1\n30100000, -86.5, 2\n31000000, -1.25, 3\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(["Trace 1", "Trace 2"], reading.Traces.Select(t => t.Column));
        Assert.Equal(100000.0, reading.Settings.ResolutionBandwidthHz);
    }

    [Fact]
    public void ZeroHertzIsALegalStart() =>
    Assert.Equal(0.0, Read("frequency_hz,level_dbm\n0,-1\n10,-2\n").Traces[0].Axis.Hertz[0]);

    private TraceReading Read(string text, TraceReadOptions? options = null) =>
        _folder.With("t.csv", text).Trace("t.csv", options);

    private static void AssertTheTrace(TraceReading reading)
    {
        Assert.Equal("", string.Join('\n', reading.Faults));
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal(Hertz, trace.Axis.Hertz.ToArray());
        Assert.Equal(Levels, trace.Levels.AsEnumerable());
        Assert.Equal(LevelUnit.DecibelMilliwatts, trace.Unit);
    }
}
