using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>sweepstats compare.</summary>
public sealed class CompareTests
{
    private static readonly string Demo = Path.Combine(Repository.Root, "reports/receiver-cabin-curtain");

    [Theory]
    [InlineData("")]
    [InlineData("summary.json")]
    public void AReportIsLikeItself(string file)
    {
        (int code, string output, string error) = Shell.Run("compare", Demo, Path.Combine(Demo, file), "--gate");
        Assert.Equal((0, string.Empty), (code, error));
        Assert.Equal(2, output.TrimEnd().Split('\n').Length);
        Assert.EndsWith("Nothing that is compared differs: trust limited, requirement meets, 12 specimens, 100 files.",
            output.TrimEnd(), StringComparison.Ordinal);
    }

    // One more sweep left out and another confidence: files, plan and every interval move, and no figure leaves its interval.
    [Fact]
    public void AnotherRunOfTheCampaignIsToldPieceByPiece()
    {
        using var scratch = new ScratchFolder();
        string earlier = Path.Combine(scratch.Path, "earlier"), later = Path.Combine(scratch.Path, "later");
        string campaign = Path.Combine(scratch.Path, "campaign");
        Assert.Equal(0, Shell.Run("rehearse", campaign, "--se", "40", "--requirement", "35").Code);
        Assert.Equal(0, Shell.Run("run", campaign, "--out", earlier, "--charts", "none").Code);
        File.Delete(Path.Combine(campaign, "reference/reference-02.csv"));
        Assert.Equal(0, Shell.Run("run", campaign, "--out", later, "--charts", "none", "--confidence", "0.9").Code);

        (int code, string output, string error) = Shell.Run("compare", earlier, later, "--gate");
        Assert.Equal((1, string.Empty), (code, error));
        Assert.Contains("\nFiles: 1 gone (reference/reference-02.csv).\n", output, StringComparison.Ordinal);
        Assert.Contains("\nPlan: confidence 0.9, was 0.95; requirement_confidence 0.9, was 0.95.\n", output,
            StringComparison.Ordinal);
        Assert.Matches(@"\n  of +figure +later, dB +earlier, dB +by\n", output);
        Assert.DoesNotContain("apart", output, StringComparison.Ordinal);
        Assert.Equal(0, Shell.Run("compare", earlier, later).Code);
        Assert.Equal(string.Empty, Shell.Run("compare", earlier, later, "--quiet").Out);
    }

    [Fact]
    public void WhatMovedComesFurthestFirstAndWhatIsApartIsCalledSo()
    {
        using var scratch = new ScratchFolder();
        JsonObject changed = Summary();
        changed["trust"] = "trustworthy";
        changed["rehearsed"] = false;
        changed["counts"]!["frequencies"] = 150;
        changed["excluded"] = new JsonArray(new JsonObject { ["sweep"] = "floor/f9.csv", ["reason"] = "a door" });
        JsonArray specimens = changed["specimens"]!.AsArray();
        specimens[1]!["p10_db"] = Figure(47.5, 46.5, 48.5);
        specimens[2]!["mean_db"] = Figure(40, 39, 41);
        specimens[3]!["requirement"]!["outcome"] = "fails";
        specimens.RemoveAt(0);
        string output = Shell.Run("compare", Demo, Written(scratch, changed)).Out;
        Assert.Contains("\nTrust: trustworthy, was limited.\n", output, StringComparison.Ordinal);
        Assert.Contains("\nBand: 30 MHz to 1000 MHz, 150 frequencies, was 30 MHz to 1000 MHz, 161 frequencies.\n", output,
            StringComparison.Ordinal);
        Assert.Contains("\nDrawn by rehearse: no, was yes.\n", output, StringComparison.Ordinal);
        Assert.Contains("\nLeft out: floor/f9.csv a door, was none.\n", output, StringComparison.Ordinal);
        Assert.Contains("\nSpecimens: 1 gone (A/A01).\n", output, StringComparison.Ordinal);
        Assert.Contains("\nDecided: A/A04: fails, was meets.\n", output, StringComparison.Ordinal);
        // A/A03 was at least 57.9 dB or so: another kind of figure, and below that bound. A/A02 moved by 2.0 dB.
        Assert.Matches(@"\n  A/A03 +mean +40\.0 \(39\.0 to 41\.0\) +at least 58\.3 +– +apart\n"
            + @"  A/A02 +10th percentile +47\.5 \(46\.5 to 48\.5\) +45\.5 \(44\.1 to 46\.9\) +\+2\.0\nApart: ", output);
    }

    [Fact]
    public void AProgramGetsTheSame()
    {
        using var scratch = new ScratchFolder();
        JsonObject changed = Summary();
        changed["plan"]!["margin_db"] = 3;
        changed["checks"]![0]!["findings"] = 2;
        JsonElement told = JsonDocument.Parse(
            Shell.Run("compare", Demo, Written(scratch, changed), "--format", "json").Out).RootElement;
        Assert.Equal(["verdict", "plan", "checks", "outcomes", "foremost", "figures", "excluded", "files", "specimens"],
            told.EnumerateObject().Select(p => p.Name));
        Assert.Equal("""{"name":"margin_db","earlier":"6","later":"3"}""", Compact(Assert.Single(Items(told, "plan"))));
        Assert.Equal("""{"name":"files-unread","earlier":"0","later":"2"}""", Compact(Assert.Single(Items(told, "checks"))));
        Assert.Empty(Items(told, "figures"));
    }

