using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using SweepStats.Files;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Floor;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>Keys about the floor, the leakage and the way of averaging: into the plan, into summary.json, and refused.</summary>
public sealed class FloorAndLeakageKeys : IDisposable
{
    private readonly ScratchFolder _folder = new ScratchFolder().WithUsualSweeps();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("", SweepTaking.Unstated, null, false)]
    [InlineData("[setup]\nleakage = \"same\"\n[floor]\ntaken = \"before-and-after\"\nstability_db = 0.5\n",
        SweepTaking.BeforeAndAfter, 0.5, true)]
    [InlineData("[setup]\nleakage = \"unknown\"\n[floor]\ntaken = \"once\"\n", SweepTaking.Once, null, false)]
    [InlineData("[floor]\nstability_db = 20\n", SweepTaking.Unstated, 20.0, false)]
    [InlineData("[floor]\nstability_db = 0\ndeclared_dbm = -104\n", SweepTaking.Unstated, 0.0, false)]
    public void TheyReachThePlan(string text, SweepTaking taken, double? stability, bool same)
    {
        CampaignReading reading = Read(text);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal((taken, stability, same),
            (reading.Plan.FloorTaking, reading.Plan.FloorStabilityDb, reading.Plan.SameLeakage));
    }

    [Theory]
    [InlineData("", false)]
    [InlineData("[band]\ninterpolate = true\n", true)]
    [InlineData("[band]\nstart_hz = 30e6\ninterpolate = false\n", false)]
    public void InterpolationReachesThePlan(string text, bool asked)
    {
        CampaignReading reading = Read(text);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal(asked, reading.Plan.Interpolate);
    }

    [Fact]
    public void WhetherToInterpolateIsYesOrNo() => Assert.NotEmpty(Read("[band]\ninterpolate = \"linear\"\n").Faults);

    [Theory]
    [InlineData("peak", Averaging.Peak)]
    [InlineData("lowest", Averaging.Lowest)]
    public void HeldReadingsAreWaysOfAveragingToo(string word, Averaging averaging) =>
        Assert.Equal(averaging, Read($"averaging = \"{word}\"\n").Plan.Averaging);

    [Theory]
    [InlineData("[setup]\nleakage = \"sam\"", 2, "setup.leakage is 'sam' (did you mean 'same'?)", "use \"same\", \"unknown\"")]
    [InlineData("[setup]\nleakage = true", 2, "setup.leakage is not a text", "\"same\"")]
    [InlineData("[floor]\ntaken = \"before\"", 2, "floor.taken is 'before'", "use \"once\", \"before-and-after\"")]
    [InlineData("[floor]\ntaken = 2", 2, "floor.taken is not a text", "\"once\"")]
    [InlineData("\n[floor]\nstability_db = 20.1", 3, "floor.stability_db is 20.1, which is out of range",
        "choose a value from 0 to 20")]
    [InlineData("[floor]\nstability_db = -0.1", 2, "floor.stability_db is -0.1", "0 to 20")]
    [InlineData("[floor]\nstability_db = nan", 2, "out of range", "0 to 20")]
    [InlineData("[floor]\nstability_db = \"1\"", 2, "floor.stability_db is not a number", "without quotes")]
    [InlineData("[floor]\nfloor_stability_db = 1", 2,
        "there is no key 'floor_stability_db' in [floor] (did you mean 'stability_db'?)", "declared_dbm, taken, stability_db")]
    [InlineData("floor_stability_db = 1", 1, "there is no key 'floor_stability_db' at the top", "title")]
    [InlineData("[floor]", 1, "section [floor] says nothing", "add taken or stability_db, or remove it")]
    [InlineData("averaging = \"Max Hold\"", 1, "averaging is 'Max Hold', not one of power, log, sample, peak and lowest",
        "write \"peak\"")]
    [InlineData("averaging = \"quasi-peak\"", 1, "averaging is 'quasi-peak'", "write \"peak\"")]
    [InlineData("averaging = \"positive peak\"", 1, "averaging is 'positive peak'", "write \"peak\"")]
    [InlineData("averaging = \"min hold\"", 1, "averaging is 'min hold'", "write \"lowest\"")]
    [InlineData("averaging = \"negative peak\"", 1, "averaging is 'negative peak'", "write \"lowest\"")]
    public void ABadOneIsRefusedWithItsLineAndItsRemedy(string text, int line, string problem, string remedy)
    {
        CampaignReading reading = Read(text);
        Assert.Null(reading.Campaign);
        ReadFault? fault = reading.Faults.FirstOrDefault(
            f => f.File == "campaign.toml" && f.Line == line && f.Problem.Contains(problem, StringComparison.Ordinal));
        Assert.True(fault is not null, string.Join('\n', reading.Faults));
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatServesNothingIsSaid()
    {
        CampaignReading reading = Read("[setup]\nleakage = \"same\"\n[floor]\ntaken = \"once\"\nstability_db = 1\n");
        Assert.Contains("floor.taken was not used: there are no floor sweeps", reading.Assumptions);
        Assert.Contains("floor.stability_db was not used: no floor is known", reading.Assumptions);
        Assert.Contains("leakage = \"same\" was not used: no sweep carries phase", reading.Assumptions);
        _folder.With("floor/f.csv", "frequency_hz,level_dbm,phase_deg\n30000000,-90,1\n40000000,-91,2\n50000000,-92,3\n");
        Assert.DoesNotContain(_folder.Read().Assumptions, a => a.Contains("was not used", StringComparison.Ordinal));
    }

    [Fact]
    public void TheSummaryStatesThemWhereTheyWereStated()
    {
        JsonElement stated =
            PlanOf(new AnalysisPlan { FloorTaking = SweepTaking.BeforeAndAfter, FloorStabilityDb = 0.5, SameLeakage = true });
        Assert.Equal("before-and-after", stated.GetProperty("floor_taken").GetString());
        Assert.Equal(0.5, stated.GetProperty("floor_stability_db").GetDouble());
        Assert.Equal("same", stated.GetProperty("leakage").GetString());
        Assert.Equal("once", PlanOf(new AnalysisPlan { FloorTaking = SweepTaking.Once }).GetProperty("floor_taken").GetString());
        Assert.All(["floor_taken", "floor_stability_db", "leakage"],
            key => Assert.False(PlanOf(new AnalysisPlan()).TryGetProperty(key, out _)));
    }

    [Theory]
    [InlineData(AveragingSource.Recognised, Averaging.Peak, "peak", "recognised")]
    [InlineData(AveragingSource.Files, Averaging.Lowest, "lowest", "files")]
    public void TheSummaryNamesTheAveragingInUse(AveragingSource known, Averaging taken, string used, string source)
    {
        AnalysisResult result = SomeResult.Analysed();
        JsonElement plan = PlanOf(result with
        {
            Plan = new AnalysisPlan { Averaging = Averaging.Power },
            Averaging = result.Averaging with { Averaging = taken, Source = known },
        });
        Assert.Equal("power", plan.GetProperty("averaging").GetString());
        Assert.Equal(used, plan.GetProperty("averaging_in_use").GetString());
        Assert.Equal(source, plan.GetProperty("averaging_source").GetString());
    }

    [Theory]
    [InlineData(Averaging.Peak, "peak")]
    [InlineData(Averaging.Lowest, "lowest")]
    public void TheSummaryNamesHeldReadings(Averaging averaging, string word) =>
        Assert.Equal(word, PlanOf(new AnalysisPlan { Averaging = averaging }).GetProperty("averaging").GetString());

    [Fact]
    public void TheSchemaKnowsInterpolation() =>
        Assert.True(PlanOf(new AnalysisPlan { Interpolate = true }).GetProperty("interpolate").GetBoolean());

    [Fact]
    public void ANumberThatJsonHasNotIsNull() => Assert.Equal(JsonValueKind.Null,
        PlanOf(new AnalysisPlan { SourceDbm = double.NaN }).GetProperty("source_dbm").ValueKind);

    private static JsonElement PlanOf(AnalysisPlan plan) => PlanOf(SomeResult.Analysed() with { Plan = plan });

    private static JsonElement PlanOf(AnalysisResult result)
    {
        using var stream = new MemoryStream();
        SummaryJson.Write(result, new SummaryContext
        {
            Program = "sweepstats",
            Version = "0.1.0",
            GeneratedAt = DateTimeOffset.UnixEpoch,
            Seed = 1,
            Inputs = [],
            Assumptions = [],
            ReportFiles = [],
            LeftOut = [],
        }, stream);
        string summary = Encoding.UTF8.GetString(stream.ToArray());
        Assert.True(JsonSchema.FromText(SummaryJson.Schema()).Evaluate(JsonNode.Parse(summary)).IsValid);
        return JsonDocument.Parse(summary).RootElement.GetProperty("plan");
    }

    private CampaignReading Read(string text) => _folder.With("campaign.toml", text).Read(keepGoing: true);
}
