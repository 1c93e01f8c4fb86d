using SweepStats.Acceptance.Files;
using SweepStats.Files.Places;
using SweepStats.Files.Results;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>
/// What a run finds that another one left behind. Kills of whole processes at random instants are in tests/faults.
/// </summary>
public sealed class KilledRuns : IDisposable
{
    private const string Run = "0123456789abcdef0123456789abcdef";

    private readonly ScratchFolder _folder = new();

    private string Place => Path.Combine(_folder.Path, "reports");

    private string Target => Path.Combine(Place, "autumn");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void WhatAKilledRunHadGatheredIsSwept()
    {
        _folder.With($"reports/.autumn.{Run}.part/index.html", "half").With($"reports/.autumn.{Run}.lock", "");
        Report("new");
        Assert.Equal(["autumn"], Names(Place));
    }

    [Fact]
    public void AnEarlierReportThatAKilledRunHadExchangedIsSwept()
    {
        Report("old");
        Directory.Move(Target, Path.Combine(Place, $".autumn.{Run}.part"));
        Report("new");
        Assert.Equal(["autumn"], Names(Place));
        Assert.Equal("new", File.ReadAllText(Path.Combine(Target, "index.html")));
    }

    [Fact]
    public void AFileOfSomebodyElseAmongWhatAKilledRunHadExchangedIsKept()
    {
        Report("old");
        Directory.Move(Target, Path.Combine(Place, $".autumn.{Run}.part"));
        _folder.With($"reports/.autumn.{Run}.part/thesis.txt", "years of work");
        Report("new");
        Report("newer");
        Assert.Equal("years of work", File.ReadAllText(Path.Combine(Place, "autumn.kept/thesis.txt")));
        Assert.Equal(["autumn", "autumn.kept"], Names(Place));
    }

    /// <summary>Systems without an exchange in one step take two, and a run may be killed between them.</summary>
    [Fact]
    public void AReportThatWasMovedAsideAndNotReplacedIsPutBack()
    {
        Report("old");
        Directory.Move(Target, Path.Combine(Place, $".autumn.{Run}.old"));
        using (new ReportFolder(Target))
        {
            Assert.Equal("old", File.ReadAllText(Path.Combine(Target, "index.html")));
        }

        Assert.Equal(["autumn"], Names(Place));
    }

    [Fact]
    public void NothingOfARunThatIsAliveIsTouched()
    {
        using var alive = new ReportFolder(Target);
        Write(alive, "index.html", "slow");
        Report("fast");
        Write(alive, "summary.json", Summary(alive));
        alive.Commit();
        Assert.Equal("slow", File.ReadAllText(Path.Combine(Target, "index.html")));
    }

    [Theory]
    [InlineData(".autumn.part")]
    [InlineData(".autumn.0123456789abcdef.part")]
    [InlineData(".autumn.0123456789abcdef0123456789abcdeF.part")]
    [InlineData(".autumn.0123456789abcdef0123456789abcdef.parts")]
    [InlineData(".winter.0123456789abcdef0123456789abcdef.part")]
    [InlineData("autumn.0123456789abcdef0123456789abcdef.part")]
    public void WhatIsNotNamedAsOursStays(string name)
    {
        _folder.With($"reports/{name}/thesis.txt", "years of work");
        Report("new");
        Assert.True(File.Exists(Path.Combine(Place, name, "thesis.txt")));
    }

    [Fact]
    public void FilesAreExchangedOneByOneWhereTheFolderMustStay()
    {
        Report("old", "charts/a.svg");
        string stage = Gathered("new", "charts/b.svg");
        Swap(stage).FileByFile();
        Assert.Equal(["charts", "index.html", "summary.json"], Names(Target).Where(name => name[0] != '.'));
        Assert.Equal(["b.svg"], Names(Path.Combine(Target, "charts")));
        Assert.Equal("new", File.ReadAllText(Path.Combine(Target, "index.html")));
    }

    /// <summary>Half of the new report beside half of the old: each file is known by the summary of one of them.</summary>
    [Fact]
    public void ARunThatWasKilledWhileItExchangedFileByFileIsMadeGoodByTheNext()
    {
        Report("old", "charts/a.svg");
        string stage = Gathered("new", "charts/b.svg");
        File.Move(Path.Combine(stage, "index.html"), Path.Combine(Target, "index.html"), overwrite: true);
        File.Move(Path.Combine(stage, "charts/b.svg"), Path.Combine(Target, "charts/b.svg"));
        Assert.Null(ReportFolder.Refusal(Target));
        Report("newest");
        Assert.Equal(["index.html", "summary.json"], Names(Target));
        Assert.Equal("newest", File.ReadAllText(Path.Combine(Target, "index.html")));
    }

    [Fact]
    public void TheFolderKeepsItsMode()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        Report("old");
        const UnixFileMode shared =
            UnixFileMode.SetGroup | UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.GroupExecute;
        File.SetUnixFileMode(Target, shared);
        Report("new");
        Assert.Equal(shared, File.GetUnixFileMode(Target));
    }

    /// <summary>
    /// Where the library has no name for the exchange in one step, as musl has none, the system does it by its number.
    /// </summary>
    [Fact]
    public void FoldersAreExchangedByTheNumberOfTheCallToo()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        _folder.With("one/a", "1").With("other/b", "2");
        Assert.Equal(0, UnixCalls.ExchangeByNumber(Path.Combine(_folder.Path, "one"), Path.Combine(_folder.Path, "other")));
        Assert.Equal(["b"], Names(Path.Combine(_folder.Path, "one")));
        Assert.Equal(["a"], Names(Path.Combine(_folder.Path, "other")));
    }

    [Fact]
    public void ANameOfTheGreatestLengthHasRoomForWhatStandsBesideIt()
    {
        string longest = Path.Combine(Place, new string('n', 255));
        using (var report = new ReportFolder(longest))
        {
            Write(report, "summary.json", Summary(report));
            report.Commit();
        }

        Assert.Equal([Path.GetFileName(longest)], Names(Place));
    }

    private FolderSwap Swap(string stage) => new(stage, Target, new Predecessor
    {
        What = "the report",
        Elsewhere = "elsewhere",
        Objection = folder => EarlierReport.Objection(folder, folder),
        Own = EarlierReport.Own,
        Remove = EarlierReport.Remove,
        Mark = "summary.json",
    });

    // A whole report in a folder within the target, as a run gathers it there.
    private string Gathered(string page, string chart)
    {
        string elsewhere = Path.Combine(_folder.Path, "elsewhere"), stage = Path.Combine(Target, $".autumn.{Run}.part");
        Report(page, chart, elsewhere);
        Directory.Move(elsewhere, stage);
        return stage;
    }

    private void Report(string page, string? chart = null, string? target = null)
    {
        using var report = new ReportFolder(target ?? Target);
        Write(report, "index.html", page);
        if (chart is not null)
        {
            Write(report, chart, page);
        }

        Write(report, "summary.json", Summary(report));
        report.Commit();
    }

    private static string Summary(ReportFolder report) => "{\"program\": \"sweepstats\", \"report_files\": ["
        + string.Join(", ", report.Written().Select(f => $"{{\"path\": \"{f.Path}\", \"sha256\": \"{f.Sha256}\"}}")) + "]}";

    private static IEnumerable<string> Names(string folder) =>
        Directory.EnumerateFileSystemEntries(folder).Select(p => Path.GetFileName(p)!).Order(StringComparer.Ordinal);

    private static void Write(ReportFolder report, string path, string text)
    {
        using var writer = new StreamWriter(report.Create(path));
        writer.Write(text);
    }
}
