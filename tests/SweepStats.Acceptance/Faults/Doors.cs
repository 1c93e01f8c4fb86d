using System.Diagnostics;
using SweepStats.Acceptance.Commands;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>Ways out of the campaign, into the terminal, and into programs that open what was written.</summary>
public sealed class Doors : IDisposable
{
    private const string Secret = "root-secret";

    private readonly ScratchFolder _outer = new();

    public Doors()
    {
        foreach (string file in (string[])["floor/f1.csv", "reference/r1.csv", "covered/A/A1/c1.csv"])
        {
            _outer.With("c/" + file, ScratchFolder.Traces.Plain);
        }

        _outer.With("out/secret.csv", Secret + ",1\n" + Secret + ",2\n");
    }

    private string Campaign => Path.Combine(_outer.Path, "c");

    public void Dispose() => _outer.Dispose();

    [Theory]
    [InlineData("campaign.toml")]
    [InlineData("sweeps.csv")]
    public void WhatALinkOutOfTheCampaignLeadsToIsNotEchoed(string name)
    {
        File.CreateSymbolicLink(Path.Combine(Campaign, name), Path.Combine(_outer.Path, "out/secret.csv"));
        Assert.Equal($"{name}: the file is a link that leads out of the campaign; put the file itself into the campaign\n",
            Refused("check", Campaign));
    }

    [Theory]
    [InlineData("sweeps.csv", "file,role\nlnk/secret.csv,floor\n",
        "sweeps.csv:2: 'lnk/secret.csv' leads out of the campaign: a folder on its way is a link; put the folder itself into "
            + "the campaign")]
    [InlineData("campaign.toml", "[requirement]\nfile = \"lnk/secret.csv\"\n",
        "campaign.toml:2: 'lnk/secret.csv' leads out of the campaign; put the limits beside campaign.toml")]
    public void NoPathLeadsOutThroughALinkOfAFolder(string name, string text, string said)
    {
        Directory.CreateSymbolicLink(Path.Combine(Campaign, "lnk"), Path.Combine(_outer.Path, "out"));
        _outer.With("c/" + name, text);
        string error = Refused("check", Campaign);
        Assert.Contains(said, error, StringComparison.Ordinal);
        Assert.DoesNotContain(Secret, error, StringComparison.Ordinal);
    }

    /// <summary>The campaign itself may be reached by a link, and a link within it leads nowhere else.</summary>
    [Fact]
    public void LinksWithinTheCampaignAreFollowed()
    {
        Directory.CreateSymbolicLink(Path.Combine(_outer.Path, "to"), Campaign);
        Directory.CreateSymbolicLink(Path.Combine(Campaign, "same"), "floor");
        _outer.With("c/sweeps.csv",
            "file,role,specimen\nsame/f1.csv,floor,\nreference/r1.csv,reference,\ncovered/A/A1/c1.csv,covered,A1\n");
        Assert.DoesNotContain("leads out", Shell.Run("check", Path.Combine(_outer.Path, "to")).Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("campaign.toml")]
    [InlineData("sweeps.csv")]
    public void AFolderOfTheNameIsNotPassedOver(string name)
    {
        Directory.CreateDirectory(Path.Combine(Campaign, name));
        Assert.Equal($"{name}: this is a folder, not a file; rename the folder\n", Refused("check", Campaign));
    }

    [Theory]
    [InlineData("campaign.toml")]
    [InlineData("sweeps.csv")]
    public void APipeOfTheNameIsNotWaitedFor(string name)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        Process.Start("mkfifo", Path.Combine(Campaign, name))!.WaitForExit();
        Assert.Equal($"{name}: this is not a regular file; remove it, and write the file anew\n", Refused("check", Campaign));
    }

