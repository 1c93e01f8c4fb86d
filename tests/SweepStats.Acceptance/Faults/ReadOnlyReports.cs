using SweepStats.Acceptance.Commands;
using SweepStats.Acceptance.Files;
using SweepStats.Files.Results;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>
/// A report that its owner made read-only is replaced as any other, where the folder above allows it, and is read-only again.
/// </summary>
public sealed class ReadOnlyReports : IDisposable
{
    private readonly ScratchFolder _outer = new();

    private string Report => Path.Combine(_outer.Path, "place/report");

    public void Dispose()
    {
        foreach (string folder in Directory.EnumerateDirectories(_outer.Path, "*", SearchOption.AllDirectories))
        {
            SetMode(folder, "700");
        }

        _outer.Dispose();
    }

    [Theory]
    [InlineData("555")]
    [InlineData("500")]
    [InlineData("700")]
    [InlineData("2770")]
    public void ItIsReplacedAndKeepsItsMode(string mode)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        MakeEarlier();
        string earlier = File.ReadAllText(Path.Combine(Report, "summary.json"));
        SetMode(Path.Combine(Report, "charts"), mode);
        SetMode(Report, mode);
        Assert.Equal((0, ""), Run("6"));
        Assert.NotEqual(earlier, File.ReadAllText(Path.Combine(Report, "summary.json")));
        Assert.Equal(Convert.ToInt32(mode, 8), (int)File.GetUnixFileMode(Report));
        Assert.Equal(["report"],
            Directory.EnumerateFileSystemEntries(Path.Combine(_outer.Path, "place")).Select(Path.GetFileName));
    }

    /// <summary>A folder that only its owner may look into is gathered in one that only its owner may look into.</summary>
    [Fact]
    public void WhatIsGatheredForAPrivateFolderIsPrivate()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        Directory.CreateDirectory(Report);
        SetMode(Report, "500");
        using var report = new ReportFolder(Report);
        Assert.Equal(Convert.ToInt32("700", 8), (int)File.GetUnixFileMode(Path.GetDirectoryName(report.Gathered("index.html"))!));
    }

    /// <summary>What a run left that was killed between its last two acts, of a read-only folder, is swept too.</summary>
    [Fact]
    public void WhatAKilledRunLeftOfOneIsSwept()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        string left = Path.Combine(_outer.Path, "place/.report.0123456789abcdef0123456789abcdef.part");
        _outer.With(Path.Combine(left, "index.html"), "half");
        SetMode(left, "555");
        Assert.Equal((0, ""), Run("5"));
        Assert.False(Path.Exists(left));
    }

    /// <summary>What is kept of a read-only report, since somebody put a file into it, is as read-only as it was.</summary>
    [Fact]
    public void WhatIsKeptOfOneIsReadOnlyStill()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        MakeEarlier();
        string left = Path.Combine(_outer.Path, "place/.report.0123456789abcdef0123456789abcdef.part");
        Directory.Move(Report, left);
        _outer.With(Path.Combine(left, "charts/thesis.txt"), "years of work");
        SetMode(Path.Combine(left, "charts"), "500");
        SetMode(left, "555");
        Assert.Equal((0, ""), Run("6"));
        string kept = Path.Combine(_outer.Path, "place/report.kept");
        Assert.Equal("years of work", File.ReadAllText(Path.Combine(kept, "charts/thesis.txt")));
        Assert.Equal(Convert.ToInt32("555", 8), (int)File.GetUnixFileMode(kept));
        Assert.Equal(Convert.ToInt32("500", 8), (int)File.GetUnixFileMode(Path.Combine(kept, "charts")));
    }

    // Nothing is read-only yet: it needs no process of its own, which takes seconds to start.
    private void MakeEarlier() => Assert.Equal(0, Shell.Run(Line("5")).Code);

    private (int Code, string Error) Run(string seed)
    {
        using var run = new OwnProcess(Line(seed));
        return run.End();
    }

    private string[] Line(string seed) =>
        ["run", Shell.Demo, "--out", Report, "--charts", "summary", "--seed", seed, "--quiet"];

    private static void SetMode(string folder, string mode)
    {
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(folder, (UnixFileMode)Convert.ToInt32(mode, 8));
        }
    }
}
