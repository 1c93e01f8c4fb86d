using System.Text.Json;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>What [field] of campaign.toml does: everywhere a reader looks, with its caution, and nowhere without it.</summary>
public sealed class FieldTests : IDisposable
{
    private const string Caution =
        "It is no proof that a person, a device or a building is protected. Local codes and licensed practice prevail.";

    private readonly ScratchFolder _scratch = new();

    private string Folder => Path.Combine(_scratch.Path, "c");

    private string Report => Path.Combine(_scratch.Path, "r");

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void ItStandsInRunCheckPageAndSummaryAndFollowsFromTheClaim()
    {
        Rehearse("--se", "40");
        State("threat_v_per_m = 50e3\ntolerable_v_per_m = 5e3\n");
        string run = Shell.Run("run", Folder, "--out", Report, "--verbose").Out, check = Shell.Run("check", Folder).Out;
        JsonElement summary = JsonDocument.Parse(File.ReadAllText(Path.Combine(Report, "summary.json"))).RootElement;
        JsonElement specimen = summary.GetProperty("specimens")[0];
        double claim = specimen.GetProperty("at_least_db").GetDouble(),
            left = specimen.GetProperty("field").GetProperty("at_most_v_per_m").GetDouble();
        Assert.Equal(50e3 * Math.Pow(10, -claim / 20), left, 6);
        Assert.Equal("within", specimen.GetProperty("field").GetProperty("tolerable").GetString());
        Assert.Equal(50e3, summary.GetProperty("plan").GetProperty("field").GetProperty("threat_v_per_m").GetDouble());
        string said = FormattableString.Invariant($"at most {Math.Ceiling(left):0} V/m of 50 kV/m");
        Assert.Contains($"Field: {said}{Environment.NewLine}", run, StringComparison.Ordinal);
        string page = File.ReadAllText(Path.Combine(Report, "index.html"));
        Assert.All([run, check],
            text => Assert.Contains($"Field: {said} at all 21 frequencies from 30 MHz to 1 GHz (95 %; most behind A/A01), "
                + "within the 5 kV/m that are tolerable.", text, StringComparison.Ordinal));
        Assert.All([run, check, page], text => Assert.Contains(Caution, text, StringComparison.Ordinal));
        Assert.All([run, check, page], text =>
            Assert.Contains("of a steady field at the measured frequencies and not of a pulse", text, StringComparison.Ordinal));
        Assert.Contains(FormattableString.Invariant($">{Math.Ceiling(left):0} V/m</td>"), page, StringComparison.Ordinal);
        Assert.DoesNotContain("does not use it", run + page, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutATolerableFieldOnlyWhatIsLeftIsTold()
    {
        Rehearse("--se", "40");
        State("threat_v_per_m = 3\n");
        string output = Shell.Run("check", Folder).Out;
        Assert.Matches("Field: at most [0-9.]+ mV/m of 3 V/m at all ", output);
        Assert.DoesNotContain("tolerable", output, StringComparison.Ordinal);
    }

    [Fact]
    public void ATolerableFieldThatIsNotShownIsNotCalledKept()
    {
        Rehearse("--se", "20");
        State("threat_v_per_m = 50e3\ntolerable_v_per_m = 500\n");
        Assert.Contains("; that no more than the tolerable 500 V/m are left is not shown.", Shell.Run("check", Folder).Out,
            StringComparison.Ordinal);
    }

    [Fact]
    public void WhereAFaultStandsNothingIsClaimed()
    {
        Rehearse("--reference", "-97", "--se", "5");
        State("threat_v_per_m = 50e3\n");
        (int code, string output, _) = Shell.Run("check", Folder);
        Assert.Equal(1, code);
        Assert.Contains("Field: nothing is claimed of what is left of 50 kV/m. Why: a fault stands against the measurement.",
            output, StringComparison.Ordinal);
        Assert.DoesNotContain("at most", output.Split(Environment.NewLine)
            .Single(l => l.StartsWith("Field:", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public void WhereNoFieldIsStatedNothingIsSaid()
    {
        Rehearse("--se", "40");
        Shell.Run("run", Folder, "--out", Report);
        Assert.DoesNotContain("\"field\"", File.ReadAllText(Path.Combine(Report, "summary.json")), StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"field\"", File.ReadAllText(Path.Combine(Report, "index.html")), StringComparison.Ordinal);
        Assert.DoesNotContain("Field:", Shell.Run("check", Folder).Out, StringComparison.Ordinal);
    }

    private void Rehearse(params string[] words) => Shell.Run(["rehearse", Folder, "--points", "21", .. words]);

    private void State(string keys) => File.AppendAllText(Path.Combine(Folder, "campaign.toml"), "\n[field]\n" + keys);
}
