using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>Layouts as laboratories export them; every sample is invented.</summary>
public sealed class LayoutFiles : IDisposable
{
    private static readonly double[] Hertz = [30e6, 30.1e6, 31e6];
    private static readonly double[] Levels = [-87.43, -86.5, -1.25];

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("30000000Hz,-87.43dBm\n30100000Hz,-86.5dBm\n31000000Hz,-1.25dBm\n")]
    [InlineData("30.0MHz,-8.743e+01dBm\n30100kHz,-86.5dBm\n0.031GHz,-1.25dBm\n")]
    [InlineData("30 MHz;-87,43 dBm\n30,1 MHz;-86,5 dBm\n31 MHz;-1,25 dBm\n")]
    [InlineData("30,MHz,-87.43, dBm,\n30.1,MHz,-86.5, dBm,\n31,MHz,-1.25, dBm,\n")]
    [InlineData("30.0 MHz -87.43 dBm\n30.1 MHz -86.5 dBm\n31.0 MHz -1.25 dBm\n")]
    [InlineData("-87.43dBm,30MHz\n-86.5dBm,30.1MHz\n-1.25dBm,31MHz\n")]
    [InlineData("\"Frequency (MHz)\",\"Level (dBm)\"\n\"30\",\"-87,43\"\n\"30,1\",\"-86,5\"\n\"31\",\"-1,25\"\n")]
    [InlineData("f/MHz  L/dBm\n30,0   -87,43\n30,1   -86,5\n31,0   -1,25\n")]
    [InlineData("sep=;\nFrequency (MHz);Level (dBm)\n30;-87.43\n30.1;-86.5\n31;-1.25\n")]
    [InlineData("! DATA UNIT dBm\n! X UNIT Hz\nBEGIN\n30000000,-87.43,0,0,0\n30100000,-86.5,0,0,0\n31000000,-1.25,0,0,0\nEND\n")]
    [InlineData("Start Freq,3e7,Hz,Stop Freq,3.1e7,Hz\nTrace Data:(Unit:dBm)\nFrequency(Hz),Trace1(VIEW),\n30000000,-87.43,\n"
        + "30100000,-86.5,\n31000000,-1.25,\n")]
    [InlineData("Level Unit,dBm\nStart Frequency,30 MHz\nStop Frequency,31 MHz\nPoints,3\n-87.43,30\n-86.5,30.1\n-1.25,31\n")]
    [InlineData("Level Unit,dBm\nFrequency Unit,MHz\n1,30,-87.43\n2,30.1,-86.5\n3,31,-1.25\n")]
    [InlineData("[Setup]\nReference Level,0,dBm\n\n[Traces]\n[Trace]\nTrace 1,,dBm,\nNumberPoints,3\nXStart,30000000,Hz\nXStop,"
        + "31000000,Hz\n-87.43,30000000\n-86.5,30100000\n-1.25,31000000\n")]
    [InlineData("% start: 30MHz  stop: 31MHz  points: 3\n% FREQ   S21\n% MHz   Level (dBm)   Ph.\n30 -87.43 12\n30.1 -86.5 "
        + "13\n31 -1.25 14\n")]
    [InlineData("Frequency (MHz),30,30.1,31\nLevel (dBm),-87.43,-86.5,-1.25\n")]
    [InlineData("Sweep,Date,Level (dBm),30MHz,30.1MHz,31MHz\n1,2026-03-05,x,-87.43,-86.5,-1.25\n")]
    public void OneTraceIsReadAlikeHoweverItIsLaidOut(string text)
    {
        TraceReading reading = Read(text);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal(Hertz, trace.Axis.Hertz.ToArray());
        Assert.Equal(Levels, trace.Levels.ToArray());
        Assert.Equal(LevelUnit.DecibelMilliwatts, trace.Unit);
    }

    [Fact]
    public void ARowIsASweepWhereFrequenciesHeadTheColumns()
    {
        TraceReading reading = Read(
            "Unit: dBm\nSweep,Date,Time,ms,88.0,88.2,88.4\n1,2026-03-05,14:30:00,.282,-50,-51,-52\n2,2026-03-05,14:30:02,.281,"
                + "-50.5,-51.5,-52.5\n",
            new TraceReadOptions { FrequencyUnit = FrequencyUnit.Megahertz });
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(["Sweep 1", "Sweep 2"], reading.Traces.Select(t => t.Column));
        Assert.Equal([88.0e6, 88.2e6, 88.4e6], reading.Traces[1].Axis.Hertz.ToArray());
        Assert.Equal([-50.5, -51.5, -52.5], reading.Traces[1].Levels.ToArray());
        Assert.Equal(new DateTimeOffset(2026, 3, 5, 14, 30, 2, TimeSpan.Zero), reading.Traces[1].TakenAt);
        Assert.Contains("the columns are headed by frequencies: each row was read as a sweep", reading.Assumptions);
    }

    [Fact]
    public void NumberedTracesOverAFrequencyColumnAreNoRowsOfSweeps()
    {
        TraceReading reading = Read("Frequency (Hz),1,2,3\n1000,-50,-51,-52\n2000,-53,-54,-55\n",
            new TraceReadOptions { LevelUnit = LevelUnit.DecibelMilliwatts, Columns = ["1"] });
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal([1000.0, 2000.0], reading.Traces[0].Axis.Hertz.ToArray());
    }

    [Fact]
    public void SegmentsAreJoinedAndTheRepeatedBinIsReadOnce()
    {
        TraceReading reading = Read(
            "2026-03-05, 14:30:00, 1000, 1300, 100, 8, -1, -2, -3, -4\n2026-03-05, 14:30:00, 1300, 1600, 100, 8, -4, -5, -6, -7\n"
            + "2026-03-05, 14:31:00, 1000, 1300, 100, 8, -11, -12, -13, -14\n2026-03-05, 14:31:00, 1300, 1600, 100, 8, -14, "
            + "-15, -16, -17\n",
            new TraceReadOptions { LevelUnit = LevelUnit.Decibels });
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(2, reading.Traces.Length);
        Assert.All(reading.Traces, t => Assert.Equal([1000.0, 1100, 1200, 1300, 1400, 1500, 1600], t.Axis.Hertz.ToArray()));
        Assert.Equal([-11.0, -12, -13, -14, -15, -16, -17], reading.Traces[1].Levels.ToArray());
        Assert.Equal(new DateTimeOffset(2026, 3, 5, 14, 31, 0, TimeSpan.Zero), reading.Traces[1].TakenAt);
    }

    [Fact]
    public void TablesBelowEachOtherAreTracesAndAPhaseIsNone()
    {
        const string Table = "Trace A\nFrequency (Hz),Level (dBm)\n1000,-50\n2000,-51\n3000,-52\n\nTrace B\nFrequency "
            + "(Hz),Level (dBm)\n1000,-60\n2000,-61\n3000,-62\n\nTrace C\nFrequency (Hz),Phase "
            + "(deg)\n1000,10\n2000,20\n3000,30\n";
        TraceReading reading = Read(Table);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(["Trace A: Level (dBm)", "Trace B: Level (dBm)"], reading.Traces.Select(t => t.Column));
        Assert.Equal([-60.0, -61, -62], reading.Traces[1].Levels.ToArray());
        Assert.Contains(reading.Assumptions,
            a => a.StartsWith("the table from line 15 on holds no level", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("2")]
    [InlineData("Trace B")]
    [InlineData("Trace B: Level (dBm)")]
    public void ATableBelowAnotherIsPickedByNameOrNumber(string column)
    {
        const string Tables = "Trace A\nFrequency (Hz),Level (dBm)\n1000,-50\n2000,-51\n3000,-52\n\nTrace B\nFrequency "
            + "(Hz),Level (dBm)\n1000,-60\n2000,-61\n3000,-62\n";
        Trace trace = Assert.Single(Read(Tables, new TraceReadOptions { Columns = [column] }).Traces);
        Assert.Equal(("Trace B: Level (dBm)", -60.0), (trace.Column, trace.Levels[0]));
        _folder.With("all.csv", Tables)
            .With("sweeps.csv", $"file,role,specimen,column\nall.csv,reference,,1\nall.csv,covered,A,{column}\n");
        Assert.Equal([-50.0, -60.0], _folder.Read().Campaign!.Sweeps.Select(s => s.Levels[0]));
    }

    [Theory]
    [InlineData("3", "there is no trace '3'")]
    [InlineData("Level (dBm)", "there is no trace 'Level (dBm)'")]
    public void ATableThatIsNotThereIsNamedWithThoseThatAre(string column, string problem)
    {
        const string Tables = "Trace A\nFrequency (Hz),Level (dBm)\n1000,-50\n2000,-51\n3000,-52\n\nTrace B\nFrequency "
            + "(Hz),Level (dBm)\n1000,-60\n2000,-61\n3000,-62\n";
        ReadFault fault = Assert.Single(Read(Tables, new TraceReadOptions { Columns = [column] }).Faults);
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.Contains("1 'Trace A: Level (dBm)', 2 'Trace B: Level (dBm)'", fault.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void ASweepOfSegmentsIsPickedByItsNumber() =>
        Assert.Equal(-11.0, Assert.Single(Read(
            "2026-03-05, 14:30:00, 1000, 1300, 100, 8, -1, -2, -3\n2026-03-05, 14:31:00, 1000, 1300, 100, 8, -11, -12, -13\n",
            new TraceReadOptions { LevelUnit = LevelUnit.Decibels, Columns = ["2"] }).Traces).Levels[0]);

    [Fact]
    public void ATableThatStartsAnewIsSeveralSweeps()
    {
        TraceReading reading = Read("frequency_hz,level_dbm\n1000,-50\n2000,-51\n3000,-52\n\n1000,-60\n2000,-61\n3000,-62\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(["level_dbm #1", "level_dbm #2"], reading.Traces.Select(t => t.Column));
        Assert.Equal([-60.0, -61, -62], reading.Traces[1].Levels.ToArray());
    }

    [Theory]
    [InlineData("Freq(Hz),\"A,1\"(REAL),\"A,1\"(IMAG)\n1000,3,4\n2000,6,8\n", "A,1")]
    [InlineData("frequency_hz,Re,Im\n1000,3,4\n2000,6,8\n", "2")]
    [InlineData("Freq (Hz)\tS21 Re\tS21 Im\tS21 Phase\n1000\t3\t4\t53\n2000\t6\t8\t53\n", "S21")]
    [InlineData("frequency_hz,s21_re,s21_im\n1000,3,4\n2000,6,8\n", "s21")]
    [InlineData("Freq [Hz],S21_Real,S21_Imag\n1000,3,4\n2000,6,8\n", "S21")]
    [InlineData("frequency_hz,re_s21,im_s21\n1000,3,4\n2000,6,8\n", "s21")]
    [InlineData("frequency_hz,S12.real,S12.imag\n1000,3,4\n2000,6,8\n", "S12")]
    [InlineData("frequency_hz;S21Re;S21Im\n1000;3;4\n2000;6;8\n", "S21")]
    public void RealAndImaginaryPartsMakeALevelInDecibels(string text, string name)
    {
        // |3 + 4i| = 5 and |6 + 8i| = 10, by hand.
        Trace trace = Assert.Single(Read(text).Traces);
        Assert.Equal((name, LevelUnit.Decibels), (trace.Column, trace.Unit));
        Assert.Equal([20 * Math.Log10(5), 20.0], trace.Levels.ToArray());
    }

    [Fact]
    public void OfPairsOfAllParametersTheTransmissionIsRead()
    {
        TraceReading reading = Read("frequency_hz,s11_re,s11_im,s21_re,s21_im\n1000,1,1,3,4\n2000,1,1,6,8\n");
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal(("S21", 20 * Math.Log10(5)), (trace.Quantity, trace.Levels[0]));
        Assert.Equal(53.130102354155979, trace.Phases[0], 9);
    }

    [Fact]
    public void APairBesideItsLogMagnitudeIsThePhaseAndNoSecondTrace()
    {
        Trace trace = Assert.Single(Read("frequency_hz,s21_db,s21_re,s21_im\n1000,-50,3,4\n2000,-51,6,8\n").Traces);
        Assert.Equal(-50, trace.Levels[0]);
        Assert.Equal(53.130102354155979, trace.Phases[0], 9);
    }

    [Fact]
    public void AMagnitudeWithAPhaseBesideItIsLinear()
    {
        TraceReading reading = Read("Freq (Hz),S21 Mag,S21 u(Mag),S21 Phase (°)\n1000,0.5,0.01,10\n2000,0.25,0.01,20\n");
        Assert.Equal(LevelUnit.LinearMagnitude, Assert.Single(reading.Traces).Unit);
    }

    [Theory]
    [InlineData("Level dB(µV)", LevelUnit.DecibelMicrovolts)]
    [InlineData("Level (dB(µV))", LevelUnit.DecibelMicrovolts)]
    [InlineData("Level [dB(1 uV)]", LevelUnit.DecibelMicrovolts)]
    [InlineData("Level (dB µV)", LevelUnit.DecibelMicrovolts)]
    [InlineData("E dB(µV/m)", LevelUnit.DecibelMicrovoltsPerMeter)]
    [InlineData("Level (dBµV/m)", LevelUnit.DecibelMicrovoltsPerMeter)]
    [InlineData("Power dB(mW)", LevelUnit.DecibelMilliwatts)]
    [InlineData("Voltage (µV)", LevelUnit.Microvolts)]
    public void AReferenceInBracketsMakesNoVoltage(string name, LevelUnit unit) =>
        Assert.Equal(unit, Assert.Single(Read($"Frequency (Hz);{name}\n1000;50\n2000;51\n").Traces).Unit);

    [Theory]
    [InlineData("Frequency (Hz),Max (dBm),Min (dBm),Avg (dBm)\n1000,-50,-60,-55\n2000,-51,-61,-56\n")]
    [InlineData("Frequency (MHz),QP (dBµV),AV (dBµV)\n30,50,40\n40,51,41\n")]
    [InlineData("Frequency (Hz),Level (dBm),Max Hold (dBm)\n1000,-50,-45\n2000,-51,-46\n")]
    public void TheHighestAndTheMeanOfSweepsAreNoRepeats(string text)
    {
        Assert.Contains("no repeats of each other", Assert.Single(Read(text).Faults).Problem, StringComparison.Ordinal);
        Assert.Single(_folder.Trace("t.csv", new TraceReadOptions { Columns = ["2"] }).Traces);
    }

    [Theory]
    [InlineData("Frequency (MHz),A (dBm),Frequency (MHz),B (dBm)\n30,-50,30,-51\n40,-51,40,-52\n50,-52,50,-53\n")]
    [InlineData("Frequency (MHz),run 1,run 2\nUnit,dBm\n30,-50,-51\n40,-51,-52\n50,-52,-53\n")]
    [InlineData("Unit,dBm\nStart,30,MHz\nStop,50,MHz\nTrace Names,A,B\nAttenuation "
        + "Auto,On,yes\n30,-50,-51\n40,-51,-52\n50,-52,-53\n")]
    [InlineData("Frequency (MHz),A (dBm),B (dBm),Cable loss (dB)\n30,\u221250,\u221251,1\n40,\u221251,\u221252,1\n50,\u221252,"
        + "\u221253,1\n")]
    public void TwoTracesAreReadAlikeHoweverTheyAreLaidOut(string text)
    {
        TraceReading reading = Read(text);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal([[-50.0, -51, -52], [-51.0, -52, -53]], reading.Traces.Select(t => t.Levels.ToArray()));
        Assert.All(reading.Traces, t => Assert.Equal([30e6, 40e6, 50e6], t.Axis.Hertz.ToArray()));
    }

    [Fact]
    public void TheSameTraceInTwoUnitsIsNoRepeat() =>
        Assert.Contains("in different units: Level (dBm) in dBm, Level (dBµV) in dBµV",
            Assert.Single(Read("Frequency (MHz),Level (dBm),Level (dBµV)\n30,-50,57\n40,-51,56\n").Faults).Problem,
            StringComparison.Ordinal);

    [Fact]
    public void ARowTakesItsNameFromItsWords()
    {
        TraceReading reading = Read("Name,Unit,30 MHz,40 MHz,50 MHz\nnorth,dBm,-90,-91,-92\nsouth,dBm,-80,-81,-82\n");
        Assert.Equal(["north", "south"], reading.Traces.Select(t => t.Column));
        Assert.Equal(-80.0, reading.Traces[1].Levels[0]);
    }

    [Fact]
    public void LinearMagnitudesComeIntoACampaignInDecibels()
    {
        _folder.With("reference/r.csv", "Freq (Hz),S21 Mag,S21 Phase (°)\n1000,1,10\n2000,1,20\n")
            .With("covered/A/A1/c.csv", "Freq (Hz),S21 Mag,S21 Phase (°)\n1000,0.1,10\n2000,0.01,20\n");
        // A tenth of the voltage is −20 dB, by hand.
        Assert.Equal("", string.Join('\n', _folder.Read().Faults));
        Assert.Equal([-20.0, -40.0], _folder.Read().Campaign!.Sweeps.Single(s => s.Specimen is not null).Levels.ToArray());
    }

    [Theory]
    [InlineData("Frequency (Hz),S11 (dB),S21 (dB),S12 (dB)\n1000,-3,-50,-50\n2000,-3,-51,-51\n")]
    [InlineData("! Stimulus(Hz)   S11(dB)   S21(dB)   S12(dB)\n1000 -3 -50 -50\n2000 -3 -51 -51\n")]
    public void OfSParametersACampaignReadsTheTransmission(string text)
    {
        TraceReading reading = Read(text);
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal(("S21", -50.0), (trace.Quantity, trace.Levels[0]));
        Assert.Equal("S12", _folder.Trace("t.csv", new TraceReadOptions { Columns = ["S12"] }).Traces[0].Quantity);
    }

    [Theory]
    [InlineData("-2147.48")]
    [InlineData("-893.01029995664")]
    [InlineData("-200")]
    [InlineData("0")]
    public void ATraceThatWasNeverSweptIsLeftOutAndNamed(string filled)
    {
        string rows = string.Concat(Enumerable.Range(1, 6).Select(i => FormattableString.Invariant($"{i}000,-5{i},{filled}\n")));
        TraceReading reading = Read("Frequency (Hz),Trace 1 (dBm),Trace 2 (dBm)\n" + rows);
        Assert.Equal("Trace 1 (dBm)", Assert.Single(reading.Traces).Column);
        Assert.Contains(reading.Assumptions,
            a => a.StartsWith("trace Trace 2 (dBm) was left out: every reading is " + filled, StringComparison.Ordinal));

        ReadFault alone =
            Assert.Single(Read("Frequency (Hz),Trace 2 (dBm)\n"
                + string.Concat(Enumerable.Range(1, 6).Select(i => $"{i}000,{filled}\n"))).Faults);
        Assert.Contains("is blank", alone.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void APlaceholderAmongLevelsIsRefusedWithItsLine()
    {
        ReadFault fault = Assert.Single(Read("frequency_hz,level_dbm\n1000,-50\n2000,-2147.48\n3000,-52\n").Faults);
        Assert.Equal(3, fault.Line);
        Assert.Contains("which no receiver reads", fault.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Frequency (MHz),Antenna Factor (dB/m)\n30,13\n300,15\n")]
    [InlineData("Frequency (MHz),Cable loss (dB)\n30,0.1\n300,0.5\n")]
    [InlineData("Frequency (MHz);Kabeldämpfung (dB)\n30;0.1\n300;0.5\n")]
    public void ACorrectionTableIsNoSweep(string text)
    {
        Assert.Contains("is a correction", Assert.Single(Read(text).Faults).Problem, StringComparison.Ordinal);
        Assert.Equal("correction",
            Assert.Single(
                TraceFile.Look(System.IO.Path.Combine(_folder.Path, "t.csv"), "t.csv", new TraceReadOptions()).Traces).Quantity);
    }

    private TraceReading Read(string text, TraceReadOptions? options = null) =>
        _folder.With("t.csv", text).Trace("t.csv", options);
}
