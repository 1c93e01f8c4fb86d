using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class RunTests
{
    // The demo as one thread reports it.
    private static readonly Lazy<SortedDictionary<string, string>> OfOneThread = new(() =>
    {
        using var scratch = new ScratchFolder();
        Assert.Equal(0, Report(scratch, "one", "--threads", "1"));
        return Contents(Path.Combine(scratch.Path, "one"));
    });

    [Fact]
    public void TheDemoReportInTheRepositoryIsWhatTheProgramWrites() =>
        Assert.Equal(Contents(Path.Combine(Repository.Root, "reports/receiver-cabin-curtain")), OfOneThread.Value);

    [Fact]
    public void TheDemoCampaignIsWhatItsOriginSays()
    {
        using var scratch = new ScratchFolder();
        string script = File.ReadAllText(Path.Combine(Repository.Root, "fixtures/campaigns/make-demo.sh"));
        string command = script[(script.IndexOf("sweepstats rehearse \"$campaign\"", StringComparison.Ordinal) + 31)..];
        string stated =
            script[(script.IndexOf("<<'STATED'\n", StringComparison.Ordinal) + 11)..script.IndexOf("STATED\nmv ",
                StringComparison.Ordinal)];
        command = command[..command.IndexOf("\n#", StringComparison.Ordinal)].Replace("\\\n", " ", StringComparison.Ordinal);
        string[] words = ["rehearse", Path.Combine(scratch.Path, "demo"), .. Words(command)];
        (int code, _, string error) = Shell.Run(words);
        Assert.True(code == 0, error);
        File.AppendAllText(Path.Combine(scratch.Path, "demo/campaign.toml"), stated);
        string list = Path.Combine(scratch.Path, "demo/sweeps.csv");
        File.WriteAllText(list, Priced(File.ReadAllLines(list), script));
        Assert.Equal(Contents(Shell.Demo).Where(f => f.Key != "origin.md"), Contents(Path.Combine(scratch.Path, "demo")));
    }

    [Fact]
    public void TwoThreadsAndACommaCultureGiveTheSameBytes()
    {
        using var scratch = new ScratchFolder();
        SortedDictionary<string, string> one = OfOneThread.Value;
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Report(scratch, "two", "--threads", "2");
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("tr-TR");
            Report(scratch, "three", "--threads", "2");
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Assert.Equal(one, Contents(Path.Combine(scratch.Path, "two")));
        Assert.Equal(one, Contents(Path.Combine(scratch.Path, "three")));
    }

    [Fact]
    public void ACappedReadingIsNeverAPointInShieldingCsv()
    {
        var rows = File.ReadLines(Path.Combine(Repository.Root, "reports/receiver-cabin-curtain/shielding.csv")).Skip(1)
            .Select(l => l.Split(',')).ToList();
        var capped = rows.Where(r => r[14] == "capped").ToList();
        Assert.NotEmpty(capped);
        Assert.All(capped, r => Assert.True(r[9].Length == 0 && r[10].Length > 0 && r[11].Length == 0));
        Assert.All(rows.Where(r => r[14] != "capped"), r => Assert.True(r[9].Length > 0));
    }

    [Fact]
    public void TheDemosIntervalsHoldItsTruth()
    {
        string[][] Rows(string file) =>
            [.. File.ReadLines(Path.Combine(Repository.Root, file)).Skip(1).Select(l => l.Split(','))];
        var truth = Rows("fixtures/campaigns/receiver-cabin-curtain/truth.csv")
            .ToDictionary(r => (r[1], r[2]), r => Number(r[3]));
        string[][] shielding = Rows("reports/receiver-cabin-curtain/shielding.csv");
        int held = shielding.Count(
            r => Number(r[10]) <= truth[(r[1], r[2])] && (r[11].Length == 0 || truth[(r[1], r[2])] <= Number(r[11])));
        // Placement and reference errors are shared by the frequencies of a specimen, so that the share scatters more than a
        // binomial one.
        Assert.InRange((double)held / shielding.Length, 0.85, 1);
    }

    [Theory]
    [InlineData("c", "c")]
    [InlineData("../c", "../c")]
    [InlineData(".", null)]
    [InlineData("./", null)]
    public void AFolderThatIsOnlyDotsIsCalledByItsName(string typed, string? told) =>
        Assert.Equal(told ?? new DirectoryInfo(Environment.CurrentDirectory).Name, Cli.CampaignAnalysis.Named(typed));

    [Fact]
    public void ACampaignWithoutFloorSaysSoInTheVerdict()
    {
        using var scratch = new ScratchFolder();
        Shell.Run("rehearse", Path.Combine(scratch.Path, "c"), "--floor-sweeps", "0", "--points", "21");
        (int code, string output, _) =
            Shell.Run("run", Path.Combine(scratch.Path, "c"), "--out", Path.Combine(scratch.Path, "r"));
        Assert.Equal(0, code);
        Assert.Contains("no floor", output.Split('\n')[1], StringComparison.OrdinalIgnoreCase);
        Assert.Contains("no-floor", File.ReadAllText(Path.Combine(scratch.Path, "r/findings.csv")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("40", "30", 0)]
    [InlineData("40", "60", 1)]
    public void AGateStopsWhatDoesNotMeetItsRequirement(string truth, string wanted, int expected)
    {
        using var scratch = new ScratchFolder();
        Shell.Run("rehearse", Path.Combine(scratch.Path, "c"), "--points", "21", "--se", truth, "--requirement", wanted);
        Assert.Equal(expected, Shell.Run("run", Path.Combine(scratch.Path, "c"), "--out", Path.Combine(scratch.Path, "r"),
            "--gate", "--quiet").Code);
        Assert.Equal(0,
            Shell.Run("run", Path.Combine(scratch.Path, "c"), "--out", Path.Combine(scratch.Path, "r"), "--quiet").Code);
    }

    [Fact]
    public void JsonOnTheConsoleIsTheSummary()
    {
        using var scratch = new ScratchFolder();
        Shell.Run("rehearse", Path.Combine(scratch.Path, "c"), "--points", "21");
        (_, string output, _) =
            Shell.Run("run", Path.Combine(scratch.Path, "c"), "--out", Path.Combine(scratch.Path, "r"), "--format", "json");
        Assert.Equal("limited", JsonDocument.Parse(output).RootElement.GetProperty("trust").GetString());
        Assert.Equal(File.ReadAllText(Path.Combine(scratch.Path, "r/summary.json")).TrimEnd(), output.TrimEnd());
    }

    [Fact]
    public void BadInputWritesNothingAndListsEveryFault()
    {
        using var scratch = new ScratchFolder();
        scratch.With("c/floor/a.csv", "frequency_hz,level_dbm\n1e6,-90\n1e6,-91\n2e6,-90\n")
            .With("c/reference/b.csv", "frequency_hz,level_dbm\n1e6,x\n")
            .With("c/covered/A/A1/c.csv", "frequency_hz,level_dbm\n1e6,-60\n2e6,-61\n3e6,-62\n")
            .With("c/campaign.toml", "titel = \"x\"\n");
        (int code, string output, string error) =
            Shell.Run("run", Path.Combine(scratch.Path, "c"), "--out", Path.Combine(scratch.Path, "r"));
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.False(Directory.Exists(Path.Combine(scratch.Path, "r")));
        string[] lines = error.TrimEnd().Split('\n');
        Assert.Contains(lines, l => l.StartsWith("campaign.toml:1:", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("floor/a.csv:3:", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("reference/b.csv", StringComparison.Ordinal));
    }

    [Fact]
    public void KeepGoingLeavesTheBadFileOutAndSaysSo()
    {
        using var scratch = new ScratchFolder();
        Shell.Run("rehearse", Path.Combine(scratch.Path, "c"), "--points", "21");
        scratch.With("c/floor/broken.csv", "frequency_hz,level_dbm\n1e6,x\n");
        Assert.Equal(2, Shell.Run("run", Path.Combine(scratch.Path, "c"), "--out", Path.Combine(scratch.Path, "r")).Code);
        (int code, string output, _) =
            Shell.Run("run", Path.Combine(scratch.Path, "c"), "--out", Path.Combine(scratch.Path, "r"), "--keep-going");
        Assert.Equal(0, code);
        Assert.Contains("floor/broken.csv", output, StringComparison.Ordinal);
        Assert.Contains("floor/broken.csv", File.ReadAllText(Path.Combine(scratch.Path, "r/index.html")),
            StringComparison.Ordinal);
    }

    [Fact]
    public void ARunReplacesItsOwnReportButNoChartOfSomebodyElseInIt()
    {
        using var scratch = new ScratchFolder();
        Shell.Run("rehearse", Path.Combine(scratch.Path, "c"), "--points", "21");
        string[] words = ["run", Path.Combine(scratch.Path, "c"), "--out", Path.Combine(scratch.Path, "r")];
        Assert.Equal(0, Shell.Run(words).Code);
        Assert.Equal(0, Shell.Run(words).Code);
        scratch.With("r/charts/own.svg", "years of work");
        (int code, _, string error) = Shell.Run(words);
        Assert.Equal(2, code);
        Assert.Contains("charts/own.svg", error, StringComparison.Ordinal);
        Assert.Equal("years of work", File.ReadAllText(Path.Combine(scratch.Path, "r/charts/own.svg")));
    }

    [Fact]
    public void ChartsOfAnEarlierReportAreNotLeftBehind()
    {
        using var scratch = new ScratchFolder();
        string campaign = Path.Combine(scratch.Path, "c"), report = Path.Combine(scratch.Path, "r");
        Shell.Run("rehearse", campaign, "--points", "21");
        Assert.Equal(0, Shell.Run("run", campaign, "--out", report).Code);
        Assert.NotEmpty(Directory.GetFiles(Path.Combine(report, "charts")));
        Assert.Equal(0, Shell.Run("run", campaign, "--out", report, "--charts", "none").Code);
        Assert.False(Directory.Exists(Path.Combine(report, "charts")));
        Assert.Equal(0, Shell.Run("run", campaign, "--out", report, "--charts", "all").Code);
        Assert.NotEmpty(Directory.GetFiles(Path.Combine(report, "charts")));
    }

    [Fact]
    public void TheSummaryListsEachFileWithTheHashOfWhatLiesThere()
    {
        using var scratch = new ScratchFolder();
        string campaign = Path.Combine(scratch.Path, "c"), report = Path.Combine(scratch.Path, "r");
        Shell.Run("rehearse", campaign, "--points", "21");
        Assert.Equal(0, Shell.Run("run", campaign, "--out", report).Code);
        using JsonDocument summary = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(report, "summary.json")));
        Dictionary<string, string> listed = summary.RootElement.GetProperty("report_files").EnumerateArray()
            .ToDictionary(f => f.GetProperty("path").GetString()!, f => f.GetProperty("sha256").GetString()!);
        Dictionary<string, string> there =
            Directory.GetFiles(report, "*", SearchOption.AllDirectories).Where(f => Path.GetFileName(f) != "summary.json")
            .ToDictionary(f => Path.GetRelativePath(report, f).Replace('\\', '/'),
                f => Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(f))));
        Assert.Equal(there.OrderBy(f => f.Key, StringComparer.Ordinal), listed.OrderBy(f => f.Key, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("--charts", "some")]
    [InlineData("--charts", "none", "--png")]
    public void ChartsThatCannotBeAreRefusedBeforeAnythingIsRead(params string[] words)
    {
        (int code, _, string error) = Shell.Run(["run", "nowhere", .. words]);
        Assert.Equal(2, code);
        Assert.Contains(words.Length == 2 ? "'some'" : "--png needs charts", error, StringComparison.Ordinal);
        Assert.DoesNotContain("nowhere", error, StringComparison.Ordinal);
    }

    [Fact]
    public void AFolderThatIsNoReportIsNotReplaced()
    {
        using var scratch = new ScratchFolder();
        scratch.With("thesis/chapter1.txt", "years of work");
        (int code, _, string error) = Shell.Run("run", Shell.Demo, "--out", Path.Combine(scratch.Path, "thesis"));
        Assert.Equal(2, code);
        Assert.Contains("--out", error, StringComparison.Ordinal);
        Assert.Equal("years of work", File.ReadAllText(Path.Combine(scratch.Path, "thesis/chapter1.txt")));
    }

    private static int Report(ScratchFolder scratch, string name, params string[] more) =>
        Shell.Run(["run", Shell.Demo, "--out", Path.Combine(scratch.Path, name), "--quiet", .. more]).Code;

    // The time stamp too: a rehearsed campaign carries its own.
    private static SortedDictionary<string, string> Contents(string folder)
    {
        var contents = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (string file in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
        {
            contents.Add(Path.GetRelativePath(folder, file), File.ReadAllText(file));
        }

        return contents;
    }

    // What the script adds to the list of sweeps: a price and a weight for the lot of each covered one, both as the script has
    // them.
    private static string Priced(string[] list, string script)
    {
        string Of(string column, string lot) =>
            System.Text.RegularExpressions.Regex.Match(script, $"{column}\\[\"{lot}\"\\] = ([0-9]+)") is { Success: true } found
                ? found.Groups[1].Value : throw new InvalidOperationException($"{column} of {lot}");
        IEnumerable<string> rows = list.Skip(1).Select(row => row.Split(',') is var cells && cells[1] == "covered"
            ? $"{row},{Of("price", cells[2])},{Of("weight", cells[2])}" : row + ",,");
        return string.Concat(rows.Prepend(list[0] + ",price_eur_m2,weight_g_m2").Select(row => row + "\n"));
    }

    private static IEnumerable<string> Words(string command) =>
        System.Text.RegularExpressions.Regex.Matches(command, "\"([^\"]*)\"|(\\S+)")
            .Select(m => m.Groups[1].Success ? m.Groups[1].Value : m.Groups[2].Value);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
