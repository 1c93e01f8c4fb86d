using System.Text.Json;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class PlanTests
{
    private static readonly string[] FromNothing = ["plan", "--scatter", "0.3", "--placement-spread", "0.8", "--range", "60",
        "--looks", "20", "--half-width", "1", "--claim", "60"];

    [Fact]
    public void APilotTellsItsComponentsAndWhatTheClaimNeeds()
    {
        (int code, string output, string error) = Shell.Run("plan", Shell.Demo, "--half-width", "1", "--claim", "40");
        Assert.Equal(0, code);
        Assert.Empty(error);
        Assert.StartsWith("Plan from the pilot: Receiver cabin curtain", output, StringComparison.Ordinal);
        Assert.Contains("Standard deviations: between placements", output, StringComparison.Ordinal);
        Assert.Contains("For ±1 dB: ", output, StringComparison.Ordinal);
        Assert.Contains("To claim SE ≥ 40 dB", output, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatTheGuideShowsIsWhatIsPrinted()
    {
        (int code, string output, _) = Shell.Run(FromNothing);
        Assert.Equal(0, code);
        string guide = File.ReadAllText(Path.Combine(Repository.Root, "src/SweepStats.Cli/Guide/plan.md"));
        Assert.Contains("    sweepstats " + string.Join(' ', FromNothing), guide, StringComparison.Ordinal);
        Assert.All(output.TrimEnd().Split(Environment.NewLine).Where(l => l.Length > 0),
            line => Assert.Contains("    " + line + "\n", guide, StringComparison.Ordinal));
    }

    [Fact]
    public void JsonHoldsTheSamePlan()
    {
        (int code, string output, _) = Shell.Run([.. FromNothing, "--format", "json"]);
        Assert.Equal(0, code);
        JsonElement plan = JsonDocument.Parse(output).RootElement;
        Assert.Equal(0.8, plan.GetProperty("basis").GetProperty("placement_deviation_db").GetDouble());
        Assert.Equal(30, plan.GetProperty("table").GetArrayLength());
        JsonElement claim = plan.GetProperty("claim");
        Assert.Equal(claim.GetProperty("range_needed_db").GetDouble() - 60, claim.GetProperty("missing_db").GetDouble(), 1e-9);
        Assert.InRange(plan.GetProperty("chosen").GetProperty("half_width_db").GetDouble(), 0.5, 1);
    }

    [Fact]
    public void APilotOfSingleSweepsIsRefusedWithItsRemedy()
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c");
        Shell.Run("rehearse", folder, "--points", "11", "--reference-sweeps", "1", "--sweeps", "1");
        (int code, string output, string error) = Shell.Run("plan", folder);
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.Contains("state --scatter", error, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatNoRangeGivesIsSaid()
    {
        (int code, string output, _) =
            Shell.Run("plan", "--scatter", "1", "--placement-spread", "2", "--range", "80", "--claim", "40", "--margin", "1");
        Assert.Equal(0, code);
        Assert.Contains("with any range the claim succeeds in", output, StringComparison.Ordinal);
        Assert.DoesNotContain("are missing", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3 placements of 1 sweep, 3 reference sweeps give ±1.68 dB: not enough for ±1 dB.", "--placements", "3",
        "--sweeps", "1")]
    [InlineData("5 placements of 3 sweeps, 15 reference sweeps give ±0.93 dB: enough for ±1 dB.", "--placements", "5",
        "--sweeps", "3")]
    [InlineData("For ±1 dB: 5 placements of 2 sweeps, 10 reference sweeps (±0.94 dB).", "--sweeps", "2")]
    [InlineData("±1 dB cannot be had with 3 placements, however often each is swept: take more placements.", "--placements", "3")]
    public void WhatIsFixedIsHeld(string line, params string[] held)
    {
        (int code, string output, _) =
            Shell.Run(["plan", "--scatter", "0.3", "--placement-spread", "0.8", "--half-width", "1", .. held]);
        Assert.Equal(0, code);
        Assert.Contains(line, output.Split(Environment.NewLine));
    }

    [Fact]
    public void APilotsRequirementIsPlannedForAtItsOwnLevel()
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c");
        Shell.Run("rehearse", folder, "--points", "21", "--requirement", "37.5");
        File.AppendAllText(Path.Combine(folder, "campaign.toml"), "confidence = 0.9\nguard_band_db = 0.5\n");
        string asked = Shell.Run("plan", folder).Out;
        Assert.Contains("planned for the pilot's requirement of 37.5 dB and its guard band of 0.5 dB at ", asked,
            StringComparison.Ordinal);
        Assert.Contains("To claim SE ≥ 38 dB at one frequency (90 %, one-sided)", asked, StringComparison.Ordinal);
        string stated = Shell.Run("plan", folder, "--claim", "30").Out;
        Assert.DoesNotContain("No claim was stated", stated, StringComparison.Ordinal);
        Assert.Contains("To claim SE ≥ 30 dB at one frequency (90 %, one-sided)", stated, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3", "Caution: the pilot's floor was taken at 3 frequencies")]
    [InlineData("10", "Range and claims hold for bands of 10 and more frequencies")]
    public void WhatAFewFrequenciesDoNotShowIsSaid(string points, string remark)
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c");
        Shell.Run("rehearse", folder, "--points", points);
        Assert.Contains(remark, Shell.Run("plan", folder).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void NoSettingIsNamedForWhatNoneGives()
    {
        string output = Shell.Run("plan", "--scatter", "0.3", "--placement-spread", "0.8", "--claim", "300", "--range", "60").Out;
        Assert.Contains("dB are missing: no setting gives so much.", output, StringComparison.Ordinal);
        Assert.DoesNotContain("source power", output, StringComparison.Ordinal);
    }

    /// <summary>
    /// A reference that hardly rises over the floor drew intervals that are no numbers; so did a specimen far below it.
    /// </summary>
    [Theory]
    [InlineData("--scatter", "0.3", "--range", "1e-300", "--claim", "10")]
    [InlineData("--scatter", "0", "--range", "0.001", "--claim", "300", "--margin", "0.001")]
    [InlineData("--scatter", "0", "--range", "300", "--claim", "0", "--margin", "300", "--looks", "10000")]
    [InlineData("--scatter", "50", "--placement-spread", "50", "--range", "300", "--claim", "300", "--confidence", "0.9999")]
    [InlineData("--scatter", "50", "--half-width", "0.001", "--range", "1", "--looks", "1", "--claim", "300", "--placements", "1",
        "--sweeps", "1")]
    public void AbsurdFiguresGiveAnAnswerWithoutNaN(params string[] words)
    {
        foreach (string format in new[] { "text", "json" })
        {
            (int code, string output, string error) = Shell.Run(["plan", .. words, "--format", format]);
            Assert.Equal((0, ""), (code, error));
            Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("plan")]
    [InlineData("plan", "no/such/campaign")]
    [InlineData("plan", "--scatter", "-1")]
    [InlineData("plan", "--scatter", "wide")]
    [InlineData("plan", "--scatter", "1", "--half-width", "0")]
    [InlineData("plan", "--scatter", "1", "--probability", "95")]
    [InlineData("plan", "--scatter", "1", "--looks", "0.5")]
    [InlineData("plan", "--scatter", "1", "--placements", "1000")]
    [InlineData("plan", "--scatter", "1", "--confidence", "0.5")]
    [InlineData("plan", "--scatter", "1", "--gate")]
    [InlineData("plan", "--scatter", "1", "--claim", "1e308")]
    [InlineData("plan", "--scatter", "1", "--claim", "-40")]
    [InlineData("plan", "--scatter", "1", "--claim", "NaN")]
    [InlineData("plan", "--scatter", "1e308")]
    [InlineData("plan", "--scatter", "1", "--placement-spread", "1e308")]
    [InlineData("plan", "--scatter", "1", "--range", "1e308")]
    [InlineData("plan", "--scatter", "1", "--margin", "1e308")]
    [InlineData("plan", "--scatter", "1", "--half-width", "1e-300")]
    [InlineData("plan", "--scatter", "1", "--placements", "x", "--sweeps", "200")]
    [InlineData("plan", "--scatter", "1", "--placements", "200", "--sweeps", "200")]
    public void WordsThatMakeNoSenseEndWithTwoAndOneLineThatHelps(params string[] words)
    {
        (int code, string output, string error) = Shell.Run(words);
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.Single(error.TrimEnd().Split(Environment.NewLine));
    }
}
