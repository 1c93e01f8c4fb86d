using System.Text;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>Touchstone files with the keywords of version 2.0 (specification, from memory).</summary>
public sealed class TouchstoneKeywordFiles
{
    private const string Head = "! shown first\n[Version] 2.0\n# MHz S DB R 50\n[Number of Ports] 2\n[Two-Port Data Order] "
        + "21_12\n[Number of Frequencies] 2\n";
    private const string Rows = "[Network Data]\n100 -11 0 -21 0 -12 0 -22 0\n200 -11 0 -21 0 -12 0 -22 0\n";

    [Theory]
    [InlineData(Head + Rows + "[End]\n")]
    [InlineData("[version] 2.1\n[ number  OF ports ] 2 ! two\n# MHz S DB\n[two-port DATA order]\t21_12\n[NUMBER OF FREQUENCIES] "
        + "2\n[network data]\n100 -11 0 -21 0 -12 0 -22 0 ! row\n200 -11 0 -21 0 -12 0 -22 0\n[end]\n")]
    [InlineData(Head + "[Reference] 50\n75.0\n! remark\n[Matrix Format] Full\n[Begin Information]\n[Anything] 1 2 3\nfree "
        + "text\n[End Information]\n" + Rows + "[END]\n\n! below\n")]
    [InlineData(Head + "[Mixed-Mode Order] S1\nS2\n" + Rows + "[End]\n")]
    public void AFileWithKeywordsIsRead(string text)
    {
        TraceReading reading = Look("t.s2p", text);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Empty(reading.Assumptions);
        Assert.Equal(["S11", "S21", "S12", "S22"], reading.Traces.Select(t => t.Column));
        Assert.Equal([-11.0, -21, -12, -22], reading.Traces.Select(t => t.Levels[1]));
        Assert.Equal([100e6, 200e6], reading.Traces[0].Axis.Hertz.AsEnumerable());
    }

    [Fact]
    public void TheOrderOfTwoPortsIsTheOneStated()
    {
        TraceReading reading = Look("t.s2p", (Head + Rows + "[End]\n").Replace("21_12", "12_21", StringComparison.Ordinal));
        Assert.Equal(["S11", "S12", "S21", "S22"], reading.Traces.Select(t => t.Quantity));
        Assert.Equal([-11.0, -21, -12, -22], reading.Traces.Select(t => t.Levels[0]));
    }

    [Theory]
    [InlineData("Lower", "-11 0\n-21 0 -22 0\n-31 0 -32 0 -33 0")]
    [InlineData("upper", "-11 0 -21 0 -31 0\n-22 0 -32 0\n-33 0")]
    public void HalfAMatrixIsMirrored(string matrix, string rows)
    {
        TraceReading reading =
            Look("t.s3p", "[Version] 2.0\n# GHz S DB\n[Number of Ports] 3\n[Number of Frequencies] 1\n[Matrix Format] "
                + $"{matrix}\n[Network Data]\n1 {rows}\n[End]\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(["S11", "S12", "S13", "S21", "S22", "S23", "S31", "S32", "S33"], reading.Traces.Select(t => t.Column));
        Assert.Equal([-11.0, -21, -31, -21, -22, -32, -31, -32, -33], reading.Traces.Select(t => Assert.Single(t.Levels)));
    }

    [Theory]
    [InlineData("Lower", "-1 0 -2 0 -3 0 -4 0 -5 0\n -6 0 -7 0 -8 0 -9 0 -10 0", "1 2 4 7 2 3 5 8 4 5 6 9 7 8 9 10")]
    [InlineData("Upper", "-1 0 -2 0 -3 0 -4 0 -5 0\n -6 0 -7 0 -8 0 -9 0 -10 0", "1 2 3 4 2 5 6 7 3 6 8 9 4 7 9 10")]
    public void HalfAMatrixOfFourPortsIsMirrored(string matrix, string row, string expected)
    {
        TraceReading reading =
            Look("t.s4p", "[Version] 2.0\n# GHz S DB\n[Number of Ports] 4\n[Number of Frequencies] 1\n[Matrix Format] "
                + $"{matrix}\n[Network Data]\n1 {row}\n[End]\n");
        Assert.Equal(expected, string.Join(' ', reading.Traces.Select(t => -t.Levels[0])));
    }

    [Fact]
    public void ASymmetricPairOfPortsNeedsThreePairsOfNumbers()
    {
        string text = Head + "[Matrix Format] Lower\n[Network Data]\n1 -11 0 -21 0 -22 0\n2 -11 0 -21 0 -22 0\n[End]\n";
        Assert.Equal([-11.0, -21, -21, -22], Look("t.s2p", text).Traces.Select(t => t.Levels[1]));
    }

    [Fact]
    public void NoiseDataArePassedOverAndSaid()
    {
        TraceReading reading = Look("t.s2p",
            Head + "[Number of Noise Frequencies] 2\n" + Rows + "[Noise Data]\n300 2 0.3 40 0.2\n400 2 0.3 40 0.2\n[End]\n");
        Assert.Equal("the noise parameters below the data were not read: 2 rows", Assert.Single(reading.Assumptions));
        Assert.Equal(2, reading.Traces[1].Levels.Length);
    }

    [Theory]
    [InlineData(Rows + "300 -1 0 -2 0 -1 0 -2 0\n[End]\n", "the file announces 2 points and has 3; all were read")]
    [InlineData(Rows, "the file does not close with [End]")]
    [InlineData("[Number of Noise Frequencies] 3\n" + Rows + "[End]\n",
        "the file announces 3 rows of noise parameters and has 0")]
    [InlineData(Rows + "[End]\n1 2 3\n4 5 6\n", "what stands from line 11 on, below [End], was not read")]
    public void WhatDoesNotAgreeIsSaid(string rest, string remark) =>
    Assert.Equal(remark, Assert.Single(Look("t.s2p", Head + rest).Assumptions));

    [Fact]
    public void AMissingCountIsSaid()
    {
        TraceReading reading =
            Look("t.s3p", "[Version] 2.0\n# MHz S DB\n[Number of Ports] 3\n[Two-Port Data Order] 12_21\n[Network Data]\n1 1 0 2 "
                + "0 3 0\n4 0 5 0 6 0\n7 0 8 0 9 0\n[End]\n");
        Assert.Equal(4, reading.Traces[3].Levels[0]);
        Assert.Equal(2, reading.Assumptions.Length);
        Assert.Contains("[Number of Frequencies] is missing", reading.Assumptions[0], StringComparison.Ordinal);
        Assert.Contains("[Two-Port Data Order] does not count", reading.Assumptions[1], StringComparison.Ordinal);
    }

    private static TraceReading Look(string name, string text) =>
        TraceFile.Look(Encoding.UTF8.GetBytes(text), name, new TraceReadOptions());
}