    [Theory]
    [InlineData("shielding.csv")]
    [InlineData("summary.json")]
    public void APipeUnderTheNameOfAReportFileIsNotWaitedFor(string name)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        string report = Path.Combine(_outer.Path, "r");
        Shell.Run("run", Shell.Demo, "--out", report, "--charts", "none", "--quiet");
        File.Delete(Path.Combine(report, name));
        Process.Start("mkfifo", Path.Combine(report, name))!.WaitForExit();
        Assert.Contains("the folder holds", Refused("run", Shell.Demo, "--out", report), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("run")]
    [InlineData("lots")]
    [InlineData("choose")]
    [InlineData("field")]
    [InlineData("plan")]
    public void AFileInPlaceOfACampaignIsCalledOne(string command)
    {
        string file = Path.Combine(Campaign, "floor/f1.csv");
        Assert.Equal($"{file}: this is a file, not a folder; name the folder that holds campaign.toml, floor, reference and "
            + "covered\n", Refused(command, file));
    }

    [Fact]
    public void InitSaysThatAFileIsNoFolder() =>
        Assert.Contains("is a file, not a folder", Refused("init", Path.Combine(Campaign, "floor/f1.csv")),
            StringComparison.Ordinal);

    [Theory]
    [InlineData("title = \ntitle =\n[[[\n\"x\ny = =\n")]
    [InlineData("a = [1,\nb = }\n\u0001\n")]
    public void BrokenSettingsAreToldInOneLine(string text) =>
        Assert.Matches("^campaign.toml:[0-9]+: [^\n]+\n$",
            Refused("check", _outer.With("c/campaign.toml", text) is var _ ? Campaign : ""));

    [Theory]
    [InlineData('[', ']', 65)]
    [InlineData('[', ']', 100_000)]
    public void BracketsNestedDeepAreToldInOneLine(char open, char close, int depth)
    {
        _outer.With("c/campaign.toml", "title = " + new string(open, depth) + new string(close, depth) + "\n");
        Assert.StartsWith("campaign.toml: brackets are nested too deep; ", Refused("check", Campaign), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("choose")]
    [InlineData("init")]
    [InlineData("rehearse")]
    [InlineData("look")]
    [InlineData("lots")]
    public void NoPathSteersTheTerminal(string command)
    {
        string hostile = Path.Combine(_outer.Path, "c\e[31m\u009b");
        Directory.Move(Campaign, hostile);
        foreach (string[] words in (string[][])[[command, hostile], [command, hostile, hostile], [command, hostile + "x"],
            ["run", hostile, "--out", hostile + "r"]])
        {
            (_, string output, string error) = Shell.Run(words);
            Assert.DoesNotContain(output + error, c => char.IsControl(c) && c != '\n');
        }
    }

    [Theory]
    [InlineData("floor/report")]
    [InlineData("covered/A/report")]
    [InlineData("lnk/report")]
    public void AReportDoesNotLieAmongTheSweeps(string place)
    {
        Directory.CreateSymbolicLink(Path.Combine(Campaign, "lnk"), "reference");
        int before = Directory.GetFileSystemEntries(_outer.Path, "*", SearchOption.AllDirectories).Length;
        string error = Refused("run", Campaign, "--out", Path.Combine(Campaign, place));
        Assert.Contains("the report would lie among the sweeps of the campaign", error, StringComparison.Ordinal);
        Assert.Equal(before, Directory.GetFileSystemEntries(_outer.Path, "*", SearchOption.AllDirectories).Length);
    }

    [Fact]
    public void ManyFaultsAreToldInFewLines()
    {
        _outer.With("c/sweeps.csv", "file,role,taken_at\n"
            + string.Concat(Enumerable.Range(1, 300).Select(i => $"floor/f1.csv,r{new string('x', i)},\n")));
        Assert.InRange(Refused("check", Campaign).Count(c => c == '\n'), 1, 41);
        string many = string.Concat(Enumerable.Range(1, 2000).Select(i => $"key{i} = 1\n"));
        _outer.With("c/campaign.toml", many);
        Assert.InRange(Refused("check", Campaign, "--format", "json").Count(c => c == '\n'), 1, 1001);
    }

    [Fact]
    public void PngOfNoReportIsRefused() =>
        Assert.Contains("no --out says where", Refused("lots", Campaign, Shell.Demo, "--png"), StringComparison.Ordinal);

    private static string Refused(params string[] words)
    {
        (int code, string output, string error) = Shell.Run(words);
        Assert.Equal((2, ""), (code, output));
        return error;
    }
}
