using System.Globalization;
using System.Text.Json;
using SweepStats.Acceptance.Files;
using SweepStats.Report.Text;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>
/// What sweepstats field says and writes: what is left of field and pulse, what is assumed, and that it proves no protection.
/// </summary>
public sealed class PulseTests : IDisposable
{
    private const string Caution =
        "It is no proof that a person, a device or a building is protected. Local codes and licensed practice prevail.";

    private readonly ScratchFolder _scratch = new();

    private string Folder => Path.Combine(_scratch.Path, "c");

    private string Report => Path.Combine(_scratch.Path, "r");

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void TheFirstScreenHasNoMoreThan25LinesAndNamesWhatIsAssumed()
    {
        Rehearse("--se", "35", "--se-stop", "45", "--specimens", "12");
        State("threat_v_per_m = 50e3\ntolerable_v_per_m = 800\n");
        foreach (string[] words in new string[][] { ["field", Folder], ["field", Shell.Demo],
            ["field", Folder, "--out", Report, "--outside", "hold"] })
        {
            string output = Shell.Run(words).Out;
            Assert.InRange(output.TrimEnd().Split(Environment.NewLine)
                .SelectMany(line => WrappedLine.Of(line, WrappedLine.Usual)).Count(), 10, 25);
            Assert.Contains(Caution, output, StringComparison.Ordinal);
            Assert.Contains("early-time pulse of IEC 61000-2-9", output, StringComparison.Ordinal);
            Assert.Contains("8.5 % of its energy lies in the measured 30 MHz to 1 GHz.", output, StringComparison.Ordinal);
            Assert.Matches("(none|hold) \\(asked\\)", output);
            Assert.Contains("For any phase and specimen: none ", output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void FlatTwentyDecibelsTakenToHoldOnLeaveATenth()
    {
        Rehearse("--se", "20", "--scatter", "0.05", "--looks", "1000");
        JsonElement left = Json("--outside", "hold").GetProperty("specimens")[0].GetProperty("pulse_left")[1];
        Assert.Equal("hold", left.GetProperty("outside").GetString());
        Assert.InRange(left.GetProperty("peak_v_per_m").GetDouble(), 4900, 5100);
        Assert.InRange(5000, left.GetProperty("peak_low_v_per_m").GetDouble(), left.GetProperty("peak_high_v_per_m").GetDouble());
        Assert.InRange(left.GetProperty("rise_s").GetDouble(), 2.4e-9, 2.6e-9);
        Assert.InRange(left.GetProperty("width_s").GetDouble(), 22.5e-9, 23.5e-9);
        Assert.InRange(left.GetProperty("peak_at_most_v_per_m").GetDouble(), 7700, 8300);
    }

    [Fact]
    public void FilesHoldARowForEachAssumptionAndAChart()
    {
        Rehearse("--se", "30");
        (int code, string output, _) = Shell.Run("field", Folder, "--out", Report, "--png");
        Assert.Equal(0, code);
        Assert.Contains($"Written: {Path.Combine(Report, "field.csv")}", output, StringComparison.Ordinal);
        string[] rows = File.ReadAllLines(Path.Combine(Report, "field.csv"));
        Assert.Equal(4, rows.Length);
        Assert.All(["none,yes", "hold,no", "slope,no"],
            (word, i) => Assert.StartsWith($"A,A01,{word},", rows[i + 1], StringComparison.Ordinal));
        string[] hold = rows[2].Split(',');
        Assert.InRange(double.Parse(hold[4], CultureInfo.InvariantCulture), double.Parse(hold[5], CultureInfo.InvariantCulture),
            double.Parse(hold[6], CultureInfo.InvariantCulture));
        Assert.Contains("Time from the start of the pulse", File.ReadAllText(Path.Combine(Report, "charts/pulse.svg")),
            StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(Report, "charts/pulse.png")));
        // An earlier one is replaced, another folder is not.
        Assert.Equal(0, Shell.Run("field", Folder, "--out", Report, "--outside", "slope").Code);
        Assert.Equal(2, Shell.Run("field", Folder, "--out", Folder).Code);
    }

    [Fact]
    public void APulseOfTheUsersOwnIsTaken()
    {
        Rehearse("--se", "20");
        State("pulse_peak_v_per_m = 100\npulse_alpha_per_s = 1e7\npulse_beta_per_s = 1e9\noutside = \"hold\"\n");
        JsonElement found = Json();
        Assert.Equal(100, found.GetProperty("pulse").GetProperty("peak_v_per_m").GetDouble(), 9);
        Assert.Equal("hold", found.GetProperty("pulse").GetProperty("outside").GetString());
        Assert.InRange(found.GetProperty("specimens")[0].GetProperty("pulse_left")[1].GetProperty("peak_v_per_m")
            .GetDouble(), 9.5, 10.5);
        Assert.Contains("stated in campaign.toml", Shell.Run("field", Folder).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("pulse_peak_v_per_m = 100\n", "field.pulse_alpha_per_s is missing")]
    [InlineData("pulse_peak_v_per_m = 100\npulse_alpha_per_s = 1e7\npulse_beta_per_s = 1e7\n", "is 1 times pulse_alpha_per_s")]
    [InlineData("pulse_peak_v_per_m = -1\npulse_alpha_per_s = 1e7\npulse_beta_per_s = 1e8\n", "out of range")]
    [InlineData("outside = \"flat\"\n", "field.outside is 'flat'")]
    [InlineData("tolerable_v_per_m = 1\noutside = \"hold\"\n", "field.threat_v_per_m is missing")]
    public void KeysThatMakeNoSenseAreRefusedWithTheirLine(string keys, string why)
    {
        Rehearse("--se", "20");
        State(keys);
        (int code, string output, string error) = Shell.Run("field", Folder, "--out", Report);
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.Contains("campaign.toml", error, StringComparison.Ordinal);
        Assert.Contains(why, error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Report));
    }

    [Theory]
    [InlineData("--outside", "flat")]
    [InlineData("--png")]
    public void WordsThatMakeNoSenseAreRefused(params string[] words)
    {
        Rehearse("--se", "20");
        Assert.Equal(2, Shell.Run(["field", Folder, .. words]).Code);
    }

    [Fact]
    public void UnderAFaultNothingIsClaimed()
    {
        Rehearse("--reference", "-97", "--se", "5");
        string output = Shell.Run("field", Folder).Out;
        Assert.Contains("No claim: a fault stands against the measurement.", output, StringComparison.Ordinal);
        Assert.DoesNotContain("at most", output, StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.String, Json().GetProperty("specimens")[0].GetProperty("no_claim").ValueKind);
    }

    [Fact]
    public void ShownIsWhereTheToleratedFieldIsMet()
    {
        Rehearse("--se", "35", "--se-stop", "45");
        State("threat_v_per_m = 1000\ntolerable_v_per_m = 10\n");
        Assert.Matches("Needed for 10 V/m: SE 40.0 dB; for A/A01 shown at [0-9]+ of 101 frequencies, .*MHz to 1 GHz\\.",
            Shell.Run("field", Folder).Out);
        Assert.Contains("field blocked", Shell.Run("field", Folder, "--verbose").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void TheReportHasItWhereAFieldIsStated()
    {
        Rehearse("--se", "35");
        State("outside = \"hold\"\n");
        Shell.Run("run", Folder, "--out", Report);
        string page = File.ReadAllText(Path.Combine(Report, "index.html"));
        Assert.All(["What is left of a pulse", "any phase", Caution, "taken to hold on (hold)"],
            text => Assert.Contains(text, page, StringComparison.OrdinalIgnoreCase));
        Assert.True(File.Exists(Path.Combine(Report, "field.csv")));
        Assert.True(File.Exists(Path.Combine(Report, "charts/pulse.svg")));
    }

    [Fact]
    public void LayersStatedInSweepsAreComparedAndSaidNotToAdd()
    {
        Rehearse("--se", "30", "--specimens", "2");
        Layers("1", "2");
        string output = Shell.Run("field", Folder).Out;
        Assert.Matches("Lot A, 1 to 2 layers: the further layer adds −?[0-9.]+ dB \\(95 %: ", output);
        Assert.Contains("Decibels of layers do not simply add", output, StringComparison.Ordinal);
        Assert.Equal(2, Json().GetProperty("layers")[0].GetProperty("to").GetInt32());
        Shell.Run("run", Folder, "--out", Report);
        Assert.Contains("Decibels of layers do not simply add", File.ReadAllText(Path.Combine(Report, "index.html")),
            StringComparison.Ordinal);
    }

    [Fact]
    public void HalfALayerIsRefused()
    {
        Rehearse("--se", "30", "--specimens", "2");
        Layers("1", "1.5");
        (int code, _, string error) = Shell.Run("field", Folder);
        Assert.Equal(2, code);
        Assert.Contains("'1.5' in the column 'layers' is not a number of layers", error, StringComparison.Ordinal);
    }

    private void Layers(params string[] layers)
    {
        IEnumerable<string> Rows(string folder, string role, Func<string, string> rest) =>
            Directory.EnumerateFiles(Path.Combine(Folder, folder), "*.csv", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Folder, f).Replace('\\', '/')).Order(StringComparer.Ordinal)
                .Select(f => $"{f},{role},{rest(f)}");
        string[] covered = [.. layers.SelectMany((l, i) => Rows($"covered/A/A0{i + 1}", "covered", _ => $"A,A0{i + 1},{l}"))];
        File.WriteAllLines(
            Path.Combine(Folder, "sweeps.csv"),
                ["file,role,lot,specimen,layers", .. Rows("floor", "floor", _ => ",,"),
                .. Rows("reference", "reference", _ => ",,"), .. covered]);
    }

    private JsonElement Json(params string[] words) =>
        JsonDocument.Parse(Shell.Run(["field", Folder, "--format", "json", .. words]).Out).RootElement;

    private void Rehearse(params string[] words) => Shell.Run(["rehearse", Folder, "--points", "101", .. words]);

    private void State(string keys) => File.AppendAllText(Path.Combine(Folder, "campaign.toml"), "\n[field]\n" + keys);
}
