using System.Collections.Immutable;
using System.Text;
using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>Bad trace files, each with its line, what is wrong and what to do.</summary>
public sealed class BadTraceFiles : IDisposable
{
    private const string Good = "frequency_hz,level_dbm\n1000,-50\n2000,-51\n3000,-52\n";

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    /// <summary>Unit of frequency, columns and unit of level: who mends one must not be told of the next only then.</summary>
    [Fact]
    public void AFileWithoutAnyNamesIsToldAllThatItLacks()
    {
        ReadFault[] faults = [.. _folder.With("t.csv", "1000,-50,-60\n2000,-51,-61\n").Trace("t.csv").Faults];
        Assert.Equal(2, faults.Length);
        Assert.Contains("does not say the unit of frequency", faults[0].Problem, StringComparison.Ordinal);
        Assert.Contains("frequency_unit", faults[0].Remedy, StringComparison.Ordinal);
        Assert.Contains("do not tell whether these columns are levels: 2, 3", faults[1].Problem, StringComparison.Ordinal);
        Assert.Contains("level_unit", faults[1].Remedy, StringComparison.Ordinal);
    }

    // −71.25 dBm cut to −71 or −7 is a level like any other where a row holds a whole sweep.
    [Theory]
    [InlineData("Start Freq,30 MHz,Stop Freq,70 MHz,Points,5\nLevel Unit,dBm\nTrace A,-60.50,-61.00,-62.25,-60.75,-71.25")]
    [InlineData("Start Freq;30;MHz\nStop Freq;70;MHz\nPoints;5\nUnit;dBm\nTrace A;-60,50;-61,00;-62,25;-60,75;-71,25")]
    [InlineData("Sweep,Level (dBm),30MHz,40MHz,50MHz,60MHz,70MHz\n1,x,-60.50,-61.00,-62.25,-60.75,-71.25")]
    [InlineData("2026-03-05, 10:00:00, 30000000, 34000000, 1000000, 20, -60.50, -61.00, -62.25, -60.75, -71.25")]
    public void ARowThatIsCutAmidItsLastLevelIsRefused(string whole)
    {
        var stated = new TraceReadOptions { LevelUnit = LevelUnit.DecibelMilliwatts };
        Assert.Equal("", string.Join('\n', _folder.With("t.csv", whole).Trace("t.csv", stated).Faults));
        foreach (int missing in new[] { 1, 3, 4 })
        {
            ReadFault fault = Assert.Single(_folder.With("t.csv", whole[..^missing]).Trace("t.csv", stated).Faults);
            Assert.Contains("may be cut off", fault.Problem, StringComparison.Ordinal);
            Assert.Equal("", string.Join('\n', _folder.With("t.csv", whole[..^missing] + "\n").Trace("t.csv", stated).Faults));
        }
    }

    // An export that leaves out zeros, and one that ends each row with a mark.
    [Theory]
    [InlineData("-60.25,-61.13,-62.5,-60.75,-62.25,-61.75,-71.5")]
    [InlineData("-60.25,-61.13,-62.55,-60.75,-62.25,-61.75,-71.25,")]
    public void AWholeRowIsNoCutOne(string levels) => Assert.Equal("", string.Join('\n', _folder
        .With("t.csv", "2026-03-05,10:00:00,30000000,36000000,1000000,20," + levels)
        .Trace("t.csv", new TraceReadOptions { LevelUnit = LevelUnit.DecibelMilliwatts }).Faults));

    [Theory]
    [InlineData("f,level\n30,-50\n40,-51\n")]
    [InlineData("30,-50\n40,-51\n")]
    public void BothUnitsAreAskedForInOneFault(string text)
    {
        ReadFault fault = Assert.Single(_folder.With("t.csv", text).Trace("t.csv").Faults);
        Assert.Equal("the file says neither the unit of frequency nor that of level", fault.Problem);
        Assert.Contains("frequency_unit (Hz, kHz, MHz or GHz) and level_unit (dBm,", fault.Remedy, StringComparison.Ordinal);
        Assert.Empty(_folder.Trace("t.csv",
            new TraceReadOptions { FrequencyUnit = FrequencyUnit.Megahertz, LevelUnit = LevelUnit.DecibelMilliwatts }).Faults);
    }

