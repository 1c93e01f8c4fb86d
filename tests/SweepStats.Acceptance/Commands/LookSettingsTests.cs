using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>What look says of settings, of what it passed over, and of what its own options did.</summary>
public sealed class LookSettingsTests
{
    private const string Network = "! Date: 17 Feb 2026 09:41:00\n! IF bandwidth: 100 Hz, source power: -5 dBm\n! Averages: 16\n"
        + "# MHz S DB R 50\n50 -12 0 -44 0 -47 0 -14 0\n60 -12 0 -44 0 -47 0 -14 0\n";

    [Fact]
    public void ANetworkAnalyserHasAnIfBandwidthAndNoDetector()
    {
        using LookFolder folder = new LookFolder().With("a.s2p", Network);
        Assert.Contains(
            "  settings: IF bandwidth 100 Hz, averaging 16, source power -5 dBm; taken 2026-02-17 09:41:00\n",
            folder.Look("a.s2p").Out.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        var settings = folder.Json("a.s2p")[0].GetProperty("settings");
        Assert.Equal((100, 16, -5.0), (settings.GetProperty("rbw_hz").GetInt32(), settings.GetProperty("averages").GetInt32(),
            settings.GetProperty("source_power_dbm").GetDouble()));
    }

    [Fact]
    public void WhatIsStatedAndNotUsedIsPassedOver()
    {
        using LookFolder folder = new LookFolder().With("a.csv", "RBW,9000\nDate,03/05/2026\n" + LookFolder.Ramp);
        string output = folder.Look("a.csv").Out;
        Assert.Contains("  passed over: the RBW in line 1, '9000', has no unit and was not used", output,
            StringComparison.Ordinal);
        Assert.Contains("  passed over: the date 03/05/2026 was not used: day and month cannot be told apart", output,
            StringComparison.Ordinal);
        Assert.Contains("settings: RBW not stated", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a.csv", "--level-unit", "dBµV",
        "the file gives trace level_dbm in dBm, and the command line says dBµV; correct level_unit, or take it away")]
    [InlineData("a.csv", "--frequency-unit", "MHz",
        "the file gives frequencies in Hz, and the command line says MHz; correct frequency_unit, or take it away")]
    [InlineData("a.s2p", "--level-unit", "dBm",
        "the levels of S-parameters are in dB; the level unit dBm that the command line says was not used")]
    public void AUnitThatTheFileContradictsIsNotPassedOverInSilence(string file, string option, string unit, string said)
    {
        using LookFolder folder = new LookFolder().With("a.csv", LookFolder.Ramp).With("a.s2p", Network);
        var looked = folder.Look(file, option, unit);
        Assert.Contains(said, looked.Out + looked.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AUnitThatTheFileStatesTooIsNotTalkedAbout()
    {
        using LookFolder folder = new LookFolder().With("a.csv", LookFolder.Ramp);
        Assert.DoesNotContain("command line", folder.Look("a.csv", "--level-unit", "dBm", "--frequency-unit", "Hz").Out,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a.csv", "9", "correct --column: a header as listed here, or a number from 1")]
    [InlineData("a.s2p", "S31", "correct --column: an S parameter such as S11")]
    public void AColumnThatIsNotThereIsCorrectedOnTheCommandLine(string file, string column, string remedy)
    {
        using LookFolder folder = new LookFolder().With("a.csv", LookFolder.Ramp).With("a.s2p", Network);
        (int code, _, string error) = folder.Look(file, "--column", column);
        Assert.Equal(2, code);
        Assert.Contains(remedy, error, StringComparison.Ordinal);
        Assert.DoesNotContain("sweeps.csv", error, StringComparison.Ordinal);
    }
}
