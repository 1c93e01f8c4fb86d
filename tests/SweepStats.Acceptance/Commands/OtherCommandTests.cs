using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class OtherCommandTests
{
    [Fact]
    public void CheckSaysWhatIsWrongAndWhatToDo()
    {
        (int code, string output, _) = Shell.Run("check", Shell.Demo);
        Assert.Equal(0, code);
        Assert.Contains("Warning (ambient)", output, StringComparison.Ordinal);
        Assert.Contains("Next: Terminate the input", output, StringComparison.Ordinal);
    }

    [Fact]
    public void CheckExitsWithOneWhenNothingCanBeTrusted()
    {
        using var scratch = new ScratchFolder();
        Shell.Run("rehearse", Path.Combine(scratch.Path, "c"), "--points", "21", "--reference", "-97", "--se", "5");
        Assert.Equal(1, Shell.Run("check", Path.Combine(scratch.Path, "c")).Code);
    }

    [Fact]
    public void ARehearsalTellsItsTruthAndTheSameSeedGivesTheSameFiles()
    {
        using var scratch = new ScratchFolder();
        foreach (string name in new[] { "a", "b" })
        {
            Assert.Equal(0, Shell.Run("rehearse", Path.Combine(scratch.Path, name), "--points", "11", "--se", "20", "--se-stop",
                "50", "--seed", "9").Code);
        }

        string[] truth = File.ReadAllLines(Path.Combine(scratch.Path, "a/truth.csv"));
        Assert.Equal("lot,specimen,frequency_hz,se_db,noise_dbm", truth[0]);
        Assert.Equal("A,A01,30000000,20.0000,-100.0000", truth[1]);
        Assert.Equal("A,A01,1000000000,50.0000,-100.0000", truth[^1]);
        Assert.Equal(File.ReadAllText(Path.Combine(scratch.Path, "a/covered/A/A01/covered-03.csv")),
            File.ReadAllText(Path.Combine(scratch.Path, "b/covered/A/A01/covered-03.csv")));
    }

    [Fact]
    public void ARehearsalIsNotMixedWithOtherFiles()
    {
        (int code, _, string error) = Shell.Run("rehearse", Shell.Demo);
        Assert.Equal(2, code);
        Assert.Contains("not empty", error, StringComparison.Ordinal);
    }

    [Fact]
    public void ANewCampaignIsExplainedInItsFilesAndNeverOverwritten()
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "autumn");
        Assert.Equal(0, Shell.Run("init", folder).Code);
        Assert.Contains("averaging", File.ReadAllText(Path.Combine(folder, "campaign.toml")), StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(folder, "sweeps.csv")));
        (int code, _, string error) = Shell.Run("init", folder);
        Assert.Equal(2, code);
        Assert.Contains("already there", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("run")]
    [InlineData("run", "x", "--confidence", "95")]
    [InlineData("run", "x", "--confidence", "0.4")]
    [InlineData("run", "x", "--threads", "0")]
    [InlineData("run", "x", "--format", "xml")]
    [InlineData("run", "x", "--colour")]
    [InlineData("measure", "x")]
    [InlineData("rehearse", "x", "--points", "many")]
    [InlineData("rehearse", "x", "--requirement", "-40")]
    [InlineData("rehearse", "x", "--requirement", "1e308")]
    [InlineData("rehearse", "x", "--requirement", "NaN")]
    [InlineData("rehearse", "x", "--points", "0")]
    [InlineData("rehearse", "x", "--start", "2GHz")]
    [InlineData("rehearse", "x", "--start", "soon")]
    [InlineData("rehearse", "x", "--ambient", "433MHz")]
    [InlineData("rehearse", "x", "--ambient", "433MHz:20:2")]
    [InlineData("rehearse", "x", "--odd", "reference:9:1")]
    [InlineData("rehearse", "x", "--odd", "1:1:1")]
    [InlineData("rehearse", "x", "--odd", "reference:two:1")]
    [InlineData("rehearse", "x", "--linearity", "0", "--linearity", "loud")]
    [InlineData("rehearse", "x", "--drift-shape", "round")]
    [InlineData("rehearse", "x", "--starts-at", "noon")]
    [InlineData("rehearse", "x", "--jump-share", "5")]
    [InlineData("rehearse", "x", "--scatter", "-1")]
    [InlineData("rehearse", "x", "--looks", "2.5", "--averaging", "log")]
    public void WordsThatMakeNoSenseEndWithTwoAndOneLineThatHelps(params string[] words)
    {
        (int code, string output, string error) = Shell.Run(words);
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.NotEmpty(error);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists("x"));
    }

    [Fact]
    public void AFolderThatIsNotThereIsSaidPlainly()
    {
        (int code, _, string error) = Shell.Run("run", "no/such/campaign");
        Assert.Equal(2, code);
        Assert.Equal("no/such/campaign: there is no such folder; name the folder that holds campaign.toml, floor, reference "
            + "and covered", error.TrimEnd());
    }

    [Fact]
    public void WithoutWordsTheProgramExplainsItself()
    {
        (int code, string output, _) = Shell.Run();
        Assert.Equal(0, code);
        Assert.All(["run", "check", "rehearse", "init"], command => Assert.Contains(command, output, StringComparison.Ordinal));
    }
}
