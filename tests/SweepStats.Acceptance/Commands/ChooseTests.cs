using System.Globalization;
using System.Text.Json;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class ChooseTests : IDisposable
{
    private readonly ScratchFolder _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void TheDemosSpecimensAreRankedBandByBandWithTheUsersColumns()
    {
        (int code, string output, string error) = Shell.Run("choose", Shell.Demo);
        Assert.Equal(0, code);
        Assert.Empty(error);
        string[] lines = output.TrimEnd().Split(Environment.NewLine);
        Assert.Equal("Receiver cabin curtain, three lots", lines[0]);
        Assert.Equal(3, lines.Count(l => l.Contains(", compared at ", StringComparison.Ordinal)));
        string[] heads = [.. lines.Where(l => l.TrimStart().StartsWith("Rank ", StringComparison.Ordinal))];
        Assert.Equal(3, heads.Length);
        Assert.All(heads,
            h => Assert.True(h.Contains("price_eur_m2", StringComparison.Ordinal)
                && h.Contains("weight_g_m2", StringComparison.Ordinal)));
        // No specimen of the odd lot is among the best of the receiver band, where it shields 6 dB less.
        string answer = lines[Array.FindIndex(lines, l => l.StartsWith("receiver band", StringComparison.Ordinal)) + 1];
        Assert.Contains("cannot be told from the best (95 %): ", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("B/B", answer, StringComparison.Ordinal);
        Assert.Contains("The comparison is of these specimens.", output, StringComparison.Ordinal);
        Assert.DoesNotContain("No placements are named", output, StringComparison.Ordinal);
    }

    [Fact]
    public void JsonHoldsTheRankingOfEveryBandAndWhatIsKnownOfTheSpecimens()
    {
        (int code, string output, _) = Shell.Run("choose", Shell.Demo, "--format", "json");
        Assert.Equal(0, code);
        JsonElement root = JsonDocument.Parse(output).RootElement;
        Assert.Equal("placements", root.GetProperty("repeats").GetString());
        Assert.Equal([null, "cabin computers", "receiver band"],
            root.GetProperty("bands").EnumerateArray().Select(b => b.GetProperty("name").GetString()));
        Assert.Equal(2 * 12, root.GetProperty("properties").GetArrayLength());
        foreach (JsonElement band in root.GetProperty("bands").EnumerateArray())
        {
            JsonElement[] ranking = [.. band.GetProperty("ranking").EnumerateArray()];
            Assert.Equal(Enumerable.Range(1, 12), ranking.Select(r => r.GetProperty("rank").GetInt32()).Order());
            Assert.Equal(1, ranking[0].GetProperty("group").GetInt32());
            Assert.Equal(JsonValueKind.Null, band.GetProperty("yardstick").ValueKind);
            Assert.All(ranking,
                r => Assert.InRange(Part(r, "mean_db", "value"), Part(r, "mean_db", "low"), Part(r, "mean_db", "high")));
        }
    }

    [Fact]
    public void TheSeedDecidesTheDrawsAndNothingElse()
    {
        string folder = Rehearsed("c", "--placements", "3", "--sweeps", "2");
        string Said(string seed) => Shell.Run("choose", folder, "--seed", seed, "--format", "json").Out;
        string one = Said("1"), two = Said("2");
        Assert.Equal(one, Said("1"));
        Assert.Equal(one, Shell.Run("choose", folder, "--format", "json").Out);
        Assert.NotEqual(one, two);
        string Rest(string said) =>
            string.Join('\n', said.Split('\n').Where(l => !l.Contains("probability_best", StringComparison.Ordinal)));
        Assert.Equal(Rest(one), Rest(two));
        Assert.Equal(2, Shell.Run("choose", folder, "--seed", "-1").Code);
    }

    [Fact]
    public void ASingleSpecimenIsNoChoiceAndTheRemedyIsSaid()
    {
        string folder = Path.Combine(_scratch.Path, "c");
        Shell.Run("rehearse", folder, "--points", "11");
        (int code, string output, string error) = Shell.Run("choose", folder);
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.EndsWith("c: There is nothing to choose from: that takes two specimens. Put the sweeps of each under "
            + "covered/<lot>/<specimen>.", error.TrimEnd(), StringComparison.Ordinal);
        Assert.Single(error.TrimEnd().Split(Environment.NewLine));
    }

    [Fact]
    public void AYardstickStandsLastAndIsNoCandidate()
    {
        string folder = Rehearsed("c", "--lot-step", "C:12:30MHz-1GHz");
        File.AppendAllText(Path.Combine(folder, "campaign.toml"), "\n[choice]\nyardstick = \"C/C01\"\n");
        JsonElement band =
            JsonDocument.Parse(Shell.Run("choose", folder, "--format", "json").Out).RootElement.GetProperty("bands")[0];
        Assert.Equal("C01", band.GetProperty("yardstick").GetProperty("specimen").GetString());
        Assert.Equal(JsonValueKind.Null, band.GetProperty("yardstick").GetProperty("rank").ValueKind);
        Assert.Equal(["A01", "B01"], band.GetProperty("ranking").EnumerateArray()
            .Select(r => r.GetProperty("specimen").GetString()!).Order(StringComparer.Ordinal));
        Assert.All(band.GetProperty("ranking").EnumerateArray(),
            r => Assert.InRange(Part(r, "below_yardstick_db", "value"), 11, 13));
        string[] lines = Shell.Run("choose", folder).Out.Split(Environment.NewLine);
        Assert.Contains(lines, l =>
            l.TrimStart().StartsWith("yardstick", StringComparison.Ordinal) && l.Contains("C/C01", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.Contains("Against C/C01", StringComparison.Ordinal));
    }

    [Fact]
    public void WithoutPlacementsItIsSaid()
    {
        string folder = Rehearsed("c");
        string output = Shell.Run("choose", folder).Out;
        Assert.Contains("No winner is named: no specimen is known to have been taken off and put back", output,
            StringComparison.Ordinal);
        Assert.DoesNotContain("best (95 %)", output, StringComparison.Ordinal);
        Assert.All(output.Split('\n').Where(l => l.Contains("A/A", StringComparison.Ordinal)),
            l => Assert.EndsWith("not known", l.TrimEnd(), StringComparison.Ordinal));
        using var json = System.Text.Json.JsonDocument.Parse(Shell.Run("choose", folder, "--format", "json").Out);
        Assert.All(
            json.RootElement.GetProperty("bands")[0].GetProperty("ranking").EnumerateArray(),
            r => Assert.Equal(System.Text.Json.JsonValueKind.Null, r.GetProperty("probability_best_low").ValueKind));
    }

    [Fact]
    public void WithoutRepeatsTheOrderIsThatOfTheValues()
    {
        string output = Shell.Run("choose", Rehearsed("c", "--sweeps", "1")).Out;
        Assert.Contains("No specimen was swept twice, so how far two specimens differ by chance cannot be told: the order is "
            + "that of the values alone.", output, StringComparison.Ordinal);
        Assert.DoesNotContain("shields best", output, StringComparison.Ordinal);
    }

    // Three sweeps each repeat; without a floor they are bounds all the same.
    [Fact]
    public void BoundsThatRepeatAreNotSaidToBeSingle()
    {
        string folder = Rehearsed("c");
        Directory.Delete(Path.Combine(folder, "floor"), recursive: true);
        string output = Shell.Run("choose", folder).Out;
        Assert.DoesNotContain("swept twice", output, StringComparison.Ordinal);
        Assert.DoesNotContain("the floor hides", output, StringComparison.Ordinal);
        Assert.Contains("Only bounds are known, and bounds do not scatter", output, StringComparison.Ordinal);
    }

    // The reference saved as a specimen's sweeps: whatever is ranked then may be wrong.
    [Fact]
    public void UnderAFindingThatMisleadsNobodyIsRankedAndTheFilesSayWhy()
    {
        string folder = Rehearsed("c", "--specimens", "3", "--placements", "3", "--sweeps", "2", "--placement-spread", "0.3");
        string ranked = Shell.Run("choose", folder).Out;
        Assert.Contains("cannot be told from the best", ranked, StringComparison.Ordinal);
        AddToLevels(Path.Combine(folder, "covered", "A", "A02"), 40);
        File.AppendAllText(Path.Combine(folder, "campaign.toml"), "\n[choice]\nyardstick = \"C/C03\"\n");

        string output = Shell.Run("choose", folder).Out;
        Assert.Contains("Settle first what 'sweepstats check' tells: a specimen that shields nothing, as if it was not in place. "
            + "Until then no winner is named.", output, StringComparison.Ordinal);
        foreach (string claim in new[] { "best (95 %)", "groups:", "no better than", "No better than", "%  " })
        {
            Assert.DoesNotContain(claim, output, StringComparison.Ordinal);
        }

        using var json = JsonDocument.Parse(Shell.Run("choose", folder, "--format", "json").Out);
        Assert.Equal(["not-in-place"],
            json.RootElement.GetProperty("not_ranked_because").EnumerateArray().Select(c => c.GetString()));
        Assert.All(json.RootElement.GetProperty("bands")[0].GetProperty("ranking").EnumerateArray(), r => Assert.All(
            ["rank", "group", "probability_best_low", "probability_best_high"],
            name => Assert.Equal(JsonValueKind.Null, r.GetProperty(name).ValueKind)));

        string report = Path.Combine(_scratch.Path, "report");
        Assert.Equal(0, Shell.Run("run", folder, "--out", report, "--charts", "none").Code);
        string[] rows = File.ReadAllLines(Path.Combine(report, "choice.csv"));
        string[] columns = rows[0].Split(',');
        string Cell(string row, string column) => row.Split(',')[Array.IndexOf(columns, column)];
        Assert.All(rows.Skip(1), row => Assert.Equal(("", "", "", "", "not-in-place"),
            (Cell(row, "rank"), Cell(row, "group"), Cell(row, "probability_best_high"), Cell(row, "dominated_by"),
                Cell(row, "not_ranked_because"))));
    }

    [Fact]
    public void GateAndQuietDoAsElsewhere()
    {
        string fails = Rehearsed("c", "--requirement", "60"), meets = Rehearsed("d", "--requirement", "30");
        Assert.Equal((1, "", ""), Shell.Run("choose", fails, "--gate", "--quiet"));
        Assert.Equal((0, "", ""), Shell.Run("choose", fails, "--quiet"));
        Assert.Equal((0, "", ""), Shell.Run("choose", meets, "--gate", "--quiet"));
    }

    private string Rehearsed(string name, params string[] more)
    {
        string folder = Path.Combine(_scratch.Path, name);
        (int code, _, string error) = Shell.Run(["rehearse", folder, "--points", "21", "--lots", "3", .. more]);
        Assert.True(code == 0, error);
        return folder;
    }

    private static void AddToLevels(string folder, double decibels)
    {
        foreach (string file in Directory.EnumerateFiles(folder, "*.csv", SearchOption.AllDirectories))
        {
            File.WriteAllLines(file, File.ReadAllLines(file).Select(line => Added(line, decibels)));
        }
    }

    private static string Added(string row, double decibels) =>
        row.Split(',') is [var frequency, var level] && double.TryParse(level, CultureInfo.InvariantCulture, out double db)
            ? string.Create(CultureInfo.InvariantCulture, $"{frequency},{db + decibels}") : row;

    private static double Part(JsonElement specimen, string figure, string part) =>
        specimen.GetProperty(figure).GetProperty(part).GetDouble();
}
