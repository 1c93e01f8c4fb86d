using SweepStats.Acceptance.Commands;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>A link at a target that leads to nothing is called one, with what to do.</summary>
public sealed class LostLinks : IDisposable
{
    private readonly ScratchFolder _folder = new();

    private string Link => Path.Combine(_folder.Path, "link");

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("choose another folder with --out", "run")]
    [InlineData("name a new folder", "rehearse")]
    [InlineData("name another folder", "init")]
    public void ItIsNotTakenForAFile(string elsewhere, string command)
    {
        File.CreateSymbolicLink(Link, Path.Combine(_folder.Path, "gone"));
        Assert.EndsWith($"{Link}: this is a link to '{_folder.Path}/gone', which is not there; make that folder, remove the "
            + $"link, or {elsewhere}\n", Refused(command), StringComparison.Ordinal);
        Assert.Equal(["link"], Directory.EnumerateFileSystemEntries(_folder.Path).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData("choose another folder with --out", "run")]
    [InlineData("name a new folder", "rehearse")]
    [InlineData("name another folder", "init")]
    public void OneThatLeadsToItselfIsToldAsThat(string elsewhere, string command)
    {
        File.CreateSymbolicLink(Link, "link");
        Assert.EndsWith($"{Link}: this is a link that leads round in a circle; remove the link, or {elsewhere}\n",
            Refused(command), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("gone", "this is a link to 'gone', which is not there")]
    [InlineData("link", "this is a link that leads round in a circle")]
    public void InPlaceOfACampaignItIsToldToo(string to, string said)
    {
        File.CreateSymbolicLink(Link, to);
        Assert.Equal((2, "", $"{Link}: {said}; name the folder that holds campaign.toml, floor, reference and covered\n"),
            Shell.Run("check", Link));
    }

    [Fact]
    public void OneThatLeadsToAFolderIsFollowed()
    {
        Directory.CreateDirectory(Path.Combine(_folder.Path, "there"));
        Directory.CreateSymbolicLink(Link, "there");
        Assert.Equal(0, Shell.Run("run", Shell.Demo, "--out", Link, "--charts", "none", "--quiet").Code);
        Assert.True(File.Exists(Path.Combine(_folder.Path, "there/summary.json")));
    }

    private string Refused(string command)
    {
        (int code, string output, string error) =
            Shell.Run(command == "run" ? ["run", Shell.Demo, "--out", Link] : [command, Link]);
        Assert.Equal((2, ""), (code, output));
        return error;
    }
}
