using System.Text.Json;
using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class LookValuesTests
{
    private const string Header = "file,trace,quantity,point,frequency_hz,level,unit,phase_deg,reverse_level_db\n";
    private const string WithPhase =
        "# Hz S DB R 50\n1000000 -3 0 -50 1.25 -60.5 9 -4 0\n2000000.1 -3 0 -0.1000000000000001 -2 -61 8 -4 0\n";

    [Fact]
    public void TheTableHasOneRowAReadingToTheLastBit()
    {
        using LookFolder folder =
            new LookFolder().With("a.csv", "frequency_hz,\"one, two\",dBm\n30000000.1,-100.00000000000001,7\n40000000,-90,8\n");
        folder.With("b.csv", LookFolder.Ramp);
        string name = folder.Path("b.csv");
        Assert.Equal(0, Shell.Run("look", name, "--quiet", "--values", folder.Path("out.csv")).Code);
        Assert.Equal(
            Header + $"{name},level_dbm,level,1,30000000,-100,dBm,,\n{name},level_dbm,level,2,40000000,-90,dBm,,\n{name},"
                + "level_dbm,level,3,50000000,-80,dBm,,\n",
            File.ReadAllText(folder.Path("out.csv")));
        string doubted = folder.Path("a.csv");
        Shell.Run("look", doubted, "--quiet", "--values", folder.Path("out.csv"));
        string[] lines = File.ReadAllLines(folder.Path("out.csv"));
        Assert.Contains($"{doubted},\"one, two\",level,1,30000000.1,-100.00000000000001,,,", lines);
    }

    [Fact]
    public void PhaseAndReverseLevelStandBesideTheLevel()
    {
        using LookFolder folder = new LookFolder().With("a.s2p", WithPhase);
        string name = folder.Path("a.s2p");
        Shell.Run("look", name, "--quiet", "--values", folder.Path("out.csv"));
        string[] lines = File.ReadAllLines(folder.Path("out.csv"));
        Assert.Contains($"{name},S21,S21,2,2000000.1,-0.1000000000000001,dB,-2,-61", lines);
    }

    [Fact]
    public void TheArrayIsThatOfTheFormatJsonWithTheReadingsInIt()
    {
        using LookFolder folder = new LookFolder().With("a.s2p", WithPhase).With("bad.csv", "nothing\n");
        (int code, _, _) =
            Shell.Run("look", folder.Path("a.s2p"), folder.Path("bad.csv"), "--quiet", "--values", folder.Path("out.json"));
        Assert.Equal(2, code);
        JsonElement[] files = [.. JsonDocument.Parse(File.ReadAllText(folder.Path("out.json"))).RootElement.EnumerateArray()];
        JsonElement through =
            files[0].GetProperty("traces").EnumerateArray().Single(t => t.GetProperty("quantity").GetString() == "S21");
        Assert.Equal([1e6, 2000000.1], Numbers(through, "frequencies_hz"));
        Assert.Equal([-50, -0.1000000000000001], Numbers(through, "levels"));
        Assert.Equal([1.25, -2], Numbers(through, "phases_deg"));
        Assert.Equal([-60.5, -61], Numbers(through, "reverse_levels_db"));
        Assert.True(files[1].TryGetProperty("error", out _));
    }

    [Fact]
    public void ALevelThatIsNotFiniteIsNullOrAnEmptyCell()
    {
        using LookFolder folder =
            new LookFolder().With("a.s2p", "# Hz S RI R 50\n1000000 1 0 0 0 0 0 1 0\n2000000 1 0 0.1 0 0 0 1 0\n");
        string name = folder.Path("a.s2p");
        Shell.Run("look", name, "--quiet", "--values", folder.Path("out.json"));
        JsonElement trace =
            JsonDocument.Parse(File.ReadAllText(folder.Path("out.json"))).RootElement[0].GetProperty("traces").EnumerateArray()
            .Single(t => t.GetProperty("quantity").GetString() == "S21");
        Assert.Equal(JsonValueKind.Null, trace.GetProperty("levels")[0].ValueKind);
        Shell.Run("look", name, "--quiet", "--values", folder.Path("out.csv"));
        Assert.Contains(File.ReadAllLines(folder.Path("out.csv")),
            line => line.StartsWith($"{name},S21,S21,1,1000000,,dB,", StringComparison.Ordinal));
    }

    [Fact]
    public void WithoutTheOptionNoReadingsArePrinted()
    {
        using LookFolder folder = new LookFolder().With("a.csv", LookFolder.Ramp);
        Assert.False(folder.Json("a.csv")[0].GetProperty("traces")[0].TryGetProperty("levels", out _));
    }

    [Theory]
    [InlineData("out.txt")]
    [InlineData("out")]
    public void AnyOtherEndingIsRefusedBeforeAnythingIsRead(string target)
    {
        using LookFolder folder = new LookFolder().With("a.csv", LookFolder.Ramp);
        (int code, string output, string error) = folder.Look("a.csv", "--values", folder.Path(target));
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("ends in .json or .csv", error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.Path(target)));
    }

    [Fact]
    public void AFileOfTheOptionsOwnIsReplacedAndNoOther()
    {
        using LookFolder folder =
            new LookFolder().With("a.csv", LookFolder.Ramp).With("notes.csv", "point,remark\n1,door open\n");
        foreach (string own in (string[])["out.csv", "out.json"])
        {
            Assert.Equal(0, folder.Look("a.csv", "--values", folder.Path(own)).Code);
            Assert.Equal(0, folder.Look("a.csv", "--values", folder.Path(own)).Code);
        }

        (int code, _, string error) = folder.Look("a.csv", "--values", folder.Path("notes.csv"));
        Assert.Equal(2, code);
        Assert.Contains("did not write", error, StringComparison.Ordinal);
        Assert.Equal("point,remark\n1,door open\n", File.ReadAllText(folder.Path("notes.csv")));
        Assert.Equal(["a.csv", "notes.csv", "out.csv", "out.json"],
            Directory.EnumerateFiles(folder.Path("")).Select(Path.GetFileName).Order());
    }

    [Fact]
    public void AFileThatIsReadIsNeverWritten()
    {
        using LookFolder folder = new LookFolder().With("a.csv", LookFolder.Ramp);
        folder.Look("a.csv", "--values", folder.Path("out.csv"));
        string before = File.ReadAllText(folder.Path("out.csv"));
        (int code, _, string error) = folder.Look("out.csv", "--values", folder.Path("out.csv"));
        Assert.Equal(2, code);
        Assert.Contains("one of the files to look at", error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(folder.Path("out.csv")));
    }

    [Fact]
    public void ATableSaysThatAFileIsMissingInIt()
    {
        using LookFolder folder = new LookFolder().With("a.csv", LookFolder.Ramp).With("bad.csv", "nothing\n");
        (int code, _, string error) =
            Shell.Run("look", folder.Path("a.csv"), folder.Path("bad.csv"), "--values", folder.Path("out.csv"));
        Assert.Equal(2, code);
        Assert.Contains("a file could not be read and has no rows here", error, StringComparison.Ordinal);
    }

    private static double[] Numbers(JsonElement trace, string key) =>
        [.. trace.GetProperty(key).EnumerateArray().Select(n => n.GetDouble())];
}
