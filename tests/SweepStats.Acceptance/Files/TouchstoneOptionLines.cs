using System.Text;
using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>The option line in the forms that programs give it (Touchstone specification 1.1, from memory).</summary>
public sealed class TouchstoneOptionLines
{
    // One point at 100 MHz; |S21| = 0.1, which is −20 dB.
    private const string Decibels = "-1 0 -20 5 -3 0 -4 0";
    private const string Magnitudes = ".9 0 0.1 5 .8 0 .7 0";
    private const string Parts = "1 0 0.06 0.08 1 0 1 0";

    [Theory]
    [InlineData("# MHz S DB R 50", "100 " + Decibels)]
    [InlineData("   #\tdb\t\tS      mHZ", "100 " + Decibels)]
    [InlineData("#MHz S DB R 75", "100 " + Decibels)]
    [InlineData("# R 19.545 kHz DB S", "100000 " + Decibels)]
    [InlineData("# MHz S DB R (50,-1.5)", "100 " + Decibels)]
    [InlineData("# R 50+2j MHz S DB", "100 " + Decibels)]
    [InlineData("# R 50 + j 2 MHz S DB", "100 " + Decibels)]
    [InlineData("# MHz S DB R50", "100 " + Decibels)]
    [InlineData("# MHz S DB R 50 Ohm ! 50 ohms", "100 " + Decibels)]
    [InlineData("# HZ S RI R 50", "1.0E8 " + Parts)]
    [InlineData("# HZ S RI R 50", "1E8 1E0 0e0 6E-2 8.0e-002 1 0 1 0")]
    [InlineData("#", "0.1 " + Magnitudes)]
    [InlineData("# ! nothing but a remark", "0.1 " + Magnitudes)]
    [InlineData("! first\n!\n\n# RI\n! MHz S DB R 50\n", "0.1 " + Parts)]
    public void TheOptionLineIsUnderstood(string line, string row)
    {
        TraceReading reading = Look($"{line}\n{row} ! end of the row\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Empty(reading.Assumptions);
        Trace trace = reading.Traces.Single(t => t.Column == "S21");
        Assert.Equal(100e6, Assert.Single(trace.Axis.Hertz));
        Assert.Equal(-20, Assert.Single(trace.Levels), 12);
    }

    [Fact]
    public void OnlyTheFirstOptionLineCountsAndTheOthersAreNamed()
    {
        TraceReading reading = Look($"# MHz S DB R 50\n# GHz S RI R 50\n100 {Decibels}\n# Hz S MA R 50\n200 {Decibels}\n");
        Assert.Equal([100e6, 200e6], reading.Traces[0].Axis.Hertz.AsEnumerable());
        Assert.Equal([-20.0, -20.0], reading.Traces[1].Levels.AsEnumerable());
        Assert.Equal(["line 2 is a second option line; only the first counts",
            "line 4 is a second option line; only the first counts"], reading.Assumptions.AsEnumerable());
    }

    [Theory]
    [InlineData("# MHz Y RI R 50", "holds Y parameters, which are no attenuation", "export S parameters")]
    [InlineData("# MHz z RI R 50", "holds Z parameters", "export S parameters")]
    [InlineData("# MHz G RI R 50", "holds G parameters", "export S parameters")]
    [InlineData("# R 50 h", "holds H parameters", "export S parameters")]
    [InlineData("# THz S RI R 50", "'THz' is not a unit of frequency", "Hz, kHz, MHz or GHz")]
    [InlineData("# MHz S DB MA R 50", "'MA' beside another unit or format", "Or write the option line")]
    [InlineData("# MHz S DB R 50 GHz", "'GHz' beside another unit or format", "Or write the option line")]
    [InlineData("# MHz S DB 50", "'50', which is none of its words", "Or write the option line")]
    [InlineData("# MHz S DB R fifty", "'fifty', which is none of its words", "Or write the option line")]
    public void AnOptionLineThatCannotBeMeantIsRefused(string line, string problem, string remedy)
    {
        TraceReading reading = Look($"! remark\n{line}\n1 {Decibels}\n");
        ReadFault fault = Assert.Single(reading.Faults);
        Assert.Empty(reading.Traces);
        Assert.Equal(2, fault.Line);
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
    }

    private static TraceReading Look(string text) =>
        TraceFile.Look(Encoding.UTF8.GetBytes(text), "t.s2p", new TraceReadOptions());
}
