using SweepStats.Files.Results;
using Xunit;

namespace SweepStats.Acceptance.Files;

public sealed class ReportFolders : IDisposable
{
    private readonly ScratchFolder _folder = new();

    private string Target => Path.Combine(_folder.Path, "reports", "autumn");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void AReportAppearsWholeOnCommit()
    {
        using (var report = new ReportFolder(Target))
        {
            Write(report, "summary.json", "{}");
            Write(report, "charts/a.svg", "<svg/>");
            Assert.False(Directory.Exists(Target));
            report.Commit();
        }

        Assert.Equal("<svg/>", File.ReadAllText(Path.Combine(Target, "charts", "a.svg")));
        Assert.Single(Directory.EnumerateFileSystemEntries(Path.Combine(_folder.Path, "reports")));
    }

    [Fact]
    public void WithoutCommitNothingIsLeft()
    {
        using (var report = new ReportFolder(Target))
        {
            Write(report, "summary.json", "{}");
        }

        Assert.Empty(Directory.EnumerateFileSystemEntries(Path.Combine(_folder.Path, "reports")));
    }

    [Fact]
    public void AnEarlierReportIsReplacedWhole()
    {
        _folder.With("reports/autumn/summary.json", "{}").With("reports/autumn/old.csv", "1");
        using (var report = new ReportFolder(Target))
        {
            Write(report, "summary.json", "{\"new\": 1}");
            report.Commit();
        }

        Assert.Equal(["summary.json"], Directory.EnumerateFileSystemEntries(Target).Select(Path.GetFileName));
        Assert.Single(Directory.EnumerateFileSystemEntries(Path.Combine(_folder.Path, "reports")));
    }

    [Fact]
    public void AnythingElseAtTheTargetIsLeftAlone()
    {
        _folder.With("reports/autumn/thesis.txt", "years of work").With("reports/file", "x");
        Assert.Contains("has no summary.json", ReportFolder.Refusal(Target)!.Problem, StringComparison.Ordinal);
        Assert.Contains("a file of this name", ReportFolder.Refusal(Path.Combine(_folder.Path, "reports", "file"))!.Problem, StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(() => new ReportFolder(Target));
        Assert.Equal("years of work", File.ReadAllText(Path.Combine(Target, "thesis.txt")));
    }

    [Theory]
    [InlineData("../x")]
    [InlineData("/tmp/x")]
    [InlineData("a/../../x")]
    public void NoFileOfAReportLiesOutsideIt(string path)
    {
        using var report = new ReportFolder(Target);
        Assert.Throws<ArgumentException>(() => report.Create(path));
    }

    private static void Write(ReportFolder report, string path, string text)
    {
        using var writer = new StreamWriter(report.Create(path));
        writer.Write(text);
    }
}