    [Theory]
    [InlineData("", 0, "empty", "export the sweep again")]
    [InlineData("hello\nworld\n", 0, "no table of at least two rows of numbers", "delimited text")]
    [InlineData("frequency_hz,level_dbm\n", 0, "no table of at least two rows of numbers", "delimited text")]
    [InlineData("1000,-50\n", 1, "one row of numbers only", "a sweep needs at least two")]
    [InlineData("A,B\n1000,-50\n", 2, "one row of numbers only", "a sweep needs at least two")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\nend\n2000,-51\n", 2, "one row of numbers only", "a sweep needs at least two")]
    [InlineData("f_MHz;level_dBm\n30;-50.000.000\n31;-51.000.000\n", 2, "'-50.000.000' has thousands separators",
        "without thousands separators")]
    [InlineData("f_Hz;level_dBm\n998.000;-50\n999.000;-51\n1.000.000;-52\n1000000;-53\n", 4,
        "'1.000.000' has thousands separators", "correct the row")]
    [InlineData("f_Hz,level_dBm\n2'000,-50\n1'000,-51\n3'000,-51\n", 2, "'2'000' has thousands separators",
        "without thousands separators")]
    [InlineData("frequency_hz,level_dbm\n\"1000,-50\n", 2, "a quote is opened and not closed", "stray quote")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n2000,-51\n\"3000,-52\n", 4, "a quote is opened and not closed",
        "correct the row")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n2000,-51\n3000,\"-52\n4000,-53\n5000,-54\n", 4,
        "a quote is opened and not closed", "correct the row")]
    [InlineData("frequency_hz,level_dbm\n1000,-50.5\n2000,-51.5\n3000,\"-52,5\"\n", 4,
        "'-52,5' has a decimal comma, and this file is read with decimal points", "correct the row")]
    [InlineData("f_MHz;level_dbm\n30.5;-50\n31.5;-51\n32,5;-52\n", 4, "'32,5' has a decimal comma", "correct the row")]
    [InlineData("f_MHz;level_dbm\n30,5;-50\n31,5;-51\n32,5;-52.5\n", 4,
        "'-52.5' has a decimal point, and this file is read with decimal commas", "correct the row")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n2000,-51\n3000,-52,5\n", 4, "the number of columns is 3 here",
        "a decimal comma would split a number")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n900,-51\n", 3, "the frequency falls from 1000 Hz to 900 Hz",
        "one sweep a file")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n1000,-51\n", 3, "the frequency 1000 Hz is repeated", "may stand once")]
    [InlineData("frequency_hz,level_dbm\n-1000,-50\n1000,-51\n", 2, "-1000 Hz is not a frequency", "0 Hz or more")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n2000,NaN\n3000,-51\n4000,-52\n", 3, "'NaN' is not a finite number",
        "correct the row")]
    [InlineData("frequency_hz,level_dbm\n1000,NaN\n2000,-50\n3000,-51\n", 2, "'NaN' is not a finite number", "correct the row")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n2000,-51\n3000,Infinity\n", 4, "'Infinity' is not a finite number",
        "correct the row")]
    [InlineData("30MHz,-50dBm\n31MHz,-51dBm\n32MHz,NaN\n", 3, "'NaN' is not a finite number", "correct the row")]
    [InlineData("30MHz,-50dBm\n31MHz,-51dBm\n32MHz\n", 3, "the number of columns is 1 here and 2", "complete the row")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n2000,NaN\n3000,-52\n", 3, "'NaN' is not a finite number", "correct the row")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n2000,-51\n3000,1e400\n", 4, "'1e400' is not a finite number",
        "correct the row")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n2000,-51\n3000,\n", 4, "the number of columns is 1 here and 2",
        "complete the row")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n2000,-51\n3000,-52,7\n4000,-53\n", 4, "the number of columns is 3 here",
        "take out what the row has too many")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n2000,-51\nbreak\n3000,-52\n", 4, "interrupts the rows of numbers",
        "remove the line")]
    [InlineData("Trace A\nfrequency_hz,level_dbm\n1000,-50\n2000,-51\n3000,-52\n\nTrace "
        + "B\nfrequency_hz,level_dbm\n1000,-50\n2000,-51\n", 9, "a second table of numbers", "one table a file")]
    [InlineData("frequency_hz,level_w\n1000,1e-9\n2000,0\n", 3, "0 W, which has no level in dB", "export the trace in dB")]
    [InlineData("frequency_hz,level_mv\n1000,-1\n2000,2\n", 2, "-1 mV, which has no level in dB", "export the trace in dB")]
    [InlineData("frequency,level_dbm\n1000,-50\n2000,-51\n", 0, "does not say the unit of frequency", "frequency_unit")]
    [InlineData("frequency_hz,level\n1000,-50\n2000,-51\n", 0, "does not say the unit of level of column level", "level_unit")]
    [InlineData("Frequency (THz),level_dbm\n1,-50\n2,-51\n", 0, "'THz' is not a unit of frequency", "frequency_hz")]
    [InlineData("frequency_hz,Level (dBµA/m)\n1000,50\n2000,51\n", 0, "'dBµA/m', which is not a unit of level", "dBm, dBµV")]
    [InlineData("frequency_hz,Phase (deg)\n1000,50\n2000,51\n", 0, "no column holds a level", "2 'Phase (deg)'")]
    [InlineData("frequency_hz,Imag,Phase\n1000,0.1,0.2\n2000,0.1,0.2\n", 0, "no column holds a level",
        "2 'Imag', 3 'Phase' and no level")]
    [InlineData("frequency_hz,A,B\n1000,-50,-60\n2000,-51,-61\n", 0, "do not tell whether these columns are levels: 2 'A', 3 'B'",
        "column to read in sweeps.csv")]
    [InlineData("Start (Hz),Frequency (Hz),Stop (Hz),Level (dBm)\n1,2,3,-50\n2,3,4,-51\n", 0,
        "more than one column looks like a frequency", "one frequency column")]
    [InlineData("x,level_dbm\n1000,-50\n2000,-51\n", 0, "no column is named as the frequency", "unit of the export")]
    [InlineData("f_MHz,level_dbm\n30,5,-50,2\n31,5,-51,3\n", 1, "the header names 2 columns and the rows have 4",
        "decimal points")]
    [InlineData("f_MHz;level_V\n30,000;1,234\n31,000;1,345\n", 2, "may be decimal or part thousands", "decimal points")]
    [InlineData("f_MHz;level_dBm\n2.000,5;-50\n1.000,5;-51\n3.000,5;-51\n", 2, "'2.000,5' has thousands separators",
        "without thousands separators")]
    public void ADelimitedFileIsRefusedForItsReason(string text, int line, string problem, string remedy) =>
    AssertRefused("t.csv", text, line, problem, remedy);

    [Theory]
    [InlineData("t.s2p", "100 -1 0 -20 5 -3 0 -4 0\n", 1, "the option line is missing", "Or write the option line")]
    [InlineData("t.s2p", "! nothing\n", 0, "the option line is missing", "Or write the option line")]
    [InlineData("t.s2p", "# MHz Z RI R 50\n1 1 0 1 0 1 0 1 0\n", 1, "holds Z parameters", "export S parameters")]
    [InlineData("t.s2p", "# MHz Y RI R 50\n1 1 0 1 0 1 0 1 0\n", 1, "holds Y parameters", "export S parameters")]
    [InlineData("t.s2p", "# furlong S DB R 50\n1 1 0 1 0 1 0 1 0\n", 1, "'furlong'", "Or write the option line")]
    [InlineData("t.s2p", "[Version] 2.0\n# MHz S DB R 50\n", 0, "the keyword [Network Data] is missing", "incomplete")]
    [InlineData("t.s2p", "# MHz S DB R 50\n", 0, "no data rows", "export the file again")]
    [InlineData("t.s2p", "# MHz S DB R 50\n1 1 0 1 0 1 0 1 0\n2 1 0 1 0\n", 3, "the last point lacks 4 of 9 numbers", "cut off")]
    [InlineData("t.s2p", "# MHz S DB R 50\n1 1 0 1 0 1 0 1 0 9 9\n", 2, "more than the 9 numbers", "number of ports")]
    [InlineData("t.s2p", "# MHz S DB R 50\n2 1 0 1 0 1 0 1 0\n1 1 0 1 0 1 0 1 0\n", 3, "does not rise above 2000000 Hz",
        "frequencies must rise")]
    [InlineData("t.s2p", "# MHz S DB R 50\n1 1 0 1,5 0 1 0 1 0\n", 2, "'1,5' is not a finite number",
        "decimal points, not commas")]
    [InlineData("t.s2p", "# MHz S DB R 50\n1 1 0 nan 0 1 0 1 0\n", 2, "'nan' is not a finite number", "correct the row")]
    [InlineData("t.s2p", "# MHz S RI R 50\n1 1 0 .1 0 1 0 1 0\n2 1 0 0 0 1 0 1 0\n", 3, "the magnitude of S21 is not positive",
        "measure it")]
    [InlineData("t.s1p", "# MHz S DB R 50\n1 1 0\n", 0, "holds a reflection", "S11")]
    public void ATouchstoneFileIsRefusedForItsReason(string name, string text, int line, string problem, string remedy) =>
    AssertRefused(name, text, line, problem, remedy);

    [Theory]
    [InlineData("9", "there is no column '9'")]
    [InlineData("Pegel", "there is no column 'Pegel'")]
    [InlineData("frequency_hz", "the frequency column is not a level")]
    [InlineData("0", "there is no column '0'")]
    public void AColumnThatIsNotThereIsNamedWithThoseThatAre(string column, string problem)
    {
        ReadFault fault =
            Assert.Single(_folder.With("t.csv", Good).Trace("t.csv", new TraceReadOptions { Columns = [column] }).Faults);
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.Contains("1 'frequency_hz', 2 'level_dbm'", fault.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void ABinaryFileIsCalledWhatItIs()
    {
        // The first bytes of a ZIP archive, which a spreadsheet is, from memory; the rest is noise as compression makes it.
        byte[] noise = new byte[3000];
        new Random(3).NextBytes(noise);
        _folder.With("t.csv", [0x50, 0x4B, 0x03, 0x04, 0x14, 0x00, 0x06, 0x00, .. noise]);
        Assert.StartsWith("t.csv: the file is not text; export the trace as delimited text",
            Assert.Single(_folder.Trace("t.csv").Faults).ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5, 5)]
    [InlineData(6, 6)]
    [InlineData(9, 6)]
    public void FiveBadRowsAreListedAndTheRestIsCounted(int bad, int listed)
    {
        string rows = string.Concat(Enumerable.Range(1, bad)
            .Select(i => FormattableString.Invariant($"{10 + (2 * i)}000,NaN\n{11 + (2 * i)}000,-1\n")));
        ImmutableArray<ReadFault> faults = _folder.With("t.csv", Good + "10000,-1\n" + rows).Trace("t.csv").Faults;
        Assert.Equal(listed, faults.Length);
        Assert.Equal([6, 8, 10, 12, 14], faults.Take(5).Select(f => f.Line!.Value));
        Assert.All(faults.Take(5), f => Assert.Contains("'NaN' is not a finite number", f.Problem, StringComparison.Ordinal));
        Assert.Equal(bad > 5,
            faults.Any(f => f is { Line: 16 }
                && f.Problem.StartsWith(FormattableString.Invariant($"and {bad - 5} more bad row"), StringComparison.Ordinal)));
    }

    [Fact]
    public void LevelsWithoutDecibelsAreListedUpToFiveToo()
    {
        string rows = string.Concat(Enumerable.Range(1, 8).Select(i => FormattableString.Invariant($"{i}000,{-(i % 2)}\n")));
        ImmutableArray<ReadFault> faults = _folder.With("t.csv", "frequency_hz,level_w\n" + rows).Trace("t.csv").Faults;
        Assert.Equal([2, 3, 4, 5, 6, 7], faults.Select(f => f.Line!.Value));
        Assert.StartsWith("and 3 more bad rows", faults[5].Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void BadRowsAboveTheLongestTableAreListedToo()
    {
        const string Text = "frequency_hz,level_dbm\n1000,-1\n2000,NaN\n3000,-2\n4000,x\n5000,-3\n6000,-3\n7000,-3\n";
        Assert.Equal([3, 5], _folder.With("t.csv", Text).Trace("t.csv").Faults.Select(f => f.Line!.Value));
    }

    [Theory]
    [InlineData("frequency_hz,level_dbm\n30000000,-50.5\n", 30e6, -50.5)]
    [InlineData("RBW;10 kHz\nFrequency [MHz];Level [dBm]\n30,5;-50,5\n", 30.5e6, -50.5)]
    public void ASinglePointUnderANamingHeaderIsRead(string text, double hertz, double level)
    {
        TraceReading reading = _folder.With("t.csv", text).Trace("t.csv");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal((hertz, level), (Assert.Single(trace.Axis.Hertz.ToArray()), Assert.Single(trace.Levels)));
    }

    [Fact]
    public void AFooterWithAnInchMarkIsNoStrayQuote() =>
        Assert.Empty(_folder.With("t.csv", Good + "19\" rack, door shut\n").Trace("t.csv").Faults);

    [Fact]
    public void AnOverlongLineIsRefused() =>
    AssertRefused("t.csv", Good + new string('9', (1 << 20) + 1) + "\n", 5, "longer than 1 MiB", "one row a frequency");

    [Fact]
    public void AMissingFileIsAFaultAndNoException()
    {
        ReadFault fault = Assert.Single(_folder.Trace("nowhere.csv").Faults);
        Assert.Equal("nowhere.csv: there is no such file; check the spelling of the path", fault.ToString());
    }

    [Fact]
    public void RandomBytesNeverThrow()
    {
        var random = new Random(7);
        string[] names = ["t.csv", "t.s2p", "t.s4p", "t.txt"];
        byte[] alphabet = Encoding.UTF8.GetBytes("0123456789.,;-+eE \t\n\r\"#!%[]fHzdBm\0µ");
        for (int i = 0; i < 400; i++)
        {
            byte[] bytes = new byte[random.Next(1, 300)];
            random.NextBytes(bytes);
            bytes = i % 2 == 0 ? bytes : [.. bytes.Select(b => alphabet[b % alphabet.Length])];
            TraceReading reading = _folder.With(names[i % 4], bytes).Trace(names[i % 4]);
            Assert.NotEqual(reading.Faults.IsEmpty, reading.Traces.IsEmpty);
        }
    }

    [Fact]
    public void AFaultIsAlwaysOneLine() => Assert.Equal("a b.csv:3: bad [2J thing; fix it",
        new ReadFault("a\nb.csv", 3, "bad \u001b[2J thing", "fix\u2028it").ToString()
            .Replace("  ", " ", StringComparison.Ordinal));

    private void AssertRefused(string name, string text, int line, string problem, string remedy)
    {
        TraceReading reading = _folder.With(name, text).Trace(name);
        Assert.Empty(reading.Traces);
        ReadFault fault = Assert.Single(reading.Faults);
        Assert.Equal((name, line == 0 ? null : (int?)line), (fault.File, fault.Line));
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
    }
}
