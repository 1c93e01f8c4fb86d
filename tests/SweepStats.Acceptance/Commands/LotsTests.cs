using System.Text.Json;
using SweepStats.Acceptance.Files;
using SweepStats.Files.Results;
using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class LotsTests : IDisposable
{
    private readonly ScratchFolder _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void TheDemosOddLotIsNamedWithWhereAndByHowMuch()
    {
        (int code, string output, string error) = Shell.Run("lots", Shell.Demo);
        Assert.Equal(0, code);
        Assert.Empty(error);
        string[] lines = output.TrimEnd().Split(Environment.NewLine);
        Assert.Equal("Receiver cabin curtain, three lots: 3 lots, 12 specimens", lines[0]);
        Assert.StartsWith("The lots differ (p", lines[2], StringComparison.Ordinal);
        Assert.Contains(lines, l => l.StartsWith("Lot B shields", StringComparison.Ordinal)
            && l.Contains(" dB less than the mean of the others from ", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, l =>
            l.StartsWith("Lot A shields", StringComparison.Ordinal) || l.StartsWith("Lot C shields", StringComparison.Ordinal));
        Assert.Equal(["Whole band, 30 MHz to 1 GHz", "cabin computers", "receiver band"],
            lines.Where((_, i) => i > 0 && lines[i - 1].Length == 0)
                .Select(l => l.StartsWith("Whole", StringComparison.Ordinal) ? l : l.Split(',')[0]));
        Assert.Equal(3,
            lines.Count(l => l.TrimStart().StartsWith("Lot ", StringComparison.Ordinal)
                && l.Contains("95 % of its specimens reach", StringComparison.Ordinal)));
    }

    [Fact]
    public void LotsThatAreAlikeAreNotCalledProvenAlike()
    {
        (int code, string output, _) = Shell.Run("lots", Rehearsed("a", "--seed", "2"));
        Assert.Equal(0, code);
        Assert.Contains("No difference between the lots shows (p = ", output, StringComparison.Ordinal);
        Assert.Contains("That does not prove them alike.", output, StringComparison.Ordinal);
        Assert.DoesNotContain("All campaigns together", output, StringComparison.Ordinal);
    }

    [Fact]
    public void JsonOfOneCampaignHoldsItsBandsAndNothingTogether()
    {
        (int code, string output, _) = Shell.Run("lots", Shell.Demo, "--format", "json");
        Assert.Equal(0, code);
        JsonElement root = JsonDocument.Parse(output).RootElement;
        JsonElement campaign = Assert.Single(root.GetProperty("campaigns").EnumerateArray());
        Assert.Equal("Receiver cabin curtain, three lots", campaign.GetProperty("title").GetString());
        Assert.Equal([null, "cabin computers", "receiver band"],
            campaign.GetProperty("bands").EnumerateArray().Select(b => b.GetProperty("name").GetString()));
        Assert.Equal(JsonValueKind.Null, root.GetProperty("together").ValueKind);
        JsonElement whole = campaign.GetProperty("bands")[0];
        Assert.Equal(["A", "B", "C"], whole.GetProperty("lots").EnumerateArray().Select(l => l.GetProperty("lot").GetString()));
        Assert.Equal(3, whole.GetProperty("pairs").GetArrayLength());
        Assert.Equal(["lot", "specimen", "placement", "sweep"],
            whole.GetProperty("scatter_db").EnumerateObject().Select(p => p.Name));
        Assert.Equal(12, whole.GetProperty("specimen_standing").GetProperty("members").GetArrayLength());
        Assert.Equal(["lot-mean", "lot-deviation", "specimen", "moving-range"],
            whole.GetProperty("over_time").EnumerateArray().Select(c => c.GetProperty("figure").GetString()));
        // More below 120 MHz; less from 240 MHz on, where the floor hides some of the others.
        JsonElement[] stretches = [.. campaign.GetProperty("stretches").EnumerateArray().Take(2)];
        Assert.Equal([("B", false), ("B", true)],
            stretches.Select(t => (t.GetProperty("lot").GetString()!, t.GetProperty("at_least").GetBoolean())));
        Assert.InRange(stretches[0].GetProperty("apart_db").GetDouble(), 1, 4);
        Assert.InRange(stretches[1].GetProperty("apart_db").GetDouble(), -7, -2);
        Assert.InRange(stretches[1].GetProperty("start_hz").GetDouble(), 230e6, 330e6);
    }

    [Fact]
    public void SeveralCampaignsAreToldOneByOneAndTogether()
    {
        string[] folders = [Rehearsed("a", "--title", "Spring", "--seed", "4"),
            Rehearsed("b", "--title", "Autumn", "--seed", "5", "--se", "47")];
        (int code, string output, string error) = Shell.Run(["lots", .. folders]);
        Assert.Equal(0, code);
        Assert.Empty(error);
        string[] lines = output.Split(Environment.NewLine);
        Assert.Contains("Spring: 2 lots, 6 specimens", lines);
        Assert.Contains("Autumn: 2 lots, 6 specimens", lines);
        string[] together = [.. lines.TakeWhile(l => l.Length > 0)];
        Assert.Equal("All campaigns together, 30 MHz to 1 GHz, 21 frequencies", together[0]);
        Assert.StartsWith("4 of 6 pairs of lots differ (p", together[1], StringComparison.Ordinal);
        Assert.Matches(
            "^Autumn: [AB] shields about [67]\\.[0-9] dB more than Spring: [AB] from 30 MHz to 1 GHz\\.$", together[2]);
        Assert.Contains(together, l => l.Contains("the errors of both references and floors", StringComparison.Ordinal));
        JsonElement root = JsonDocument.Parse(Shell.Run(["lots", .. folders, "--format", "json"]).Out).RootElement;
        Assert.Equal(2, root.GetProperty("campaigns").GetArrayLength());
        JsonElement all = root.GetProperty("together");
        Assert.Equal(["Spring", "Spring", "Autumn", "Autumn"],
            all.GetProperty("lots").EnumerateArray().Select(l => l.GetProperty("campaign").GetString()));
        Assert.Equal(6, all.GetProperty("pairs").GetArrayLength());
        Assert.Equal(21, all.GetProperty("points").GetInt32());
        Assert.All(all.GetProperty("pairs").EnumerateArray(), p => Assert.Equal(
            p.GetProperty("first_campaign").GetString() != p.GetProperty("second_campaign").GetString(),
            p.GetProperty("p_adjusted").GetDouble() < 0.05));
    }

    [Fact]
    public void ALotThatIsWorseInAPartOfTheBandIsSaidSoFirstAndDrawn()
    {
        string[] usual = ["--points", "101", "--specimens", "4", "--specimen-spread", "0.5", "--reference-sweeps", "2"];
        string[] folders = [Rehearsed("a", ["--title", "Spring", "--seed", "4", .. usual]),
            Rehearsed("b", ["--title", "Autumn", "--seed", "5", "--lot-step", "B:-4:300MHz-600MHz", .. usual])];
        string target = Path.Combine(_scratch.Path, "report");
        NameBands(folders[0], ("receiver band", 320, 580), ("FM", 88, 108));
        NameBands(folders[1], ("receiver band", 320, 580), ("FM", 87.5, 108));
        (int code, string output, string error) = Shell.Run(["lots", .. folders, "--out", target]);
        Assert.Equal((0, ""), (code, error));
        string[] lines = output.Split(Environment.NewLine);
        Assert.StartsWith("3 of 6 pairs of lots differ (p = ", lines[1], StringComparison.Ordinal);
        Assert.Matches(
            "^Autumn: B shields about 4\\.[0-9] dB less than Spring: B from 30[0-9.]+ MHz to 59[0-9.]* MHz\\.$", lines[2]);
        string[] together = [.. lines.TakeWhile(l => l.Length > 0)];
        Assert.Contains(together.Take(8), l => l.StartsWith("Autumn: ", StringComparison.Ordinal)
            && l.Contains("This measurement can be trusted within limits", StringComparison.Ordinal));
        Assert.Contains(together,
            l => l.Contains("receiver band, ", StringComparison.Ordinal) && l.Contains("Autumn: B", StringComparison.Ordinal));
        Assert.Contains(together,
            l => l.EndsWith("The named band FM is not compared, since it is not the same in all campaigns: Spring 88 MHz to 108 "
                + "MHz; Autumn 87.5 MHz to 108 MHz. Give it the same limits in every campaign.toml.", StringComparison.Ordinal));
        Assert.DoesNotContain("Named bands are compared within", output, StringComparison.Ordinal);
        string page = File.ReadAllText(Path.Combine(target, "index.html"));
        Assert.Contains("chart-difference-b-b", page, StringComparison.Ordinal);
        Assert.Contains("Its own lots: ", page, StringComparison.Ordinal);
        Assert.Contains("Named bands", page, StringComparison.Ordinal);
        string chart = File.ReadAllText(Path.Combine(target, "charts", "difference-b-b.svg"));
        Assert.Contains("Spring: B less Autumn: B", chart, StringComparison.Ordinal);
        Assert.Contains("they differ (5 %, over all frequencies)", chart, StringComparison.Ordinal);
        JsonElement all =
            JsonDocument.Parse(File.ReadAllText(Path.Combine(target, SummaryJson.FileName))).RootElement.GetProperty("together");
        JsonElement stretch = all.GetProperty("stretches").EnumerateArray()
            .Single(s => s.GetProperty("first_campaign").GetString() == "Spring" && s.GetProperty("first").GetString() == "B");
        Assert.InRange(stretch.GetProperty("start_hz").GetDouble(), 290e6, 310e6);
        Assert.InRange(stretch.GetProperty("difference_db").GetDouble(), 3.5, 4.9);
        Assert.Equal(["receiver band"], all.GetProperty("bands").EnumerateArray().Select(b => b.GetProperty("name").GetString()));
        Assert.Equal("limits-differ",
            Assert.Single(all.GetProperty("bands_not_compared").EnumerateArray()).GetProperty("because").GetString());
        Assert.Equal(101, all.GetProperty("by_frequency").GetArrayLength());
        Assert.Equal(6, all.GetProperty("by_frequency")[0].GetProperty("pairs").GetArrayLength());
        Assert.Equal(0.95, all.GetProperty("difference_level").GetDouble());
        string[] rows = File.ReadAllLines(Path.Combine(target, LotFrequenciesCsv.FileName));
        Assert.Equal(LotHistoryFrequenciesCsv.Header, rows[0]);
        Assert.Equal(1 + (6 * 101), rows.Length);
        Assert.Contains(rows,
            r => r.Contains(",Spring,B,Autumn,B,", StringComparison.Ordinal) && r.Contains(",yes,0,0", StringComparison.Ordinal));
        string[] pairs = File.ReadAllLines(Path.Combine(target, LotHistoryPairsCsv.FileName));
        Assert.Equal(LotHistoryPairsCsv.Header, pairs[0]);
        Assert.Equal(6, pairs.Count(r => r.StartsWith("receiver band,", StringComparison.Ordinal)));
    }

    [Fact]
    public void FrequenciesThatTheFloorHidesAreCountedAndMarked()
    {
        string[] usual = ["--points", "51", "--se", "40", "--se-stop", "90"];
        string[] folders = [Rehearsed("a", ["--title", "Spring", "--seed", "4", .. usual]),
            Rehearsed("b", ["--title", "Autumn", "--seed", "5", .. usual])];
        string target = Path.Combine(_scratch.Path, "report");
        string output = Shell.Run(["lots", .. folders, "--out", target]).Out;
        Assert.Matches("Not compared, because a specimen is known from below only: Spring: A and Autumn: A at [1-3][0-9] of 51 "
            + "frequencies", output);
        Assert.Contains("left out: known from below only", File.ReadAllText(Path.Combine(target, "charts", "difference-a-a.svg")),
            StringComparison.Ordinal);
        string hidden = File.ReadLines(Path.Combine(target, LotFrequenciesCsv.FileName)).Last();
        Assert.Matches(",,,,0\\.95,,,,no,[1-3],[1-3]$", hidden);
    }

    [Fact]
    public void CampaignsOfOneTitleGoByTheirFolders()
    {
        string output =
            Shell.Run("lots", Rehearsed("first", "--seed", "4"), Rehearsed("second", "--seed", "5"), "--format", "json").Out;
        string?[] names = [.. JsonDocument.Parse(output).RootElement.GetProperty("together").GetProperty("lots").EnumerateArray()
            .Select(l => l.GetProperty("campaign").GetString())];
        Assert.Equal(2, names.Distinct().Count());
        Assert.Equal("Rehearsed campaign (first)", names[0]);
        Assert.Equal("Rehearsed campaign (second)", names[^1]);
    }

    [Fact]
    public void CampaignsWithoutABandInCommonEndWithTwoAndOneLine()
    {
        (int code, string output, string error) =
            Shell.Run("lots", Rehearsed("low", "--stop", "100MHz"), Rehearsed("high", "--start", "200MHz"));
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.Equal("sweepstats: the campaigns share no frequency; name campaigns that cover a common band", error.TrimEnd());
    }

    [Fact]
    public void SeveralCampaignsMakeAReportOfTheirOwnAndASecondOneTakesItsPlace()
    {
        string target = Path.Combine(Rehearsed("place"), "..", "lots-report");
        string[] words = ["lots", Rehearsed("spring", "--title", "Spring"),
            Rehearsed("autumn", "--title", "Autumn", "--seed", "9"), "--out", target];
        for (int run = 0; run < 2; run++)
        {
            (int code, string output, string error) = Shell.Run(words);
            Assert.Equal((0, ""), (code, error));
            Assert.Contains("Report: ", output, StringComparison.Ordinal);
        }

        string[] rows = File.ReadAllLines(Path.Combine(target, LotsCsv.FileName));
        Assert.Equal(LotHistoryCsv.Header, rows[0]);
        Assert.Equal(["Autumn", "Spring"], rows.Skip(1).Select(r => r.Split(',')[0]).Distinct().Order());
        using JsonDocument summary = JsonDocument.Parse(File.ReadAllText(Path.Combine(target, SummaryJson.FileName)));
        Assert.Equal(rows.Length - 1, summary.RootElement.GetProperty("together").GetProperty("lots").GetArrayLength());
        string page = File.ReadAllText(Path.Combine(target, "index.html"));
        Assert.Contains("Spring, Autumn", page, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(target, "charts", "over-time-lot-mean.svg")));
    }

    [Fact]
    public void NoCampaignComesTwiceNorItsCopy()
    {
        string folder = Rehearsed("once"), copy = Rehearsed("copy");
        (int code, string output, string error) = Shell.Run("lots", folder, folder + "/");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("is named twice", error, StringComparison.Ordinal);
        (code, output, error) = Shell.Run("lots", folder, copy);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("hold the same sweeps", error, StringComparison.Ordinal);
    }

    [Fact]
    public void AYardstickIsInNoLotOfSeveralCampaigns()
    {
        string[] folders = [Rehearsed("a", "--lots", "3", "--lot-step", "C:40:30MHz-1GHz"),
            Rehearsed("b", "--lots", "3", "--lot-step", "C:40:30MHz-1GHz", "--seed", "2")];
        foreach (string folder in folders)
        {
            Directory.Delete(Path.Combine(folder, "covered", "C", "C02"), recursive: true);
            Directory.Delete(Path.Combine(folder, "covered", "C", "C03"), recursive: true);
            File.Delete(Path.Combine(folder, "sweeps.csv"));
            File.AppendAllText(Path.Combine(folder, "campaign.toml"), "\n[choice]\nyardstick = \"C/C01\"\n");
        }

        (int code, string output, string error) = Shell.Run(["lots", .. folders, "--format", "json"]);
        Assert.Equal((0, ""), (code, error));
        JsonElement together = JsonDocument.Parse(output).RootElement.GetProperty("together");
        Assert.Equal(["A", "B", "A", "B"],
            together.GetProperty("lots").EnumerateArray().Select(l => l.GetProperty("lot").GetString()));
        Assert.Equal(1, together.GetProperty("clear_share").GetDouble(), 1e-9);
    }

    [Fact]
    public void AYardstickAloneIsComparedAllTheSame()
    {
        string[] folders =
            [Rehearsed("a", "--lots", "1", "--specimens", "1"), Rehearsed("b", "--lots", "1", "--specimens", "1", "--seed", "2")];
        foreach (string folder in folders)
        {
            File.AppendAllText(Path.Combine(folder, "campaign.toml"), "\n[choice]\nyardstick = \"A/A01\"\n");
        }

        (int code, string output, string error) = Shell.Run(["lots", .. folders]);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("that takes two specimens a lot", output, StringComparison.Ordinal);
    }

    [Fact]
    public void CampaignsWithHardlyAFrequencyInCommonAreComparedThere()
    {
        (int code, _, string error) = Shell.Run("lots", Rehearsed("a", "--points", "30", "--stop", "100MHz"),
            Rehearsed("b", "--points", "3", "--start", "97.1MHz", "--seed", "2"));
        Assert.Equal((0, ""), (code, error));
    }

    [Fact]
    public void TheReportOfOneCampaignIsLeftToRun()
    {
        (int code, string output, string error) = Shell.Run("lots", Rehearsed("alone"), "--out", "somewhere");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("'sweepstats run' writes the report of one", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists("somewhere"));
    }

    [Fact]
    public void EveryBadFolderIsNamedAndNothingIsPrinted()
    {
        (int code, string output, string error) = Shell.Run("lots", "no/such/one", Rehearsed("a"), "no/such/other");
        Assert.Equal(2, code);
        Assert.Empty(output);
        string[] lines = error.TrimEnd().Split(Environment.NewLine);
        Assert.Equal(2, lines.Length);
        Assert.StartsWith("no/such/one: there is no such folder", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("no/such/other: there is no such folder", lines[1], StringComparison.Ordinal);
        Assert.Equal(2, Shell.Run("lots").Code);
    }

    [Fact]
    public void AGateStopsWhereAnyCampaignDoesNotPass()
    {
        string meets = Rehearsed("meets", "--requirement", "30"),
            fails = Rehearsed("fails", "--requirement", "60", "--seed", "2");
        Assert.Equal(0, Shell.Run("lots", meets, "--gate").Code);
        Assert.Equal(1, Shell.Run("lots", fails, "--gate").Code);
        Assert.Equal(1, Shell.Run("lots", meets, fails, "--gate", "--quiet").Code);
        Assert.Equal(0, Shell.Run("lots", meets, fails).Code);
    }

    [Fact]
    public void QuietPrintsAndWritesNothing()
    {
        string folder = Rehearsed("a");
        string[] before = Directory.GetFileSystemEntries(_scratch.Path, "*", SearchOption.AllDirectories);
        Assert.Equal((0, "", ""), Shell.Run("lots", folder, "--quiet"));
        Assert.Equal(before, Directory.GetFileSystemEntries(_scratch.Path, "*", SearchOption.AllDirectories));
    }

    [Theory]
    [InlineData("One lot only: there is nothing to compare it with.", "--lots", "1")]
    [InlineData("Whether the lots differ cannot be told: no lot has two specimens, so nothing shows how much specimens of one "
        + "lot differ. Take two of each, better four; single specimens are compared by 'sweepstats choose'.", "--specimens", "1")]
    public void WhatCannotBeToldIsSaid(string sentence, params string[] words)
    {
        string folder = Path.Combine(_scratch.Path, "c");
        string[] all = words[0] == "--lots" ? ["--specimens", "3", .. words] : ["--lots", "3", .. words];
        Shell.Run(["rehearse", folder, "--points", "11", .. all]);
        (int code, string output, _) = Shell.Run("lots", folder);
        Assert.Equal(0, code);
        Assert.Contains(sentence, output.Split(Environment.NewLine));
    }

    private static void NameBands(string folder, params (string Name, double Start, double Stop)[] bands) => File.AppendAllLines(
        Path.Combine(folder, "campaign.toml"),
        bands.Select(b => string.Create(System.Globalization.CultureInfo.InvariantCulture,
            $"\n[[named_band]]\nname = \"{b.Name}\"\nstart_hz = {b.Start * 1e6:F1}\nstop_hz = {b.Stop * 1e6:F1}")));

    private string Rehearsed(string name, params string[] more)
    {
        string folder = Path.Combine(_scratch.Path, name);
        string[][] usual =
            [["--points", "21"], ["--lots", "2"], ["--specimens", "3"], ["--specimen-spread", "0.3"], ["--sweeps", "3"]];
        (int code, _, string error) =
            Shell.Run(["rehearse", folder, .. usual.Where(u => !more.Contains(u[0])).SelectMany(u => u), .. more]);
        Assert.True(code == 0, error);
        return folder;
    }
}
