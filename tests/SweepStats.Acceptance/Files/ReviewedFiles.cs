using System.Globalization;
using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>Exports in which something that is no level looks like one; every sample is invented.</summary>
public sealed class ReviewedFiles
{
    private const string Table = "Frequency (MHz),Level (dBm)\n30,-80.5\n41,-82.25\n52,-79\n";

    private static readonly double[] Levels = [-80.5, -82.25, -79];

    private static readonly TraceReadOptions Told =
        new() { FrequencyUnit = FrequencyUnit.Megahertz, LevelUnit = LevelUnit.DecibelMilliwatts };

    [Theory]
    [InlineData("Limit1 (dBm)")]
    [InlineData("Limits (dBm)")]
    [InlineData("LimitLine (dBm)")]
    [InlineData("Limite (dBm)")]
    [InlineData("Lim (dBm)")]
    [InlineData("Grenzwert (dBm)")]
    [InlineData("Seuil (dBm)")]
    [InlineData("Threshold (dBm)")]
    [InlineData("Tolerance (dB)")]
    [InlineData("Abstand (dB)")]
    [InlineData("Messunsicherheit (dB)")]
    [InlineData("U95 (dB)")]
    [InlineData("Delta (dB)")]
    [InlineData("Correction (dB)")]
    [InlineData("Corr. (dB)")]
    [InlineData("Antenna Factor (dB/m)")]
    public void AColumnBesideTheLevelsThatIsNoneIsLeftOutAndSaid(string name)
    {
        TraceReading reading = Read($"Frequency (MHz),Level (dBm),{name}\n30,-80.5,3\n41,-82.25,3.5\n52,-79,3\n");
        AssertOnlyLevels(reading);
        Assert.Contains(reading.Assumptions, a => a.Contains(name, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Max1 (dBm)", "Min1 (dBm)")]
    [InlineData("Peak (dBm)", "RMS (dBm)")]
    [InlineData("QP (dBm)", "AV (dBm)")]
    [InlineData("Median (dBm)", "Mean (dBm)")]
    [InlineData("Trace1(MAXH)", "Trace2(VIEW)")]
    public void TwoReadingsOfTheSameSweepAreNoRepeats(string one, string other)
    {
        TraceReading reading = Read($"Unit,dBm\nFrequency (MHz),{one},{other}\n30,-80.5,-70\n41,-82.25,-71\n52,-79,-72\n");
        Assert.Contains("no repeats of each other", Assert.Single(reading.Faults).Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Trace 1 (dBm) Clear/Write", LevelUnit.DecibelMilliwatts)]
    [InlineData("Level [dBµV] RMS", LevelUnit.DecibelMicrovolts)]
    [InlineData("dB(S21)", LevelUnit.Decibels)]
    public void AUnitInsideTheNameOfAColumnIsRead(string name, LevelUnit unit) =>
        Assert.Equal(unit, Assert.Single(Read($"Frequency (MHz),{name}\n30,-80.5\n41,-82.25\n52,-79\n").Traces).Unit);

    [Theory]
    [InlineData("Limit Line 1\nFrequency (MHz),Level (dBm)\n", "Limit Line 1")]
    [InlineData("Marker\nFrequency (MHz),Level (dBm)\n", "Marker")]
    [InlineData("Cable loss\nFrequency (MHz),Value (dB)\n", "Cable loss")]
    public void ATableBelowTheTraceThatIsCalledOtherwiseIsNoSweep(string title, string name)
    {
        TraceReading reading = Read("Trace 1\n" + Table + "\n" + title + "30,-50\n41,-51\n52,-52\n");
        AssertOnlyLevels(reading);
        Assert.Contains(reading.Assumptions, a => a.Contains($"'{name}' and was not read", StringComparison.Ordinal));
    }

    [Fact]
    public void APhaseThatOnlyItsTitleTellsIsNoSweep() =>
        AssertOnlyLevels(Read("Magnitude\n30,-80.5\n41,-82.25\n52,-79\n\nPhase deg\n30,10\n41,20\n52,30\n", Told));

    [Fact]
    public void ATitleThatStatesASettingDoesNotDropItsTable() =>
        Assert.Equal(2,
            Read("Limit: off\n" + Table
                + "\nAttenuation 10 dB\nFrequency (MHz),Level (dBm)\n30,-50\n41,-51\n52,-52\n").Traces.Length);

    [Fact]
    public void AMaxHoldTableBelowAnAverageTableIsNoRepeat() =>
        Assert.Contains("no repeats of each other",
            Assert.Single(Read("Max Hold\n" + Table + "\nAverage\n" + Table).Faults).Problem, StringComparison.Ordinal);

    [Theory]
    [InlineData("Limit (dBm),-50,-50,-50")]
    [InlineData("S21 Phase (deg),10,20,30")]
    public void ARowThatIsNoLevelIsNoSweep(string row)
    {
        TraceReading reading = Read($"Frequency (MHz),30,41,52\nLevel (dBm),-80.5,-82.25,-79\n{row}\n");
        AssertOnlyLevels(reading);
        Assert.Contains(reading.Assumptions,
            a => a.StartsWith("line 3, '", StringComparison.Ordinal) && a.Contains(" and not read", StringComparison.Ordinal));
    }

    [Fact]
    public void AMeanBelowTheSweepsIsNoSweep()
    {
        ReadFault fault =
            Assert.Single(Read("Sweep,30MHz,41MHz,52MHz\n1,-80.5,-82.25,-79\nMean,-80.5,-82.25,-79\n", Told).Faults);
        Assert.Equal(3, fault.Line);
        Assert.Contains("no repeats of each other", fault.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("30 000\t-80,5\n41 000\t-82,25\n52 000\t-79,1\n", 30e9)]
    [InlineData("1 030 000\t-80.5\n1 041 000\t-82.25\n1 052 000\t-79.1\n", 1.03e12)]
    [InlineData("Fréquence (Hz);Niveau (dBm)\n30 000 000;-80,5\n41 000 000;-82,25\n", 30e6)]
    public void ThousandsPartedByBlanksAreReadAndToldOf(string text, double hertz)
    {
        TraceReading reading = Read(text, Told);
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal((hertz, -80.5, -82.25), (trace.Axis.Hertz[0], trace.Levels[0], trace.Levels[1]));
        Assert.Contains(reading.Assumptions,
            a => a.StartsWith("the blanks in column 1 were read as parting thousands", StringComparison.Ordinal));
    }

    [Fact]
    public void AFirstRowWithoutItsLevelIsNotDropped()
    {
        ReadFault fault = Assert.Single(Read("30,\n41,-82.25\n52,-79\n", Told).Faults);
        Assert.Equal((1, "a field of the row is empty"), (fault.Line, fault.Problem));
    }

    [Fact]
    public void AColumnWithoutReadingsIsNamedAsTheTrouble() =>
        Assert.Contains("'NaN' stands among the numbers",
            Assert.Single(Read("Frequency (MHz),Level (dBm),Second\n30,-80.5,NaN\n41,-82.25,NaN\n42,"
                + "-82.25,NaN\n").Faults).Problem, StringComparison.Ordinal);

    [Fact]
    public void ABandwidthWithoutUnitBesideFrequenciesInMegahertzStaysUnstated() =>
        Assert.Null(Read("X-Axis Unit,MHz\nRBW,300\n" + Table).Settings.ResolutionBandwidthHz);

    [Theory]
    [InlineData("Kalibriert am 12.03.2024")]
    [InlineData("Étalonnage le 25/03/2024")]
    [InlineData("Exported: 2026-05-01 10:00:00")]
    [InlineData("Limit of 1996-06-01")]
    [InlineData("FW: 2.1 (2021-02-03)")]
    [InlineData("Rev 10.11.2003")]
    [InlineData("Address 10.3.12.26")]
    public void ADateOfSomethingElseIsNotTheDateOfTheSweep(string line) =>
    Assert.Null(Assert.Single(Read(line + "\n" + Table).Traces).TakenAt);

    [Theory]
    [InlineData("Datum,12.03.2026\nUhrzeit,14:05:06", "2026-03-12T14:05:06+00:00")]
    [InlineData("Date: 2026-03-12T14:05:06+02:00", "2026-03-12T14:05:06+02:00")]
    public void TheDateIsReadWithItsTimeAndZone(string lines, string taken) =>
        Assert.Equal(taken, Assert.Single(Read(lines + "\n" + Table).Traces).TakenAt?.ToString("yyyy-MM-ddTHH:mm:sszzz",
            CultureInfo.InvariantCulture));

    private static void AssertOnlyLevels(TraceReading reading)
    {
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(Levels, Assert.Single(reading.Traces).Levels.ToArray());
    }

    private static TraceReading Read(string text, TraceReadOptions? options = null)
    {
        using var folder = new ScratchFolder();
        return folder.With("a.csv", text).Trace("a.csv", options);
    }
}
