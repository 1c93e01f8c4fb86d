using System.Globalization;
using System.Text;
using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>The rows of numbers: their order, wrapping, remarks, frequencies and exactness.</summary>
public sealed class TouchstoneRows
{
    private const string Point = "-11 0 -21 0 -12 0 -22 0";

    [Fact]
    public void EveryParameterIsATraceInTheOrderOfTheFile()
    {
        TraceReading reading = Look("t.s2p", $"# MHz S DB R 50\n1 {Point}\n2 {Point}\n");
        Assert.Equal(["S11", "S21", "S12", "S22"], reading.Traces.Select(t => t.Column));
        Assert.Equal(["S11", "S21", "S12", "S22"], reading.Traces.Select(t => t.Quantity));
        Assert.Equal([-11.0, -21, -12, -22], reading.Traces.Select(t => t.Levels[1]));
        Assert.All(reading.Traces, t => Assert.Equal(LevelUnit.Decibels, t.Unit));
        Assert.All(reading.Traces, t => Assert.Same(reading.Traces[0].Axis, t.Axis));
    }

    [Fact]
    public void NamedParametersAloneAreReadInTheOrderOfTheirNames()
    {
        TraceReading reading = Look("t.s2p", $"# MHz S DB R 50\n1 {Point}\n", "s22", " S21");
        Assert.Equal(["S22", "S21"], reading.Traces.Select(t => t.Column));
        Assert.Equal([-22.0, -21], reading.Traces.Select(t => t.Levels[0]));
        Assert.Contains("there is no column 'S31' in a file of 2 ports",
            Assert.Single(Look("t.s2p", $"# MHz S DB R 50\n1 {Point}\n", "S21", "S31").Faults).Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("t.s2p", "1 -11 0 -21 0 ! wrapped by hand\n! between\n\n -12 0 -22 0 ! end\n2 -11 0\n -21 0\n -12 0\n -22 0\n",
        "-11 -21 -12 -22")]
    [InlineData("t.s3p", "1 -11 0 -12 0 -13 0 !row\n!\n -21 0 -22 0 -23 0\n\t-31 0 -32 0 -33 0\n2 -11 0 -12 0 -13 0 -21 0 -22 0 "
        + "-23 0 -31 0 -32 0 -33 0\n", "-11 -12 -13 -21 -22 -23 -31 -32 -33")]
    [InlineData("t.s4p", "1 11 0 12 0 13 0 14 0\n21 0 22 0 23 0 24 0\n31 0 32 0 33 0 34 0\n41 0 42 0 43 0 44 0\n2 11 0 12 0 13 "
        + "0 14 0\n21 0 22 0 23 0 24 0\n31 0 32 0 33 0 34 0\n41 0 42 0 43 0 44 0\n",
        "11 12 13 14 21 22 23 24 31 32 33 34 41 42 43 44")]
    public void RowsMayWrapBetweenPairs(string name, string rows, string levels)
    {
        TraceReading reading = Look(name, "# MHz S DB R 50\n" + rows + "\u001a");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(levels, string.Join(' ', reading.Traces.Select(t => t.Levels[1].ToString(CultureInfo.InvariantCulture))));
        Assert.Equal([1e6, 2e6], reading.Traces[0].Axis.Hertz.AsEnumerable());
    }

    // The rows of the ports on the left under the name of those on the right; none may pass as data.
    [Theory]
    [InlineData(1, 2)]
    [InlineData(1, 3)]
    [InlineData(1, 4)]
    [InlineData(2, 1)]
    [InlineData(2, 3)]
    [InlineData(2, 4)]
    [InlineData(3, 1)]
    [InlineData(3, 2)]
    [InlineData(3, 4)]
    [InlineData(4, 1)]
    [InlineData(4, 2)]
    [InlineData(4, 3)]
    public void AnExtensionOfOtherPortsIsNoticed(int ports, int named)
    {
        var text = new StringBuilder("# GHz S RI R 50\n");
        for (int i = 1; i <= 60; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{i}");
            for (int k = 0; k < ports * ports; k++)
            {
                text.Append(CultureInfo.InvariantCulture,
                    $" 0.{i:00}{k:00} 0.5{(ports > 2 && k % ports == ports - 1 ? "\n" : "")}");
            }

            text.Append('\n');
        }

        TraceReading reading = Look($"t.s{named}p", text.ToString());
        Assert.Empty(reading.Traces);
        Assert.Contains("extension", Assert.Single(reading.Faults).Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("-1 " + Point, 3, "-1000000 Hz is not a frequency", "frequencies must rise")]
    [InlineData("5 " + Point, 3, "5000000 Hz does not rise above 5000000 Hz", "frequencies must rise")]
    [InlineData("4 " + Point, 3, "4000000 Hz does not rise above 5000000 Hz", "frequencies must rise")]
    [InlineData("6 -1.5D+01 0 -21 0 -12 0 -22 0", 3, "'-1.5D+01' is not a finite number", "write the exponent with E")]
    [InlineData("6d0 " + Point, 3, "'6d0' is not a finite number", "write the exponent with E")]
    [InlineData("6 -11 0 deg", 3, "'deg' is not a finite number", "correct the row")]
    [InlineData("6 -11 0 -21\n0 -12 0 -22 0", 3, "ends between the two numbers of a pair", "the extension")]
    public void ARowIsRefusedForItsReason(string row, int line, string problem, string remedy)
    {
        ReadFault fault = Assert.Single(Look("t.s2p", $"# MHz S DB R 50\n5 {Point}\n{row}\n").Faults);
        Assert.Equal(line, fault.Line);
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void LevelsInDecibelsAreReadToTheLastBitAndOthersByTheirDefinition()
    {
        Assert.Equal([-87.830679535885857, -1e-9],
            Look("t.s1p", "# MHz S DB R 50\n0 -87.830679535885857 0\n0.3 -1E-9 0\n").Traces[0].Levels.AsEnumerable());
        Assert.Equal(20 * Math.Log10(0.0123456789), Look("t.s1p", "# MHz S MA R 50\n1 0.0123456789 33\n").Traces[0].Levels[0]);
        Assert.Equal(20 * Math.Log10(double.Hypot(-0.0123, 0.00456)),
            Look("t.s1p", "# MHz S RI R 50\n1 -0.0123 4.56e-3\n").Traces[0].Levels[0]);
        Assert.Equal([0, 300e3], Look("t.s1p", "# MHz S DB R 50\n0 1 0\n0.3 1 0\n").Traces[0].Axis.Hertz.AsEnumerable());
    }

    [Fact]
    public void SettingsStatedAboveTheDataGoToEveryTraceAndTheReading()
    {
        TraceReading reading =
            Look("t.s2p", $"! IF Bandwidth: 1 kHz\n# MHz S DB R 50\n1 {Point}\n! IF Bandwidth: 30 kHz\n2 {Point}\n");
        Assert.Equal(1000, reading.Settings.ResolutionBandwidthHz);
        Assert.All(reading.Traces, t => Assert.Equal(1000, t.Settings.ResolutionBandwidthHz));
    }

    private static TraceReading Look(string name, string text, params string[] columns) =>
        TraceFile.Look(Encoding.UTF8.GetBytes(text), name, new TraceReadOptions { Columns = [.. columns] });
}
