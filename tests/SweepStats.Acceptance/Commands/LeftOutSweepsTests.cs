using System.Text.Json;
using System.Xml.Linq;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>Sweeps and placements that the manifest leaves out: out of the numbers, and in every account of them.</summary>
public sealed class LeftOutSweepsTests : IDisposable
{
    private const string Sweep = "covered/A/A01/p1/covered-02.csv";
    private const string Placement = "covered/A/A01/p3/";
    private const string SweepReason = "door stood open";
    private const string PlacementReason = "curtain hung askew, \"seam\" up";

    private readonly ScratchFolder _scratch = new();

    public LeftOutSweepsTests()
    {
        Assert.Equal(0,
            Shell.Run("rehearse", Campaign, "--points", "21", "--placements", "4", "--sweeps", "3", "--se", "30").Code);
        string[] files = [.. Directory.GetFiles(Campaign, "*.csv", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Campaign, f).Replace('\\', '/'))
            .Where(f => f.Contains('/', StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
        Assert.Contains(Sweep, files);
        File.WriteAllLines(Path.Combine(Campaign, "sweeps.csv"),
            [.. files.Select(Row).Prepend("file,role,lot,specimen,placement,exclude")]);
    }

    private string Campaign => Path.Combine(_scratch.Path, "c");

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void TheyStayInTheReportWithTheirReasons()
    {
        string folder = Report();
        XDocument page =
            XDocument.Parse(System.Text.RegularExpressions.Regex.Replace(File.ReadAllText(Path.Combine(folder, "index.html")),
                "<!DOCTYPE[^>]*>|<meta[^>]*>", ""));
        var rows = page.Descendants("tr").Select(r => r.Elements().Select(c => c.Value).ToArray())
            .Where(r => r[^1].StartsWith("left out by the user", StringComparison.Ordinal)).ToList();
        Assert.Equal(4, rows.Count);
        Assert.Equal([Sweep, "covered, A/A01, placement p1", "left out by the user: " + SweepReason], rows[0]);
        Assert.All(rows[1..],
            r => Assert.Equal(["covered, A/A01, placement p3", "left out by the user: " + PlacementReason], r[1..]));
        Assert.Contains("4 sweeps were left out by the user", page.Root!.Value, StringComparison.Ordinal);
        string used = Assert.Single(page.Descendants("tr"),
            r => r.Elements().First().Value == "Covered, A/A01" && r.Value.Contains(".csv", StringComparison.Ordinal)).Value;
        Assert.DoesNotContain(Sweep, used, StringComparison.Ordinal);
        Assert.DoesNotContain(Placement, used, StringComparison.Ordinal);
    }

    [Fact]
    public void TheSummaryListsEachOfThem()
    {
        using JsonDocument summary = JsonDocument.Parse(File.ReadAllText(Path.Combine(Report(), "summary.json")));
        var excluded = summary.RootElement.GetProperty("excluded").EnumerateArray()
            .Select(e => (Sweep: e.GetProperty("sweep").GetString()!, Reason: e.GetProperty("reason").GetString()!)).ToList();
        Assert.Contains((Sweep, SweepReason), excluded);
        Assert.Equal(3,
            excluded.Count(e => e.Sweep.StartsWith(Placement, StringComparison.Ordinal) && e.Reason == PlacementReason));
        JsonElement sweeps = summary.RootElement.GetProperty("counts").GetProperty("sweeps");
        Assert.Equal((8, 4), (sweeps.GetProperty("covered").GetInt32(), sweeps.GetProperty("excluded").GetInt32()));
    }

    [Fact]
    public void TheCheckNamesThemAndTheNumbersRestOnTheOthers()
    {
        Assert.Contains("Left out by the user: 4 sweeps; their reasons: --verbose", Shell.Run("check", Campaign).Out,
            StringComparison.Ordinal);
        (int code, string output, _) = Shell.Run("check", Campaign, "--verbose");
        Assert.Equal(0, code);
        string[] lines = [.. output.Split('\n').Select(l => l.TrimEnd('\r'))
            .Where(l => l.StartsWith("Left out by the user: ", StringComparison.Ordinal))];
        Assert.Equal(4, lines.Length);
        Assert.Contains($"Left out by the user: {Sweep} (covered, A/A01, placement p1): {SweepReason}", lines);
        Assert.Equal(3, lines.Count(l => l.EndsWith(PlacementReason, StringComparison.Ordinal)));
        string[] reading = File.ReadAllLines(Path.Combine(Report(), "shielding.csv"))[1].Split(',');
        Assert.Equal(("8", "3"), (reading[3], reading[4]));
    }

    private string Report()
    {
        string folder = Path.Combine(_scratch.Path, "report");
        Assert.Equal(0, Shell.Run("run", Campaign, "--out", folder).Code);
        return folder;
    }

    private static string Row(string file)
    {
        string[] parts = file.Split('/');
        string reason = file == Sweep ? SweepReason : file.StartsWith(Placement, StringComparison.Ordinal)
            ? "\"" + PlacementReason.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : "";
        return parts[0] == "covered" ? $"{file},covered,{parts[1]},{parts[2]},{parts[3]},{reason}" : $"{file},{parts[0]},,,,";
    }
}