    // Where, what is wrong, what to do; nothing is printed beside it.
    [Theory]
    [InlineData(null, "there is no such file or folder; name the folder of a report")]
    [InlineData("{",
        "1: this is no summary of one campaign, an older version wrote it, or it was changed; make the report again")]
    [InlineData("[]", "1: this is no summary of one campaign")]
    [InlineData("null", "no summary of sweepstats; make the report again")]
    [InlineData("""{"program": "other"}""", "this is no summary of one campaign")]
    [InlineData("specimens[null]", "a list holds nothing where something belongs")]
    [InlineData("checks[null]", "a list holds nothing where something belongs")]
    [InlineData("inputs[null]", "a list holds nothing where something belongs")]
    [InlineData("not_tested[null]", "a list holds nothing where something belongs")]
    [InlineData("pairs", "a list holds nothing where something belongs")]
    [InlineData("mean_db", "this is no summary of one campaign")]
    [InlineData("at_least_db", "a number is not finite")]
    [InlineData("plan", "or a text is none")]
    [InlineData("specimens", "this is no summary of one campaign")]
    [InlineData("program", "no summary of sweepstats; make the report again")]
    [InlineData("schema_version", "its schema_version is 99, this program knows 1; compare with the later version")]
    public void WhatIsNoReportIsRefused(string? text, string told)
    {
        using var scratch = new ScratchFolder();
        string file = Path.Combine(scratch.Path, "summary.json");
        if (text is not null)
        {
            File.WriteAllText(file, text.Contains('{', StringComparison.Ordinal) || text is "[]" or "null" ? text : Spoilt(text));
        }

        (int code, string output, string error) = Shell.Run("compare", file, Demo);
        Assert.Equal((2, string.Empty), (code, output));
        Assert.StartsWith($"{file}:", error, StringComparison.Ordinal);
        Assert.Contains(told, error, StringComparison.Ordinal);
    }

    [Fact]
    public void BothAreRefusedAtOnce()
    {
        using var scratch = new ScratchFolder();
        string error = Shell.Run("compare", scratch.Path, Path.Combine(scratch.Path, "none")).Error;
        Assert.Contains("the folder holds no summary.json", error, StringComparison.Ordinal);
        Assert.Contains("none: there is no such file or folder", error, StringComparison.Ordinal);
    }

    // A pipe that nobody writes to would keep it waiting.
    [Fact]
    public void APipeIsRefused()
    {
        using var scratch = new ScratchFolder();
        string pipe = Path.Combine(scratch.Path, "summary.json");
        System.Diagnostics.Process.Start("mkfifo", pipe).WaitForExit();
        Assert.Contains("this is no file", Shell.Run("compare", pipe, Demo).Error, StringComparison.Ordinal);
        Assert.Contains("this is no file", Shell.Run("compare", Demo, scratch.Path).Error, StringComparison.Ordinal);
    }

    // Hostile names steer no terminal.
    [Fact]
    public void NamesSteerNoTerminal()
    {
        using var scratch = new ScratchFolder();
        JsonObject changed = Summary();
        changed["title"] = "\u001b[31mred";
        changed["specimens"]![0]!["specimen"] = "\u001b[2J";
        Assert.DoesNotContain("\u001b", Shell.Run("compare", Demo, Written(scratch, changed)).Out, StringComparison.Ordinal);
    }

    private static string Spoilt(string member)
    {
        JsonObject summary = Summary();
        if (member.EndsWith("[null]", StringComparison.Ordinal))
        {
            summary[member[..^6]] = new JsonArray((JsonNode?)null);
            return summary.ToJsonString();
        }

        switch (member)
        {
            case "at_least_db":
                return Regex.Replace(summary.ToJsonString(), "\"at_least_db\":[0-9.]+", "\"at_least_db\":1e400");
            case "plan":
                return summary.ToJsonString().Replace("\"averaging\":\"power\"", "\"averaging\":\"\\ud800\"",
                    StringComparison.Ordinal);
            case "pairs":
                summary["lots"]!["bands"]![0]![member] = new JsonArray((JsonNode?)null);
                break;
            case "mean_db":
                summary["specimens"]![0]![member] = new JsonObject();
                break;
            case "program":
                summary[member] = "other";
                break;
            case "schema_version":
                summary[member] = 99;
                break;
            default:
                summary.Remove(member);
                break;
        }

        return summary.ToJsonString();
    }

    private static JsonObject Summary() => JsonNode.Parse(File.ReadAllText(Path.Combine(Demo, "summary.json")))!.AsObject();

    private static JsonObject Figure(double value, double low, double high) =>
        new() { ["value"] = value, ["low"] = low, ["high"] = high };

    private static string Written(ScratchFolder scratch, JsonObject summary)
    {
        string file = Path.Combine(scratch.Path, "summary.json");
        File.WriteAllText(file, summary.ToJsonString());
        return file;
    }

    private static JsonElement.ArrayEnumerator Items(JsonElement told, string name) => told.GetProperty(name).EnumerateArray();

    private static string Compact(JsonElement element) => JsonSerializer.Serialize(element);
}
