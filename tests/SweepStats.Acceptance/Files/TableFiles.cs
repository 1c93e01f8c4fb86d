using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// Which lines of a file are its table, and which of its columns are numbers; every sample is invented, every value typed by
/// hand.
/// </summary>
public sealed class TableFiles : IDisposable
{
    private static readonly double[] Hertz = [30e6, 31e6, 32e6, 33e6, 34e6, 35e6];
    private static readonly double[] Levels = [-80.5, -81.25, -79, -78.5, -80, -82];

    private const string Head = "Frequency (MHz);Level (dBm)\n";
    private const string Rows = "30;-80.5\n31;-81.25\n32;-79\n33;-78.5\n34;-80\n35;-82\n";
    private const string FirstHalf = "30;-80.5\n31;-81.25\n32;-79\n";
    private const string SecondHalf = "33;-78.5\n34;-80\n35;-82\n";

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("# 12,3 dB pad, see page 4\n" + Head + Rows)]
    [InlineData(Head + "# pad of 3 dB; see page 4\n" + Rows)]
    [InlineData(Head + "# from 10 MHz on; see page 4\n" + Rows)]
    [InlineData("Note: 2; 3 were skipped\n" + Head + "Note: 2; 3 were skipped\n" + Rows + "Note: 2; 3 were skipped\n")]
    [InlineData(Head + Rows + "2; 3 and 5 were skipped in the cabin\n")]
    [InlineData(Head + FirstHalf + "Note: the door was opened here\n" + SecondHalf)]
    [InlineData("Receiver cabin\n" + Head + FirstHalf + "Page 1 of 2\n\nReceiver cabin\n" + Head + SecondHalf + "Page 2 of 2\n")]
    [InlineData(Head + FirstHalf + "- 2 -\n" + Head + SecondHalf)]
    [InlineData("Segment 1\n" + Head + FirstHalf + "\nSegment 2\n" + Head + SecondHalf)]
    [InlineData(Head + Rows + "\nMarkers\nFrequency (MHz);Level (dBm)\n32;-79\n33;-78.5\n34;-80\n")]
    [InlineData("Peak list\n33;-78.5\n32;-79\n\n" + Head + Rows)]
    [InlineData("Marker;Frequency (MHz);Level (dBm)\n1;32;-79\n2;33;-78.5\n3;34;-80\n\n" + Head + Rows)]
    [InlineData(Head + "35;-82\n34;-80\n33;-78.5\n32;-79\n31;-81.25\n30;-80.5\n")]
    [InlineData("Unit;dBm\nStart;35 MHz\nStop;30 MHz\n35;-82\n34;-80\n33;-78.5\n32;-79\n31;-81.25\n30;-80.5\n")]
    [InlineData("Frequency (MHz),Level (dBm)\n30;-80.5\n31;-81.25\n32;-79\n33;-78.5\n34;-80\n35;-82\n")]
    [InlineData("Frequency (MHz);Level (dBm)\n30\t-80.5\n31\t-81.25\n32\t-79\n33\t-78.5\n34\t-80\n35\t-82\n")]
    [InlineData("Level (dBm);-80.5;-81.25;-79;-78.5;-80;-82\nFrequency (MHz);30;31;32;33;34;35\n")]
    [InlineData("f/MHz 30,0 31,0 32,0 33,0 34,0 35,0\nL/dBm -80,5 -81,25 -79,0 -78,5 -80,0 -82,0\n")]
    public void OneTraceIsReadWhateverStandsAroundIt(string text) => AssertOne(text);

    [Theory]
    [InlineData("Frequency (MHz);Pol;Level (dBm);Comment\n30;H;-80.5;\n31;H;-81.25;door "
        + "open\n32;H;-79;\n33;H;-78.5;\n34;H;-80;\n35;H;-82;\n")]
    [InlineData("Date,Time,Frequency (MHz),Level (dBm)\n2026-03-04,10:20:01,30,-80.5\n2026-03-04,10:20:02,31,-81.25\n2026-03-04,"
        + "10:20:03,32,-79\n2026-03-04,10:20:04,33,-78.5\n2026-03-04,10:20:05,34,-80\n2026-03-04,10:20:06,35,-82\n")]
    [InlineData("Frequency (MHz),Level (dBm),Result\n30,-80.5,pass\n31,-81.25,pass\n32,-79,fail\n33,-78.5,pass\n34,-80,fail\n35,"
        + "-82,pass\n")]
    [InlineData("Frequency (MHz)  Level (dBm)  Pol\n30 -80.5 hor\n31 -81.25 hor\n32 -79 hor\n33 -78.5 hor\n34 -80 hor\n35 "
        + "-82 hor\n")]
    public void ColumnsOfWordsAreToldOfAndNotRead(string text) =>
        Assert.Contains(AssertOne(text).Assumptions,
            a => a.StartsWith("columns that are not levels were not read:", StringComparison.Ordinal));

    /// <summary>A V below "Pol" is a polarisation; a unit of volts would put 45 dBµV at 45 V.</summary>
    [Fact]
    public void APolarisationIsNoUnit()
    {
        Trace trace = Assert.Single(Read("Frequency [MHz],Level [dBµV],Pol\n30,45,V\n31,46,V\n32,47,V\n").Traces);
        Assert.Equal((LevelUnit.DecibelMicrovolts, 45.0), (trace.Unit, trace.Levels[0]));
    }

    [Fact]
    public void ColumnsKeepTheirNumbersBesideWords()
    {
        const string Text = "Frequency (MHz);Pol;Trace 1 (dBm);Trace 2 (dBm)\n30;H;-80;-90\n31;H;-81;-91\n32;H;-82;-92\n";
        Assert.Equal([-90.0, -91, -92],
            Assert.Single(Read(Text, new TraceReadOptions { Columns = ["4"] }).Traces).Levels.ToArray());
        Assert.Equal([-90.0, -91, -92],
            Assert.Single(Read(Text, new TraceReadOptions { Columns = ["Trace 2 (dBm)"] }).Traces).Levels.ToArray());
    }

    [Theory]
    [InlineData("Frequency (MHz);Pol;Level (dBm)\n30;H;-80\n30;V;-90\n31;H;-81\n31;V;-91\n32;H;-82\n32;V;-92\n", "H", "V")]
    [InlineData("Frequency (MHz);Pol;Level (dBm)\n30;H;-80\n31;H;-81\n32;H;-82\n30;V;-90\n31;V;-91\n32;V;-92\n", "H", "V")]
    [InlineData("Trace,Frequency (MHz),Level (dBm)\nnorth,30,-80\nnorth,31,-81\nnorth,32,-82\nsouth,30,-90\nsouth,31,-91\nsouth,"
        + "32,-92\n", "north", "south")]
    [InlineData("Frequency (MHz),Level (dBm),Pol\n30,-80,H\n31,-81,H\n32,-82,H\n30,-90,V\n31,-91,V\n32,-92,V\n", "H", "V")]
    [InlineData("Sweep;Frequency (MHz);Level (dBm)\n1;30;-80\n1;31;-81\n1;32;-82\n2;30;-90\n2;31;-91\n2;32;-92\n",
        "Sweep 1", "Sweep 2")]
    [InlineData("Frequency (MHz);Sweep;Level (dBm)\n30;1;-80\n30;2;-90\n31;1;-81\n31;2;-91\n32;1;-82\n32;2;-92\n",
        "Sweep 1", "Sweep 2")]
    [InlineData("Unit;dBm\nFrequency (MHz);Run;Level\n30;1;-80\n31;1;-81\n32;1;-82\n30;2;-90\n31;2;-91\n32;2;-92\n",
        "Run 1", "Run 2")]
    [InlineData("Unit,dBm\nFrequency Unit,MHz\n30,-80,hor\n31,-81,hor\n32,-82,hor\n30,-90,ver\n31,-91,ver\n32,-92,ver\n",
        "hor", "ver")]
    [InlineData("Name;Frequency (MHz);Level (dBm)\nA;32;-82\nA;31;-81\nA;30;-80\nB;30;-90\nB;31;-91\nB;32;-92\n", "A", "B")]
    public void RowsAreSeveralTracesWhereAColumnTellsThemApart(string text, string one, string other)
    {
        bool counted = one.StartsWith("Sweep", StringComparison.Ordinal) || one.StartsWith("Run", StringComparison.Ordinal);
        Assert.Equal(
            counted ? ""
                : $"the rows are of traces with names of their own, which may be no repeats of each other: '{one}', '{other}'",
            string.Join('\n', Read(text).Faults.Select(f => f.Problem)));
        TraceReading reading = TraceFile.Look(System.IO.Path.Combine(_folder.Path, "t.csv"), "t.csv", new TraceReadOptions());
        Assert.Equal([one, other], reading.Traces.Select(t => t.Column));
        Assert.Equal([[-80.0, -81, -82], [-90.0, -91, -92]], reading.Traces.Select(t => t.Levels.ToArray()));
        Assert.All(reading.Traces, t => Assert.Equal([30e6, 31e6, 32e6], t.Axis.Hertz.ToArray()));
        Assert.All(reading.Traces, t => Assert.Equal(LevelUnit.DecibelMilliwatts, t.Unit));
        Assert.Contains(reading.Assumptions,
            a => a.StartsWith("the rows hold 2 traces, told apart by column", StringComparison.Ordinal));
        Assert.Equal(-90, Assert.Single(_folder.Trace("t.csv", new TraceReadOptions { Columns = [other] }).Traces).Levels[0]);
        Assert.Equal(-90, Assert.Single(_folder.Trace("t.csv", new TraceReadOptions { Columns = ["2"] }).Traces).Levels[0]);
    }

    [Fact]
    public void RowsOfSeveralDetectorsAreNoRepeats()
    {
        TraceReading reading = Read("Frequency (MHz);Level (dBm);Detector\n30;-80;Peak\n30;-90;RMS\n31;-81;Peak\n31;-91;RMS\n");
        Assert.Contains("no repeats of each other: 'Peak', 'RMS'", Assert.Single(reading.Faults).Problem,
            StringComparison.Ordinal);
        Trace rms = Assert.Single(_folder.Trace("t.csv", new TraceReadOptions { Columns = ["RMS"] }).Traces);
        Assert.Equal(("RMS", -90.0), (rms.Settings.Detector, rms.Levels[0]));
    }

    /// <summary>Lines of the file, not of the part of it that is one trace.</summary>
    [Fact]
    public void ADoubtAboutARowOfSeveralTracesNamesItsLine()
    {
        Assert.Contains(Read("Sweep,Frequency (MHz),Level (dBm)\nnorth,30,-80\nsouth,30,-90\nnorth,31,-81\nsouth,"
            + "31,-9100\n").Faults, f => f.Line == 5);
    }

    [Fact]
    public void AColumnHeadedByATimeIsASweepTakenThen()
    {
        TraceReading reading = Read("Unit;dBm\nFrequency (MHz);2026-03-04 10:20;2026-03-04 10:25:30\n30;-80;-90\n31;-81;-91\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal([new DateTimeOffset(2026, 3, 4, 10, 20, 0, TimeSpan.Zero),
            new DateTimeOffset(2026, 3, 4, 10, 25, 30, TimeSpan.Zero)], reading.Traces.Select(t => t.TakenAt!.Value));
        Assert.Equal([-90.0, -91], reading.Traces[1].Levels.ToArray());
    }

    [Fact]
    public void ATimeOfDayIsNoTimeSinceTheDayMayHaveChanged()
    {
        TraceReading reading = Read("Unit;dBm\nDate;2026-03-04\nFrequency (MHz);10:20;10:25:30\n30;-80;-90\n31;-81;-91\n");
        Assert.Equal(["10:20", "10:25:30"], reading.Traces.Select(t => t.Column));
        Assert.All(reading.Traces, t => Assert.Null(t.TakenAt));
    }

    [Theory]
    [InlineData("Unit;dBm\nFrequency (MHz);03/04/2026 10:20;04/05/2026 10:25\n30;-80;-90\n31;-81;-91\n")]
    [InlineData("Unit;dBm\nFrequency (MHz);10:20;10:25\n30;-80;-90\n31;-81;-91\n")]
    public void ADateThatMayBeTwoIsNotUsed(string text) => Assert.All(Read(text).Traces, t => Assert.Null(t.TakenAt));

    [Theory]
    [InlineData("Frequency (Hz);Level (dBm)\n30,000,000;-80.5\n31,000,000;-81.25\n32,000,000;-79\n33,000,000;-78.5\n34,000,000;"
        + "-80\n35,000,000;-82\n")]
    [InlineData("Frequency (Hz),Level (dBm)\n\"30,000,000\",-80.5\n\"31,000,000\",-81.25\n\"32,000,000\",-79\n\"33,000,000\","
        + "-78.5\n\"34,000,000\",-80\n\"35,000,000\",-82\n")]
    [InlineData("Frequenz (Hz);Pegel (dBm)\n30.000.000,0;-80,5\n31.000.000,0;-81,25\n32.000.000,0;-79,0\n33.000.000,0;-78,5\n"
        + "34.000.000,0;-80,0\n35.000.000,0;-82,0\n")]
    [InlineData("Fréquence (Hz);Niveau (dBm)\n30 000 000;-80,5\n31 000 000;-81,25\n32 000 000;-79,0\n33 000 000;-78,5\n34 000 "
        + "000;-80,0\n35 000 000;-82,0\n")]
    [InlineData("Frequency (Hz)\tLevel (dBm)\n30'000'000\t-80.5\n31'000'000\t-81.25\n32'000'000\t-79\n33'000'000\t-78.5\n"
        + "34'000'000\t-80\n35'000'000\t-82\n")]
    [InlineData("Start;30 MHz\nStop;35 MHz\nFrequency (kHz);Level (dBm)\n30,000;-80.5\n31,000;-81.25\n32,000;-79\n33,000;-78.5\n"
        + "34,000;-80\n35,000;-82\n")]
    [InlineData("Start;30 MHz\nStop;35 MHz\nFrequency (MHz);Level (dBm)\n30,000;-80.5\n31,000;-81.25\n32,000;-79\n33,000;-78.5\n"
        + "34,000;-80\n35,000;-82\n")]
    public void MarksBetweenThousandsAreReadWhereTheFileSettlesThem(string text) =>
        Assert.Contains(AssertOne(text).Assumptions, a => a.Contains("in column 1 were read as", StringComparison.Ordinal));

    [Fact]
    public void TheOrderOfTheRowsSettlesWhatACommaParts()
    {
        Trace trace = Assert.Single(Read("Frequency (kHz);Level (dBm)\n998;-80\n999;-81\n1,000;-82\n1,001;-83\n").Traces);
        Assert.Equal([998e3, 999e3, 1000e3, 1001e3], trace.Axis.Hertz.ToArray());
    }

    [Theory]
    [InlineData("Frequency (kHz);Level (V)\n30,000;1,234\n31,000;1,345\n32,000;1,456\n", "decimal points")]
    [InlineData("Frequency;Level (dBm)\n30,000;-80\n31,000;-81\n32,000;-82\n", "'Start;30 MHz'")]
    public void MarksThatNothingSettlesAreRefused(string text, string remedy)
    {
        ReadFault fault = Assert.Single(Read(text, new TraceReadOptions { FrequencyUnit = FrequencyUnit.Kilohertz }).Faults);
        Assert.Contains("may be decimal or part thousands", fault.Problem, StringComparison.Ordinal);
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Head + FirstHalf + "32;-79.5\n" + SecondHalf)]
    [InlineData("Segment;" + Head + "1;30;-80.5\n1;31;-81.25\n1;32;-79\n2;32;-79.5\n2;33;-78.5\n2;34;-80\n2;35;-82\n")]
    [InlineData("Segment 1\n" + Head + FirstHalf + "\nSegment 2\n" + Head + "32;-79.5\n" + SecondHalf)]
    public void ABinThatTwoSegmentsShareIsReadOnceAndTheLaterReadingKept(string text)
    {
        TraceReading reading = Read(text);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal(Hertz, trace.Axis.Hertz.ToArray());
        Assert.Equal([-80.5, -81.25, -79.5, -78.5, -80, -82], trace.Levels.ToArray());
        Assert.Contains(reading.Assumptions, a => a.StartsWith("the frequency 32000000 Hz stands twice", StringComparison.Ordinal)
            && a.EndsWith("the reading of the later row was kept", StringComparison.Ordinal));
    }

    /// <summary>30 dB apart, where the readings beside them differ by no more than 2 dB: nobody can say which is right.</summary>
    [Fact]
    public void ASharedBinWhoseReadingsDifferWithoutReasonIsRefused() =>
        Assert.Contains("is repeated", Assert.Single(Read(Head + FirstHalf + "32;-49\n" + SecondHalf).Faults).Problem,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("30;-80\n30;-90\n31;-81\n31;-91\n32;-82\n32;-92\n", "is repeated")]
    [InlineData("30;-80\n31;-81\n32;-82\n33;-83\n32;-82\n31;-81\n", "falls from 33000000 Hz to 32000000 Hz")]
    public void RowsThatGoUpAndDownOrStandTwiceAreRefused(string rows, string problem) =>
        Assert.Contains(problem, Assert.Single(Read(Head + rows).Faults).Problem, StringComparison.Ordinal);

    [Theory]
    [InlineData("Frequency (MHz);Reference (dBm);Covered (dBm)\n30;-20;-80\n31;-21;-81\n", "Covered (dBm)")]
    [InlineData("Frequenz (MHz);Ohne Stoff (dBm);Mit Stoff (dBm)\n30;-20;-80\n31;-21;-81\n", "Mit Stoff (dBm)")]
    [InlineData("Frequency (MHz);Level (dBm);Noise (dBm)\n30;-20;-80\n31;-21;-81\n", "Noise (dBm)")]
    [InlineData("Name;30 MHz;31 MHz;32 MHz;Unit\nopen;-20;-21;-22\ncovered;-80;-81;-82\n", "covered")]
    [InlineData("Trace;Frequency (MHz);Level (dBm)\nopen;30;-20\nopen;31;-21\nclosed;30;-80\nclosed;31;-81\n", "closed")]
    public void TracesNamedByTheirPartsAreAskedForAndNeverPooled(string text, string column)
    {
        TraceReadOptions told = new() { LevelUnit = LevelUnit.DecibelMilliwatts };
        ReadFault fault = Assert.Single(Read(text.Replace(";Unit", "", StringComparison.Ordinal), told).Faults);
        Assert.Contains("no repeats of each other", fault.Problem, StringComparison.Ordinal);
        Assert.Contains("list the file in sweeps.csv once for each of them", fault.Remedy, StringComparison.Ordinal);
        Assert.Equal(-80, Assert.Single(_folder.Trace("t.csv", told with { Columns = [column] }).Traces).Levels[0]);
    }

    /// <summary>What the remedy says, done.</summary>
    [Fact]
    public void AFileListedOnceForEachOfItsRolesIsACampaign()
    {
        _folder.With("all.csv", "Frequency (MHz);Reference (dBm);Covered (dBm)\n30;-20;-80\n31;-21;-81\n")
            .With("sweeps.csv",
            "file,role,specimen,column\nall.csv,reference,,Reference (dBm)\nall.csv,covered,A,Covered (dBm)\n");
        Assert.Equal("", string.Join('\n', _folder.Read().Faults));
        Assert.Equal([-20.0, -80.0], _folder.Read().Campaign!.Sweeps.Select(s => s.Levels[0]));
    }

    [Theory]
    [InlineData("Frequency (MHz);Noise 1 (dBm);Noise 2 (dBm)\n30;-20;-80\n31;-21;-81\n")]
    [InlineData("Frequency (MHz);Covered 1 (dBm);Covered 2 (dBm)\n30;-20;-80\n31;-21;-81\n")]
    public void RepeatsOfOnePartArePooled(string text) => Assert.Equal(2, Read(text).Traces.Length);

    [Theory]
    [InlineData("Frequency (MHz);A (dBm);B (dBm)\n30;-80;NaN\n31;-81;NaN\n32;-82;NaN\n")]
    [InlineData("Frequency (MHz);A (dBm);B\n30;-80;---\n31;-81;---\n32;-82;---\n")]
    [InlineData("Frequency (MHz);A (dBm);B\n30;-80;-90\n31;-81;low\n32;-82;low\n33;-82;low\n")]
    public void AColumnOfLevelsThatWereNotReadIsNoColumnOfWords(string text) => Assert.NotEmpty(Read(text).Faults);

    [Fact]
    public void ARowThatAWordMarksAsNoReadingIsToldOf()
    {
        ReadFault fault = Assert.Single(Read("Frequency (MHz);Level (dBm);Status\n30;-80;\n31;-3;OVL\n32;-82;\n").Faults);
        Assert.Equal((3, "'OVL' in column 3 marks the row as no good reading"), (fault.Line, fault.Problem));
        Assert.Single(Read("Frequency (MHz);Level (dBm);Status\n30;-80;\n32;-82;\n").Traces);
    }

    /// <summary>A number among remarks is one of them.</summary>
    [Fact]
    public void ARemarkMayBeANumber() =>
        Assert.Equal([-80.0, -81, -82],
            Assert.Single(Read("Frequency (MHz);Level (dBm);Comment\n30;-80;door\n31;-81;3\n32;-82;window\n").Traces).Levels
                .ToArray());

    [Theory]
    [InlineData(Head + FirstHalf + "Unit: dBµV\n" + SecondHalf)]
    [InlineData(Head + FirstHalf + "Trace 2\n" + SecondHalf)]
    [InlineData(Head + FirstHalf + "Frequency (MHz);Level (dBµV)\n" + SecondHalf)]
    [InlineData(Head + FirstHalf + "frequency in steps;level in another way\n" + SecondHalf)]
    [InlineData(Head + FirstHalf + "Note: from here on the second trace\n" + SecondHalf)]
    [InlineData(Head + FirstHalf + "RBW: 100 kHz\n" + SecondHalf)]
    public void ALineThatMayChangeTheRowsBelowItIsNotPassedOver(string text) => Assert.NotEmpty(Read(text).Faults);

    [Fact]
    public void SegmentsUnderAHeaderAreReadInItsUnits()
    {
        TraceReading reading =
            Read("Datum;Zeit;Start (MHz);Stopp (MHz);Schritt (MHz);Anzahl;Pegel (dBµV)\n04.03.2026;10:20:30;30,0;30,3;0,1;4;12,"
                + "5;13,5;14,5;15,5\n04.03.2026;10:20:30;30,3;30,5;0,1;3;15,6;16,5;17,5\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal([30.0e6, 30.1e6, 30.2e6, 30.3e6, 30.4e6, 30.5e6], trace.Axis.Hertz.ToArray());
        Assert.Equal([12.5, 13.5, 14.5, 15.6, 16.5, 17.5], trace.Levels.ToArray());
        Assert.Equal((LevelUnit.DecibelMicrovolts, new DateTimeOffset(2026, 3, 4, 10, 20, 30, TimeSpan.Zero)),
            (trace.Unit, trace.TakenAt));
    }

    /// <summary>The level at the stop of a segment is dropped only where the next segment starts there.</summary>
    [Fact]
    public void ALevelAtTheStopOfASegmentIsKeptBeforeAGap()
    {
        Trace trace = Assert.Single(Read(
            "2026-03-05, 14:30:00, 1000, 1300, 100, 8, -1, -2, -3, -4\n2026-03-05, 14:30:00, 1500, 1700, 100, 8, -5, -6, -7\n",
            new TraceReadOptions { LevelUnit = LevelUnit.Decibels }).Traces);
        Assert.Equal([1000.0, 1100, 1200, 1300, 1500, 1600, 1700], trace.Axis.Hertz.ToArray());
        Assert.Equal([-1.0, -2, -3, -4, -5, -6, -7], trace.Levels.ToArray());
    }

    [Fact]
    public void PointsStatedForASweepAreComparedWithEachOfThoseBelowEachOther()
    {
        TraceReading reading = Read("Points;3\n" + Head + "30;-80\n31;-81\n32;-82\n30;-90\n31;-91\n32;-92\n");
        Assert.Equal(2, reading.Traces.Length);
        Assert.DoesNotContain(reading.Assumptions, a => a.StartsWith("the file states 3 points", StringComparison.Ordinal));
    }

    [Fact]
    public void SectionsMayBePartedBySemicolons()
    {
        Trace trace = Assert.Single(Read("[Trace]\nTrace 1;;dBm;\nXStart;30000000;Hz\n-80,5;30000000\n-81,5;31000000\n").Traces);
        Assert.Equal([-80.5, -81.5], trace.Levels.ToArray());
    }

    private TraceReading AssertOne(string text)
    {
        TraceReading reading = Read(text);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal(Hertz, trace.Axis.Hertz.ToArray());
        Assert.Equal(Levels, trace.Levels.ToArray());
        Assert.Equal(LevelUnit.DecibelMilliwatts, trace.Unit);
        return reading;
    }

    private TraceReading Read(string text, TraceReadOptions? options = null) =>
        _folder.With("t.csv", text).Trace("t.csv", options);
}
