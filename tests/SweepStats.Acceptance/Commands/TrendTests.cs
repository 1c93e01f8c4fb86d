using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using SweepStats.Acceptance.Files;
using SweepStats.Files.Results;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>A cloth that loses 0.2 dB a wash and crosses what is asked at twenty washes, from files to sentences.</summary>
public sealed class TrendTests : IDisposable
{
    private readonly ScratchFolder _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void TheFirstScreenNamesUpToWhereTheRequirementIsMet()
    {
        (int code, string output, string error) = Shell.Run("lots", Washed());
        Assert.Equal((0, ""), (code, error));
        string[] lines = output.TrimEnd().Split(Environment.NewLine);
        Assert.Equal("Rehearsed campaign: 15 specimens at 5 values of cycles, 0 to 30", lines[0]);
        System.Text.RegularExpressions.Match told = System.Text.RegularExpressions.Regex.Match(
            lines[2], "^The mean of such specimens is shown to meet the requirement up to (1[4-9]|20) cycles, at every measured "
                + "frequency \\(95 %, one-sided\\). From (2[0-6]) to the 30 cycles measured it is shown not to be met, at one "
                + "frequency or more. Between, it is undecided.$");
        Assert.True(told.Success, lines[2]);
        Assert.StartsWith("The mean shielding falls by 0.", lines[3], StringComparison.Ordinal);
        Assert.Contains(" dB for each cycle (95 %: 0.", lines[3], StringComparison.Ordinal);
        Assert.StartsWith("A straight line fits (p = ", lines[4], StringComparison.Ordinal);
        int lots = Array.IndexOf(lines, "Lot by lot, whatever the order:");
        Assert.InRange(lots, 10, 25);
        Assert.StartsWith("The lots differ (p", lines[lots + 1], StringComparison.Ordinal);
        Assert.DoesNotContain(lines, l => l.StartsWith("All specimens are of one lot", StringComparison.Ordinal));
        Assert.Equal(["meets", "fails"],
            lines.Where(l => l.StartsWith("  0 ", StringComparison.Ordinal) || l.StartsWith("  30 ", StringComparison.Ordinal))
                .Select(l => l.Split(' ')[^1]));
    }

