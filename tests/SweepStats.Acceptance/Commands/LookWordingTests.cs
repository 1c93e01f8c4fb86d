using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class LookWordingTests
{
    [Fact]
    public void WhatIsAssumedOfEveryTraceIsSaidOnce()
    {
        using LookFolder folder =
            new LookFolder().With("a.csv", "frequency_hz,Peak,Peak hold\n1000000,-50,-60\n2000000,-51,-61\n");
        string output = folder.Look("a.csv", "--level-unit", "dBm", "--no-plot").Out;
        Assert.Equal(["  assumed: all traces: levels of the column are in dBm, as the command line says"], Assumed(output));
        Assert.Equal(2, folder.Json("a.csv")[0].GetProperty("traces").GetArrayLength());
    }

    [Fact]
    public void WhatIsAssumedOfSomeTracesNamesThem()
    {
        using LookFolder folder =
            new LookFolder().With("a.csv", "frequency_hz,Peak,Peak hold,Mean [dBm]\n1000000,-50,-60,-70\n2000000,-51,-61,-71\n");
        string output = folder.Look("a.csv", "--level-unit", "dBm", "--no-plot").Out;
        Assert.Equal(["  assumed: Peak, Peak hold: levels of the column are in dBm, as the command line says"], Assumed(output));
    }

    [Fact]
    public void WhatIsAssumedOfOneTraceKeepsItsName()
    {
        using LookFolder folder =
            new LookFolder().With("a.csv", "frequency_hz,Peak,Mean [dBm]\n1000000,-50,-70\n2000000,-51,-71\n");
        string output = folder.Look("a.csv", "--level-unit", "dBm", "--no-plot").Out;
        Assert.Equal(["  assumed: levels of column Peak are in dBm, as the command line says"], Assumed(output));
    }

    [Fact]
    public void ParametersThatWereNotMeasuredShareOneReason()
    {
        using LookFolder folder =
            new LookFolder().With("a.s2p", "# Hz S RI R 50\n1000000 1 0 0 0 0 0 0 0\n2000000 0.5 0 0 0 0 0 0 0\n");
        string[] doubts = [.. Lines(folder.Look("a.s2p", "--no-plot").Out)
            .Where(line => line.Contains("not usable", StringComparison.Ordinal))];
        Assert.StartsWith("  S21, S12, S22: not usable as a sweep: line 2: the trace is blank: ", Assert.Single(doubts),
            StringComparison.Ordinal);
    }

    [Fact]
    public void ParametersWithoutALevelAtOnePointShareOneReason()
    {
        using LookFolder folder =
            new LookFolder().With("a.s2p", "# Hz S RI R 50\n1000000 1 0 0 0 0 0 1 0\n2000000 1 0 0.1 0 0.1 0 1 0\n");
        string[] doubts = [.. Lines(folder.Look("a.s2p", "--no-plot").Out)
            .Where(line => line.Contains("not usable", StringComparison.Ordinal))];
        Assert.StartsWith("  S21, S12: not usable as a sweep: line 2: the magnitude of the trace ", Assert.Single(doubts),
            StringComparison.Ordinal);
    }

    [Fact]
    public void AMistypedOptionIsNoMissingFile()
    {
        using LookFolder folder = new LookFolder().With("a.csv", LookFolder.Ramp);
        (int code, string output, string error) = folder.Look("a.csv", "--no-polt\u001b");
        Assert.Equal((2, ""), (code, output));
        Assert.Equal("sweepstats: '--no-polt ' is no option of 'look'. See 'sweepstats look --help'", error.TrimEnd());
    }

    [Theory]
    [InlineData('\u200e')]
    [InlineData('\u200f')]
    [InlineData('\u061c')]
    public void MarksThatTurnTheWritingAreNotPrinted(char mark)
    {
        using LookFolder folder = new LookFolder().With("a.csv", $"frequency_hz,a{mark}b [dBm]\n1000000,-50\n2000000,-51\n");
        string output = folder.Look("a.csv", "--no-plot").Out;
        Assert.Contains("  a b [dBm]  ", output, StringComparison.Ordinal);
        Assert.DoesNotContain(mark, output);
    }

    private static string[] Assumed(string output) =>
        [.. Lines(output).Where(line => line.StartsWith("  assumed", StringComparison.Ordinal))];

    private static string[] Lines(string output) => output.ReplaceLineEndings("\n").Split('\n');
}
