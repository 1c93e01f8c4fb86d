using System.Text;
using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// Noise parameters below the data of two ports: five columns whose frequency starts anew (Touchstone specification 1.1, from
/// memory).
/// </summary>
public sealed class TouchstoneNoise
{
    private const string Data = "# MHz S DB R 50\n100 -1 0 -20 5 -3 0 -4 0\n200 -1 0 -21 6 -3 0 -4 0\n";

    [Theory]
    [InlineData("! noise\n100 2.5 0.3 40 0.2\n200 2.6 0.3 41 0.2 ! last\n", "2 rows")]
    [InlineData("\t200\t2.5\t0.3\t40\t0.2\n", "1 row")]
    [InlineData("50 2.5 0.3 -40 0.2\n300 2.5 0.3 -40 0.2\n400 2.5 0.3 -40 0.2\n", "3 rows")]
    public void TheNoiseBlockIsPassedOverAndSaid(string noise, string rows)
    {
        TraceReading reading = Look(Data + noise);
        Assert.Equal($"the noise parameters below the data were not read: {rows}", Assert.Single(reading.Assumptions));
        Assert.Equal([-20.0, -21.0], reading.Traces[1].Levels.AsEnumerable());
        Assert.Equal([100e6, 200e6], reading.Traces[1].Axis.Hertz.AsEnumerable());
    }

    [Theory]
    [InlineData("150 -1 0 -20 5\n -3 0 -4 0\n", 5, "block of noise parameters and does not hold 5 numbers")]
    [InlineData("150 2.5 0.3 40 0.2\n160 x 0.3 40 0.2\n", 5, "does not hold 5 numbers")]
    [InlineData("300 2.5 0.3 40 0.2\n", 4, "the last point lacks 4 of 9 numbers")]
    [InlineData("150 2.5 0.3 40\n", 4, "does not rise above 200000000 Hz")]
    public void RowsThatAreNeitherDataNorNoiseAreRefused(string rows, int line, string problem)
    {
        ReadFault fault = Assert.Single(Look(Data + rows).Faults);
        Assert.Equal(line, fault.Line);
        Assert.Contains(problem, fault.Problem, StringComparison.Ordinal);
    }

    private static TraceReading Look(string text) =>
        TraceFile.Look(Encoding.UTF8.GetBytes(text), "t.s2p", new TraceReadOptions());
}
