using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class RehearseWordsTests
{
    [Theory]
    [InlineData("--requirement -5: a requirement lies between 0 and 300 dB", "--requirement", "-5")]
    [InlineData("--requirement 400: a requirement lies between 0 and 300 dB", "--requirement", "400")]
    [InlineData("--stop: the band must stop above its start", "--start", "1GHz", "--stop", "1MHz")]
    [InlineData("--start fast: a frequency reads 30MHz, 1.5 GHz or 30e6", "--start", "fast")]
    public void WrongWordsAreRefusedAtOnce(string reason, params string[] words)
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c");
        (int code, _, string error) = Shell.Run(["rehearse", folder, .. words]);
        Assert.Equal(2, code);
        Assert.Equal($"sweepstats: {reason}; see 'sweepstats rehearse --help'", error.TrimEnd());
        Assert.False(Directory.Exists(folder));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("300")]
    public void WhatIsWrittenIsReadAgain(string requirement)
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c");
        Assert.Equal(0, Shell.Run("rehearse", folder, "--points", "3", "--requirement", requirement).Code);
        Assert.Equal(0, Shell.Run("plan", folder, "--quiet").Code);
    }

    [Fact]
    public void ABandMayStartBelowOneKilohertz()
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c");
        (int code, string output, string error) = Shell.Run("rehearse", folder, "--start", "30Hz", "--points", "5");
        Assert.Equal(0, code);
        Assert.Empty(error);
        Assert.Contains("15 sweeps of 5 frequencies", output, StringComparison.Ordinal);
        Assert.StartsWith("A,A01,30,40.0000,", File.ReadAllLines(Path.Combine(folder, "truth.csv"))[1], StringComparison.Ordinal);
    }

    [Fact]
    public void OneFrequencyIsCountedAsOne()
    {
        using var scratch = new ScratchFolder();
        Assert.Contains("15 sweeps of 1 frequency;", Shell.Run("rehearse", Path.Combine(scratch.Path, "c"), "--points", "1").Out, StringComparison.Ordinal);
    }
}
