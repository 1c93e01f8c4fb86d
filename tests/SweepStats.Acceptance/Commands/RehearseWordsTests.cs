using System.Globalization;
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
    [InlineData("--lot-step B:-6: a step reads B:-6:300MHz-600MHz, its lot, the change of its shielding in dB, and from where "
        + "to where", "--lot-step", "B:-6")]
    [InlineData("--lot-step :-6:1MHz-2MHz: a step reads B:-6:300MHz-600MHz, its lot, the change of its shielding in dB, and "
        + "from where to where", "--lot-step", ":-6:1MHz-2MHz")]
    [InlineData("--lot-step A:much:1MHz-2MHz: a step reads B:-6:300MHz-600MHz, its lot, the change of its shielding in dB, and "
        + "from where to where", "--lot-step", "A:much:1MHz-2MHz")]
    [InlineData("--lot-step A:-6:300MHz: a step reads B:-6:300MHz-600MHz, its lot, the change of its shielding in dB, and from "
        + "where to where", "--lot-step", "A:-6:300MHz")]
    [InlineData("--lot-step A:-6:600MHz-300MHz: the step must stop above its start", "--lot-step", "A:-6:600MHz-300MHz")]
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

    [Theory]
    [InlineData("B:-6:300MHz-600MHz", 300e6, 600e6)]
    [InlineData("B:-6:1e-1GHz - 2e+8", 100e6, 200e6)]
    public void AStepOfALotStandsInTheTruth(string step, double start, double stop)
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c");
        Assert.Equal(0, Shell.Run("rehearse", folder, "--points", "41", "--lots", "2", "--lot-step", step).Code);
        string[][] rows = [.. File.ReadAllLines(Path.Combine(folder, "truth.csv")).Skip(1).Select(l => l.Split(','))];
        Assert.Equal(82, rows.Length);
        Assert.Contains(rows, r => r[3] == "34.0000");
        Assert.All(rows,
            r => Assert.Equal(r[0] == "B" && double.Parse(r[2], CultureInfo.InvariantCulture) >= start
                && double.Parse(r[2], CultureInfo.InvariantCulture) <= stop ? "34.0000" : "40.0000", r[3]));
    }

    [Theory]
    [InlineData("--plate", "a leak that arrives 0 dB or more below the reference")]
    [InlineData("--reference-ripple", "a swing of the reference that is not negative")]
    [InlineData("--scatter", "spreads and steps that are not negative")]
    public void DecibelsThatMakeNoSenseBelowZeroAreRefused(string option, string wanted)
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c");
        (int code, _, string error) = Shell.Run("rehearse", folder, option, "-60");
        Assert.Equal((2, $"sweepstats rehearse: A rehearsal needs {wanted}."), (code, error.TrimEnd()));
        Assert.False(Directory.Exists(folder));
    }

    [Theory]
    [InlineData("C:-6:300MHz-600MHz", "A rehearsal needs the lot C that is to have a step, and there are only A, B.")]
    [InlineData("A:-6:2GHz-3GHz",
        "A rehearsal needs a swept frequency for the step of lot A, and none lies from 2000000000 to 3000000000 Hz.")]
    public void AStepThatCannotBeDrawnIsRefused(string step, string reason)
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c");
        (int code, _, string error) = Shell.Run("rehearse", folder, "--lots", "2", "--lot-step", step);
        Assert.Equal((2, $"sweepstats rehearse: {reason}"), (code, error.TrimEnd()));
        Assert.False(Directory.Exists(folder));
    }

    [Fact]
    public void OneFrequencyIsCountedAsOne()
    {
        using var scratch = new ScratchFolder();
        Assert.Contains("15 sweeps of 1 frequency;", Shell.Run("rehearse", Path.Combine(scratch.Path, "c"), "--points", "1").Out,
            StringComparison.Ordinal);
    }
}
