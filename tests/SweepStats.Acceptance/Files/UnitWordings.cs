using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>Units in the many wordings of laboratories; every file is invented.</summary>
public sealed class UnitWordings : IDisposable
{
    private const string Rows = "30,47.5\n30.1,46.25\n31,48\n";

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("FREQ UNIT,MHz\nAMPL UNIT,dBuV\n" + Rows)]
    [InlineData("XUnits: MHz\nYUnits: dBuV\n" + Rows)]
    [InlineData("X Unit;MHz\nY Unit;dBµV\nX;Y\n30;47.5\n30.1;46.25\n31;48\n")]
    [InlineData("Einheit X: MHz\nEinheit Y: dBµV\n" + Rows)]
    [InlineData("Frequency Units = MHz\nTrace Unit = dBµV\n" + Rows)]
    [InlineData("Unité fréquence : MHz\nUnité niveau : dBµV\n" + Rows)]
    [InlineData("Unidad de frecuencia: MHz\nUnidad de nivel: dBµV\n" + Rows)]
    [InlineData("Units: MHz, dBµV\n" + Rows)]
    [InlineData("X-Axis: Frequency [MHz]\nY-Axis: Level [dBµV]\n" + Rows)]
    [InlineData("X: Frequency, MHz\nY: Level, dBµV\n" + Rows)]
    [InlineData("Spalte 1: Frequenz in MHz\nSpalte 2: Pegel in dBµV\n" + Rows)]
    [InlineData("# levels in dBµV, frequencies in MHz\n" + Rows)]
    [InlineData("All frequencies are given in MHz, all levels in dBµV.\n\n" + Rows)]
    [InlineData("Alle Frequenzen sind in MHz, die Pegel in dBµV angegeben.\n\n" + Rows)]
    [InlineData("Frequenz/MHz;Pegel / dBµV\n30;47,5\n30,1;46,25\n31;48,0\n")]
    [InlineData("Frequency, MHz\tLevel, dBµV\n30\t47.5\n30.1\t46.25\n31\t48\n")]
    [InlineData("freq_mhz,level_dbuv\n" + Rows)]
    [InlineData("Frequency,Level\n[MHz],[dBµV]\n" + Rows)]
    [InlineData("Frequenz      Pegel\n[MHz]         [dBuV]\n30.0  47.5\n30.1  46.25\n31.0  48\n")]
    [InlineData("Fréquence (MHz);Niveau (dBµV)\n30;47,5\n30,1;46,25\n31;48,0\n")]
    [InlineData("Frecuencia [MHz],Nivel [dBµV]\n" + Rows)]
    [InlineData("Frequenza (MHz),Livello (dBµV)\n" + Rows)]
    [InlineData("Start Frequency: 30 MHZ\nLevel Unit: dBuV\nFrequency,Level\n" + Rows)]
    [InlineData("Startfrequenz;30;MHz\nEinheit Pegel;dBµV\nFrequenz;Pegel\n30;47,5\n30,1;46,25\n31;48,0\n")]
    public void AUnitIsFoundHoweverItIsSaid(string text)
    {
        TraceReading reading = Read(text);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal([30e6, 30.1e6, 31e6], trace.Axis.Hertz.ToArray());
        Assert.Equal([47.5, 46.25, 48], trace.Levels.ToArray());
        Assert.Equal(LevelUnit.DecibelMicrovolts, trace.Unit);
    }

    [Theory]
    [InlineData("freq_mhz,level_dbuv_m\n")]
    [InlineData("Frequenz/MHz,E/(dBµV/m)\n")]
    [InlineData("X: Frequency, MHz\nY: Field, dBµV/m\n")]
    [InlineData("fréquences en MHz, niveaux en dBµV/m\n\n")]
    [InlineData("Units: MHz / dBµV/m\n")]
    public void AFieldStrengthIsOneUnit(string above) =>
        Assert.Equal(LevelUnit.DecibelMicrovoltsPerMeter,
            Assert.Single(
                Read(above.Replace("Units: MHz / dBµV/m", "Units: MHz; dBµV/m", StringComparison.Ordinal) + Rows).Traces).Unit);

    [Fact]
    public void AUnitThatARangeTellsIsSaid() => Assert.Contains(
        "frequencies are in MHz: the file states a start frequency of 1388.8 MHZ, and the rows begin at 1388.8",
        Read("Start Frequency: 1388.8 MHZ\nLevel Unit: dBm\nFrequency,Level\n1388.8,-50\n1389.8,-51\n").Assumptions);

    [Theory]
    [InlineData("Reference level in dBm, start frequency in MHz\n\n")]
    [InlineData("RBW Unit: kHz\nMarker unit: dBm\n")]
    [InlineData("X-Axis: Time [s]\nY-Axis: Bearing [deg]\n")]
    [InlineData("Column 3: Level (dBm)\n")]
    public void UnitsOfOtherThingsAreNotTheAxes(string above) =>
        Assert.StartsWith("the file says neither the unit of frequency nor that of level",
            Assert.Single(Read(above + Rows).Faults).Problem, StringComparison.Ordinal);

    [Fact]
    public void ARemarkOverColumnsThatBothRiseIsRefused()
    {
        ReadFault fault = Assert.Single(Read("Levels in dBµV, frequencies in MHz\n30,40\n31,41\n32,42\n").Faults);
        Assert.Contains("nobody can tell which column is the frequency", fault.Problem, StringComparison.Ordinal);
        Assert.Equal(30e6, Assert.Single(Read("Frequency (MHz),Level (dBµV)\n30,40\n31,41\n32,42\n").Traces).Axis.Hertz[0]);
    }

    [Fact]
    public void AFileThatContradictsItsHeaderIsRefused()
    {
        ReadFault fault = Assert.Single(Read("Level Unit,dBuV\nFrequency [MHz],Level [dBm]\n30,-50\n31,-51\n").Faults);
        Assert.Equal((1, "the file states levels in dBµV and column Level [dBm] is in dBm"), (fault.Line, fault.Problem));
        Assert.Equal(2, Read("Level Unit,dBuV\nFrequency [MHz],A [dBm],B [dBµV]\n30,-50,57\n31,-51,56\n",
            new TraceReadOptions { Columns = ["2"] }).Traces[0].Levels.Length);
    }

    [Theory]
    [InlineData("Scale Unit,dB\nFrequency (MHz),Level (dBm)\n")]
    [InlineData("Y Axis: Log, 10 dB\nFrequency (MHz),Level (dBm)\n")]
    [InlineData("Band: 30 MHz - 1 GHz\nFrequency (MHz),Level im Raum (dBm)\n")]
    public void TheScaleOfAPictureIsNoUnitOfTheRows(string above) =>
        Assert.Equal(LevelUnit.DecibelMilliwatts, Assert.Single(Read(above + "30,-40\n31,-41\n").Traces).Unit);

    [Fact]
    public void ASizeAboveAListIsNotItsUnit() => Assert.StartsWith(
        "the file does not say the unit of level",
        Assert.Single(Read("Start: 30 MHz\nStop: 32 MHz\nPoints: 3\nAntenna height gain 3 dB\n-40\n-41\n-42\n").Faults).Problem,
        StringComparison.Ordinal);

    [Fact]
    public void TablesWithoutNamesHaveTheUnitsAboveThem()
    {
        TraceReading reading =
            Read("Trace A\nUnit,dBm\nFreq Unit,MHz\n30,-40\n31,-41\n32,-39\n\nTrace B\nUnit,dBµV\nFreq "
                + "Unit,MHz\n30,40\n31,41\n32,39\n");
        Assert.Contains("in different units", Assert.Single(reading.Faults).Problem, StringComparison.Ordinal);
        Assert.Equal(LevelUnit.DecibelMicrovolts,
            _folder.Trace("t.csv", new TraceReadOptions { Columns = ["Trace B"] }).Traces[0].Unit);
    }

    [Fact]
    public void ATraceOfATableThatStartsAnewMayBeNamed() => Assert.Equal(
        -60.0,
        Assert.Single(Read("frequency_hz,level_dbm\n1000,-50\n2000,-51\n3000,-52\n\n1000,-60\n2000,-61\n3000,-62\n",
            new TraceReadOptions { Columns = ["level_dbm #2"] }).Traces).Levels[0]);

    [Fact]
    public void ATraceOfSectionsMayBeNamed()
    {
        const string Section = "[Trace]\n{0},,dBm,\nXStart,1000,Hz\nXStop,3000,Hz\n{1},1000\n{1},2000\n-1,3000\n";
        string text = "[Traces]\n" + Section.Replace("{0}", "north", StringComparison.Ordinal)
            .Replace("{1}", "-50", StringComparison.Ordinal)
            + Section.Replace("{0}", "south", StringComparison.Ordinal).Replace("{1}", "-60", StringComparison.Ordinal);
        Assert.Equal(-60.0, Assert.Single(Read(text, new TraceReadOptions { Columns = ["south"] }).Traces).Levels[0]);
    }

    [Fact]
    public void AnAxisCalledXNeedsAUnitInTheFile() => Assert.StartsWith(
        "no column is named as the frequency among 1 'X', 2 'Level (dBm)'",
        Assert.Single(Read("X,Level (dBm)\n30,-50\n31,-51\n",
            new TraceReadOptions { FrequencyUnit = FrequencyUnit.Megahertz }).Faults).Problem, StringComparison.Ordinal);

    [Fact]
    public void AHeaderStaysWhereStartAndStopStandAboveIt()
    {
        Trace trace = Assert.Single(Read("Start,30 MHz\nStop,31 MHz\nX,Trace A (dBm)\n30,-50\n30.5,-49\n31,-51\n").Traces);
        Assert.Equal(("Trace A (dBm)", LevelUnit.DecibelMilliwatts), (trace.Column, trace.Unit));
    }

    private TraceReading Read(string text, TraceReadOptions? options = null) =>
        _folder.With("t.csv", text).Trace("t.csv", options);
}
