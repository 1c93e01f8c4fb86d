using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>Touchstone files whose names do not tell that they are.</summary>
public sealed class TouchstoneBySight : IDisposable
{
    private const string Version2 = "! curtain\n[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Two-Port Data Order] "
        + "21_12\n[Number of Frequencies] 2\n[Network Data]\n"
        + "30 -1 0 -50 10 -60 0 -2 0\n40 -1 0 -51 20 -61 0 -2 0\n[End]\n";

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("t.ts")]
    [InlineData("t.txt")]
    [InlineData("t.dat")]
    [InlineData("t.s2p")]
    public void Version2IsKnownByItsFirstKeyword(string name)
    {
        TraceReading reading = _folder.With(name, Version2).Trace(name);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal(("S21", 30e6, -50.0, 10.0), (trace.Quantity, trace.Axis.Hertz[0], trace.Levels[0], trace.Phases[0]));
        Assert.True(TraceFile.HasTraceExtension(name));
    }

    [Fact]
    public void Version1IsKnownByOptionLineAndRow()
    {
        TraceReading reading =
            _folder.With("t.dat", "! curtain\n# MHz S RI R 50\n30 1 0 3 4 3 4 1 0\n40 1 0 6 8 6 8 1 0\n").Trace("t.dat");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(("S21", 20 * Math.Log10(5)), (Assert.Single(reading.Traces).Quantity, reading.Traces[0].Levels[0]));
        Assert.Contains("the option line is that of a Touchstone file, and 9 numbers a row are those of two ports",
            reading.Assumptions);
    }

    [Theory]
    [InlineData("# MHz S DB R 50\n30 1 2 3 4 5 6\n 1 2 3 4 5 6\n 1 2 3 4 5 6\n", 2, "does not tell the number of ports",
        "rename the file so that its extension tells it: .s1p, .s2p, .s3p or .s4p")]
    [InlineData("[Version] 2.0\n# MHz S DB\n[Network Data]\n30 1 2\n", null, "the keyword [Number of Ports] is missing",
        "export the file again; it is cut off or incomplete")]
    [InlineData("[Version] 2.0\n# MHz S DB\n[Number of Ports] 8\n[Network Data]\n30 1 2\n", 3, "[Number of Ports] holds '8'",
        "files of 1 to 4 ports are read")]
    public void WhatDoesNotTellItsPortsIsRefused(string text, int? line, string problem, string remedy)
    {
        ReadFault fault = Assert.Single(_folder.With("t.txt", text).Trace("t.txt").Faults);
        Assert.Equal((line, remedy), (fault.Line, fault.Remedy));
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("# Measured S parameters\nFrequency (MHz),S21 (dB)\n30,-40\n31,-41\n")]
    [InlineData("# S MHz dB curtain\nFrequency (MHz),S21 (dB)\n30,-40\n31,-41\n")]
    [InlineData("# MHz\nFrequency (MHz),S21 (dB)\n30,-40\n31,-41\n")]
    public void ARemarkIsNoOptionLine(string text) =>
    Assert.Equal("S21 (dB)", Assert.Single(_folder.With("t.txt", text).Trace("t.txt").Traces).Column);
}
