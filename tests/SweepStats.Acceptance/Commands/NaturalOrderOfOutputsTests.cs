using System.Text.Json;
using System.Text.RegularExpressions;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>Specimens s1 to s12 of lots 2 and 10 stand as people count, wherever they are listed.</summary>
public sealed partial class NaturalOrderOfOutputsTests : IDisposable
{
    private static readonly string[] InOrder =
        [.. from lot in new[] { 2, 10 } from i in Enumerable.Range(1, 12) select $"lot{lot}/s{i}"];

    private readonly ScratchFolder _scratch = new();

    public NaturalOrderOfOutputsTests()
    {
        Shell.Run("rehearse", Folder, "--points", "11", "--lots", "2", "--specimens", "12", "--placements", "2", "--sweeps", "2");
        foreach ((string drawn, string lot) in new[] { ("A", "lot2"), ("B", "lot10") })
        {
            Directory.Move(Path.Combine(Folder, "covered", drawn), Path.Combine(Folder, "covered", lot));
            for (int i = 1; i <= 12; i++)
            {
                Directory.Move(Path.Combine(Folder, "covered", lot, $"{drawn}{i:00}"),
                    Path.Combine(Folder, "covered", lot, $"s{i}"));
            }
        }
    }

    private string Folder => Path.Combine(_scratch.Path, "c");

    private string Report => Path.Combine(_scratch.Path, "r");

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void ConsolePageTablesSummaryAndChartsKeepTheOrder()
    {
        string output = Shell.Run("run", Folder, "--out", Report, "--verbose").Out;
        Assert.Equal(InOrder, Specimen().Matches(output).Select(m => m.Value).Take(24));
        foreach (string file in new[] { "shielding.csv", "bands.csv", "budget.csv" })
        {
            Assert.Equal(InOrder, Rows(file).Select(r => $"{r[0]}/{r[1]}").Where(n => n != "/").Distinct());
        }

        Assert.Equal(["lot2", "lot10"], Rows("lots.csv").Select(r => r[4]).Distinct());
        JsonElement summary = JsonDocument.Parse(File.ReadAllText(Path.Combine(Report, "summary.json"))).RootElement;
        Assert.Equal(InOrder, summary.GetProperty("specimens").EnumerateArray()
            .Select(s => $"{s.GetProperty("lot").GetString()}/{s.GetProperty("specimen").GetString()}"));
        Assert.Equal(InOrder, Paths(summary, "inputs").Where(p => p.StartsWith("covered/", StringComparison.Ordinal))
            .Select(p => string.Join('/', p.Split('/')[1..3])).Distinct());
        Assert.Equal(InOrder, Paths(summary, "report_files").Where(p => p.StartsWith("charts/levels-", StringComparison.Ordinal))
            .Select(p => p["charts/levels-".Length..^4].Replace('-', '/')));
        string page = File.ReadAllText(Path.Combine(Report, "index.html"));
        string swept = page[page.IndexOf("Sweeps behind the figures</caption>", StringComparison.Ordinal)..];
        Assert.Equal(InOrder,
            Specimen().Matches(swept[..swept.IndexOf("</table>", StringComparison.Ordinal)]).Select(m => m.Value).Distinct());
        Assert.Equal(InOrder, Specimen().Matches(File.ReadAllText(Path.Combine(Report, "charts/bands.svg"))).Select(m => m.Value)
            .Distinct().OrderBy(n => Array.IndexOf(InOrder, n)));
        int[] shown = [.. Specimen().Matches(File.ReadAllText(Path.Combine(Report, "charts/bands.svg")))
            .Select(m => Array.IndexOf(InOrder, m.Value)).Distinct()];
        Assert.True(shown.SequenceEqual(shown.Order()) || shown.SequenceEqual(shown.OrderDescending()), string.Join(' ', shown));
    }

    private IEnumerable<string[]> Rows(string file) =>
        File.ReadLines(Path.Combine(Report, file)).Skip(1).Select(l => l.Split(','));

    private static IEnumerable<string> Paths(JsonElement summary, string list) =>
        summary.GetProperty(list).EnumerateArray().Select(f => f.GetProperty("path").GetString()!);

    [GeneratedRegex(@"lot\d+/s\d+")]
    private static partial Regex Specimen();
}