    [Fact]
    public void WithoutOrderedByLotsAreAsTheyWere()
    {
        string folder = Washed();
        string settings = Path.Combine(folder, "campaign.toml");
        File.WriteAllText(settings, File.ReadAllText(settings).Replace("ordered_by = \"cycles\"", "", StringComparison.Ordinal)
            .Replace("[requirement]", "[choice]\nshown = [\"cycles\"]\n[requirement]", StringComparison.Ordinal));
        (int code, string output, _) = Shell.Run("lots", folder);
        Assert.Equal(0, code);
        Assert.StartsWith("The lots differ (p", output.Split(Environment.NewLine)[2], StringComparison.Ordinal);
        Assert.DoesNotContain("straight line", output, StringComparison.Ordinal);
        Assert.DoesNotContain("\"trend\"", Shell.Run("lots", folder, "--format", "json").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void TheReportHoldsTheTrendInPageTableAndSummary()
    {
        string folder = Washed(), report = Path.Combine(_scratch.Path, "report");
        Assert.Equal(0, Shell.Run("run", folder, "--out", report).Code);
        string page = File.ReadAllText(Path.Combine(report, "index.html"));
        Assert.Contains("Trend along cycles", page, StringComparison.Ordinal);
        Assert.All(["trend", "trend-requirement", "trend-over-frequency"],
            name => Assert.True(File.Exists(Path.Combine(report, "charts", name + ".svg"))));
        string text = File.ReadAllText(Path.Combine(report, "summary.json"));
        Assert.True(JsonSchema.FromText(SummaryJson.Schema()).Evaluate(JsonNode.Parse(text)).IsValid);
        JsonElement trend = JsonDocument.Parse(text).RootElement.GetProperty("trend");
        JsonElement asked = trend.GetProperty("requirement");
        Assert.Equal((0.95, "cycles"),
            (asked.GetProperty("one_sided_confidence").GetDouble(), trend.GetProperty("ordered_by").GetString()));
        Assert.InRange(asked.GetProperty("met_up_to").GetDouble(), 14, 20);
        Assert.InRange(asked.GetProperty("not_met_from").GetDouble(), 20, 26);
        Assert.InRange(trend.GetProperty("bands")[0].GetProperty("slope_db").GetProperty("value").GetDouble(), -0.24, -0.16);
        string[] rows = File.ReadAllLines(Path.Combine(report, TrendCsv.FileName));
        Assert.Equal(TrendCsv.Header, rows[0]);
        Assert.All(rows, r => Assert.Equal(rows[0].Split(',').Length, r.Split(',').Length));
        Assert.Equal((1, 5, 21), (Kind("band"), Kind("value"), Kind("frequency")));
        int Kind(string kind) => rows.Count(r => r.StartsWith(kind + ",", StringComparison.Ordinal));
    }

    [Fact]
    public void OneLotIsToldThatOneClothMeasuredAgainIsOne()
    {
        string folder = Washed(), sweeps = Path.Combine(folder, "sweeps.csv");
        string[] rows = File.ReadAllLines(sweeps);
        int lot = Array.IndexOf(rows[0].Split(','), "lot");
        Assert.True(lot >= 0, rows[0]);
        File.WriteAllLines(sweeps, rows.Take(1).Concat(rows.Skip(1).Select(row =>
        {
            string[] cells = row.Split(',');
            cells[lot] = cells[lot].Length == 0 ? "" : "A";
            return string.Join(',', cells);
        })));
        (int code, string output, string error) = Shell.Run("lots", folder);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("All specimens are of one lot: the intervals hold if each is a specimen of its own", output,
            StringComparison.Ordinal);
    }

    [Fact]
    public void UnderAFaultTheFirstLineSaysWhatToDoAndNoRequirementIsClaimed()
    {
        string folder = Washed("--limit", "-40");
        (_, string output, _) = Shell.Run("lots", folder);
        Assert.Contains("Mend the faults first: up to where the requirement is met cannot be told.", output,
            StringComparison.Ordinal);
        Assert.DoesNotContain("shown to meet", output, StringComparison.Ordinal);
        Assert.DoesNotContain("shown not to", output, StringComparison.Ordinal);
        string report = Path.Combine(_scratch.Path, "report");
        _ = Shell.Run("run", folder, "--out", report);
        string text = File.ReadAllText(Path.Combine(report, "summary.json"));
        Assert.True(JsonSchema.FromText(SummaryJson.Schema()).Evaluate(JsonNode.Parse(text)).IsValid);
        Assert.Contains("Mend the faults first: up to where", File.ReadAllText(Path.Combine(report, "index.html")),
            StringComparison.Ordinal);
        JsonElement asked = JsonDocument.Parse(text).RootElement.GetProperty("trend").GetProperty("requirement");
        Assert.Equal(("faults", JsonValueKind.Null),
            (asked.GetProperty("obstacle").GetString(), asked.GetProperty("met_up_to").ValueKind));
    }

    [Fact]
    public void TheSameColumnMayStandInTheChoice()
    {
        string folder = Washed();
        string settings = Path.Combine(folder, "campaign.toml");
        File.AppendAllText(settings, "\n[choice]\nlower_is_better = [\"Cycles\"]\n");
        (int code, string output, string error) = Shell.Run("lots", folder);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("5 values of cycles", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--cycles 0,x: cycles read 0,5,10,20, each once", "--wear", "0.2", "--cycles", "0,x")]
    [InlineData("--cycles 0,5,5: cycles read 0,5,10,20, each once", "--wear", "0.2", "--cycles", "0,5,5")]
    [InlineData("--lots: with --wear there is a lot for each number under --cycles", "--wear", "0.2", "--lots", "3")]
    public void WearThatCannotBeDrawnIsRefused(string said, params string[] words)
    {
        (int code, _, string error) = Shell.Run(["rehearse", Path.Combine(_scratch.Path, "w"), .. words]);
        Assert.Equal(2, code);
        Assert.Contains(said, error, StringComparison.Ordinal);
    }

    [Fact]
    public void TooFewSpecimensAreToldWhatIsMissing()
    {
        Assert.Contains("A trend needs specimens at three values of cycles; there are 2: 0 and 10. Measure at another value.",
            Shell.Run("lots", Washed("--cycles", "0,10")).Out, StringComparison.Ordinal);
        Assert.Contains(
            "A trend needs four specimens; there are 3. Measure another one, best at a value that was measured already.",
            Shell.Run("lots", Washed("--cycles", "0,10,20", "--specimens", "1")).Out, StringComparison.Ordinal);
    }

    private string Washed(params string[] more)
    {
        string folder = Path.Combine(_scratch.Path, $"c{Directory.GetDirectories(_scratch.Path).Length}");
        string[] usual = more.Contains("--specimens") ? [] : ["--specimens", "3"];
        Assert.Equal(0, Shell.Run([
            "rehearse", folder, "--wear", "0.2", "--se", "44", "--requirement", "40", "--points", "21", "--specimen-spread",
            "0.3", "--placements", "2", "--sweeps", "2", "--seed", "5", .. usual, .. more]).Code);
        return folder;
    }
}
