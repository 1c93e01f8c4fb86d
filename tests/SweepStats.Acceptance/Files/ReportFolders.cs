using SweepStats.Cli;
using SweepStats.Files;
using SweepStats.Files.Results;
using SweepStats.Report;
using Xunit;

namespace SweepStats.Acceptance.Files;

public sealed class ReportFolders : IDisposable
{
    private static readonly string[] Listed =
        ["index.html", "shielding.csv", "bands.csv", "findings.csv", "charts/a.svg", "charts/a.png"];

    // Every listed file holds the text "1", whose SHA-256 is a value of common knowledge (sha256sum).
    private static readonly string Ours = "{\"schema_version\": 1, \"program\": \"sweepstats\", \"report_files\": ["
        + string.Join(", ",
            Listed.Select(f => $"{{\"path\": \"{f}\", \"sha256\": "
                + "\"6b86b273ff34fce19d6b804eff5a3f5747ada4eaa22f1d49c01e52ddb7875b4b\"}")) + "]}";

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

    /// <summary>
    /// A chart that cannot be written, as on a full disk, is a matter of the disk and no defect of the program.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(8)]
    public void WhatKeepsAChartFromBeingWrittenIsToldAsItself(int threads)
    {
        // Of a file and a folder of one name the later one cannot be made.
        ReportFile[] files = [.. Enumerable.Range(0, 12)
            .SelectMany(i => new[] { new ReportFile($"charts/{i}", [1]), new ReportFile($"charts/{i}/a.svg", [1]) })];
        var terminal = new Terminal(TextWriter.Null, TextWriter.Null, Interactive: false);
        var report = new WantedReport(Target, threads) { Pages = () => [.. files], Tables = [], Summary = (_, _) => { } };
        Assert.ThrowsAny<IOException>(() => ReportOutput.Write(report, terminal));
        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void WithoutCommitNothingIsLeft()
    {
        using (var report = new ReportFolder(Target))
        {
            Write(report, "summary.json", "{}");
        }

        Assert.Empty(Directory.EnumerateFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void AnEarlierReportIsReplacedWhole()
    {
        WithEarlierReport();
        using (var report = new ReportFolder(Target))
        {
            Write(report, "summary.json", "{\"new\": 1}");
            report.Commit();
        }

        Assert.Equal(["summary.json"], Directory.EnumerateFileSystemEntries(Target).Select(Path.GetFileName));
        Assert.Contains("new", File.ReadAllText(Path.Combine(Target, "summary.json")), StringComparison.Ordinal);
        Assert.Single(Directory.EnumerateFileSystemEntries(Path.Combine(_folder.Path, "reports")));
    }

    [Theory]
    [InlineData("thesis.txt", "thesis.txt")]
    [InlineData("old.csv", "old.csv")]
    [InlineData("INDEX.HTML", "INDEX.HTML")]
    [InlineData("data/a.csv", "data")]
    [InlineData(".git/config", ".git")]
    [InlineData("charts/mine.xlsx", "charts/mine.xlsx")]
    [InlineData("charts/raw/a.svg", "charts/raw")]
    [InlineData("charts/own.svg", "charts/own.svg")]
    [InlineData("charts/own.png", "charts/own.png")]
    public void AFileOfSomebodyElseInAnEarlierReportForbidsToReplaceIt(string file, string named)
    {
        WithEarlierReport().With("reports/autumn/" + file, "years of work");
        ReadFault fault = ReportFolder.Refusal(Target)!;
        Assert.Equal($"the folder holds '{named}', which is no part of an earlier report", fault.Problem);
        Assert.Contains("--out", fault.Remedy, StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(() => new ReportFolder(Target));
        Assert.Equal("years of work", File.ReadAllText(Path.Combine(Target, file)));
        Assert.Equal(Ours, File.ReadAllText(Path.Combine(Target, "summary.json")));
    }

    [Theory]
    [InlineData("shielding.csv")]
    [InlineData("charts/a.svg")]
    [InlineData("index.html")]
    public void AFileOfTheReportThatWasChangedSinceIsNotOverwritten(string file)
    {
        WithEarlierReport().With("reports/autumn/" + file, "with my remarks");
        Assert.Equal($"the folder holds '{file}', which was changed after the report was written",
            ReportFolder.Refusal(Target)!.Problem);
        Assert.Throws<InvalidOperationException>(() => new ReportFolder(Target));
        Assert.Equal("with my remarks", File.ReadAllText(Path.Combine(Target, file)));
    }

    [Theory]
    [InlineData("")]
    [InlineData(", \"report_files\": null")]
    [InlineData(", \"report_files\": [null, {\"path\": \"bands.csv\"}]")]
    public void ASummaryThatListsNothingClaimsNothing(string list)
    {
        WithEarlierReport().With("reports/autumn/summary.json", $"{{\"program\": \"sweepstats\"{list}}}");
        Assert.Contains("'bands.csv', which is no part of an earlier report", ReportFolder.Refusal(Target)!.Problem,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("{\"program\": \"other\"}")]
    [InlineData("{\"program\": 1}")]
    [InlineData("{\"program\": \"sweepstats\", \"report_files\": 1}")]
    [InlineData("{\"program\": \"sweepstats\", \"report_files\": [1]}")]
    [InlineData("{\"program\": \"sweepstats\", \"report_files\": [{\"path\": 1}]}")]
    [InlineData("{\"program\": \"\\uD800\"}")]
    [InlineData("[\"program\", \"sweepstats\"]")]
    [InlineData("\"program\": \"sweepstats\"")]
    [InlineData("")]
    public void ASummaryOfAnotherProgramIsLeftAlone(string text)
    {
        _folder.With("reports/autumn/summary.json", text);
        Assert.Contains("'summary.json' but no summary.json of sweepstats", ReportFolder.Refusal(Target)!.Problem,
            StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(() => new ReportFolder(Target));
        Assert.Equal(text, File.ReadAllText(Path.Combine(Target, "summary.json")));
    }

    [Fact]
    public void NamesOfAReportWithoutItsSummaryAreLeftAlone()
    {
        _folder.With("reports/autumn/index.html", "my page");
        Assert.Contains("'index.html' but no summary.json", ReportFolder.Refusal(Target)!.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void AFileThatComesWhileTheReportIsWrittenIsKept()
    {
        WithEarlierReport();
        using (var report = new ReportFolder(Target))
        {
            Write(report, "summary.json", "{\"new\": 1}");
            _folder.With("reports/autumn/notes.txt", "years of work");
            Assert.Contains("notes.txt", Assert.ThrowsAny<IOException>(() => report.Commit()).Message, StringComparison.Ordinal);
        }

        Assert.Equal("years of work", File.ReadAllText(Path.Combine(Target, "notes.txt")));
        Assert.Equal(Ours, File.ReadAllText(Path.Combine(Target, "summary.json")));
        Assert.Single(Directory.EnumerateFileSystemEntries(Path.Combine(_folder.Path, "reports")));
    }

    [Fact]
    public void WhatTheSystemLeftInAReportMovesAlong()
    {
        WithEarlierReport().With("reports/autumn/.DS_Store", "a").With("reports/autumn/charts/Thumbs.db", "b");
        using (var report = new ReportFolder(Target))
        {
            Write(report, "summary.json", Ours);
            report.Commit();
        }

        Assert.Equal("a", File.ReadAllText(Path.Combine(Target, ".DS_Store")));
        Assert.Equal("b", File.ReadAllText(Path.Combine(Target, "charts", "Thumbs.db")));
        Assert.Single(Directory.EnumerateFileSystemEntries(Path.Combine(_folder.Path, "reports")));
    }

    [Fact]
    public void BehindALinkTheFolderItLeadsToIsReplaced()
    {
        WithEarlierReport();
        string link = Path.Combine(_folder.Path, "latest");
        Directory.CreateSymbolicLink(link, Target);
        using (var report = new ReportFolder(link))
        {
            Write(report, "summary.json", "{\"new\": 1}");
            report.Commit();
        }

        Assert.NotNull(new DirectoryInfo(link).LinkTarget);
        Assert.Equal(["summary.json"], Directory.EnumerateFileSystemEntries(Target).Select(Path.GetFileName));
    }

    [Fact]
    public void AnythingElseAtTheTargetIsLeftAlone()
    {
        _folder.With("reports/autumn/thesis.txt", "years of work").With("reports/file", "x");
        Assert.Contains("'thesis.txt'", ReportFolder.Refusal(Target)!.Problem, StringComparison.Ordinal);
        Assert.Contains("a file of this name", ReportFolder.Refusal(Path.Combine(_folder.Path, "reports", "file"))!.Problem,
            StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(() => new ReportFolder(Target));
        Assert.Equal("years of work", File.ReadAllText(Path.Combine(Target, "thesis.txt")));
    }

    // A file in the way stops everybody, administrators too; a folder without permission would not.
    [Fact]
    public void WhereNothingCanBeCreatedTheMessageNamesTheTarget()
    {
        _folder.With("file", "x");
        string target = Path.Combine(_folder.Path, "file", "r");
        string message = Assert.Throws<IOException>(() => new ReportFolder(target)).Message;
        Assert.StartsWith(target + ": the report cannot be written", message, StringComparison.Ordinal);
        Assert.Contains("choose another folder with --out, or see whether you may write there", message,
            StringComparison.Ordinal);
        Assert.DoesNotContain(".part", message, StringComparison.Ordinal);
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

    private ScratchFolder WithEarlierReport()
    {
        foreach (string file in Listed)
        {
            _folder.With("reports/autumn/" + file, "1");
        }

        return _folder.With("reports/autumn/summary.json", Ours);
    }

    private static void Write(ReportFolder report, string path, string text)
    {
        using var writer = new StreamWriter(report.Create(path));
        writer.Write(text);
    }
}
