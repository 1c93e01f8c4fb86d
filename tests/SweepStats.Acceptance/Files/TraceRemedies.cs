using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// Whoever does what a message about a trace file says must not end in another reading that is wrong and silent.
/// </summary>
public sealed class TraceRemedies : IDisposable
{
    private const string Header = "frequency_hz,level_dbm\n";

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void AFileOfPhasesIsToBeExportedAnew()
    {
        ReadFault fault = Assert.Single(Look("t.csv", "frequency_hz,Phase (deg)\n1000,50\n2000,51\n").Faults);
        Assert.Equal("export the level trace: this file holds 2 'Phase (deg)' and no level", fault.Remedy);
    }

    [Theory]
    [InlineData("Phase (deg)", "Phase (deg)", "a phase")]
    [InlineData("Phase (deg)", "2", "a phase")]
    [InlineData("S21 Imag", "S21 Imag", "the imaginary part of a complex number")]
    [InlineData("Limit (dBm)", "2", "a limit")]
    [InlineData("Margin (dB)", "margin (db)", "a limit")]
    public void WhatIsNoLevelIsNoneThoughItIsNamed(string header, string column, string what)
    {
        string text = $"frequency_hz,{header},level_dbm\n1000,50,-60\n2000,51,-61\n";
        var options = new TraceReadOptions { Columns = [column], LevelUnit = LevelUnit.DecibelMilliwatts };
        ReadFault fault = Assert.Single(_folder.With("t.csv", text).Trace("t.csv", options).Faults);
        Assert.Equal($"column 2 '{header}' is {what}, not a level", fault.Problem);
    }

    [Fact]
    public void ALevelAtAnAngleMayBeNamed() =>
        Assert.Single(Look("t.csv", "frequency_hz,Level angle 30 (dBm)\n1000,-50\n2000,-51\n", "Level angle 30 (dBm)").Traces);

    [Theory]
    [InlineData("1000,-50\n900,-51\n", "export one sweep a file, its frequencies rising or falling throughout")]
    [InlineData("1000,-50\n1000,-51\n", "export again: each frequency may stand once in a trace. If the rows are those of "
        + "several traces, write the number of its sweep into a column of each row")]
    public void NobodyIsToldToSortRows(string rows, string remedy) =>
        Assert.Equal(remedy, Assert.Single(Look("t.csv", Header + rows).Faults).Remedy);

    /// <summary>The two remedies, followed.</summary>
    [Theory]
    [InlineData("frequency_hz,level_dbm\n3000,-50\n2000,-51\n1000,-52\n", 1)]
    [InlineData("frequency_hz,level_dbm,sweep\n1000,-50,a\n1000,-51,b\n2000,-50,a\n2000,-51,b\n", 2)]
    public void WhatTheyAreToldInsteadLeadsOn(string text, int traces)
    {
        TraceReading reading = Look("t.csv", text);
        Assert.Equal((0, traces), (reading.Faults.Length, reading.Traces.Length));
    }

    [Fact]
    public void AHeaderAmidTheRowsStartsASecondTable()
    {
        const string Text = Header + "1000,-50\n2000,-51\n3000,-52\nfrequency_hz,level_dbuv\n4000,57\n5000,58\n";
        ReadFault fault = Assert.Single(Look("t.csv", Text).Faults);
        Assert.Equal("t.csv:5: a second table starts here; keep one table a file", fault.ToString());
    }

    [Fact]
    public void ANumberThatIsAlsoTheNameOfAnotherColumnIsNotGuessed()
    {
        const string Text = "Frequency (Hz),1,2,3\n1000,-50,-60,-70\n2000,-51,-61,-71\n";
        ReadFault fault = Assert.Single(Look("t.csv", Text, "2").Faults);
        Assert.Contains("'2' is the name of column 3 and the number of column 2", fault.Problem, StringComparison.Ordinal);
        Assert.Contains("give the columns other names", fault.Remedy, StringComparison.Ordinal);
        Assert.Single(Look("t.csv", Text, "3").Faults);
        Assert.Equal(-70.0, Assert.Single(Look("t.csv", Text, "4").Traces).Levels[0]);
        Assert.Equal(-50.0, Assert.Single(Look("t.csv", Text, "1").Traces).Levels[0]);
    }

    [Theory]
    [InlineData("1 1 0 1 0 1 0 1 0\n")]
    [InlineData("# furlong S DB R 50\n1 1 0 1 0 1 0 1 0\n")]
    [InlineData("# MHz GHz S DB R 50\n1 1 0 1 0 1 0 1 0\n")]
    public void AnOptionLineIsNotCopiedFromAMessage(string text)
    {
        ReadFault fault = Assert.Single(Look("t.s2p", text).Faults);
        Assert.Equal(
            "export the file again. Or write the option line with the unit (Hz, kHz, MHz, GHz) and the format (DB, MA, RI) of "
                + "the export",
            fault.Remedy);
    }

    [Theory]
    [InlineData("x,level_dbm\n1000,-50\n2000,-51\n")]
    public void ANameOfTheFrequencyIsNotCopiedWithItsUnit(string text) =>
        Assert.Equal(
            "if one of them is, name it as frequency_column under [[files]] in campaign.toml, with its frequency_unit; or name "
                + "it 'Frequency' in the file, with the unit of the export in brackets: Hz, kHz, MHz or GHz",
            Assert.Single(Look("t.csv", text).Faults).Remedy);

    [Fact]
    public void TheOrderOfTwoPortsIsKnownToTheInstrumentOnly()
    {
        const string Text = "[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Number of Frequencies] 1\n[Network Data]\n1 "
            + "1 0 1 0 1 0 1 0\n[End]\n";
        Assert.Equal(
            "export again with [Two-Port Data Order]; only the instrument can say which order it wrote",
            Assert.Single(Look("t.s2p", Text).Faults).Remedy);
    }

    [Fact]
    public void ABlankParameterIsNotReplacedByTheOtherWay()
    {
        const string Text = "# MHz S RI R 50\n1 .1 0 0 0 .01 0 0 0\n2 .1 0 0 0 .01 0 0 0\n";
        Assert.Equal(
            "measure it; name S12 in place of S21 only if the source was at port 2",
            Assert.Single(Look("t.s2p", Text, "S21").Faults).Remedy);
    }

    private TraceReading Look(string file, string text, params string[] columns) =>
        _folder.With(file, text)
            .Trace(file, new TraceReadOptions { Columns = [.. columns], LevelUnit = LevelUnit.DecibelMilliwatts });
}
