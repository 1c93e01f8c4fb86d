using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Quantities;
using Xunit;

namespace SweepStats.Acceptance.Files;

public sealed class ResultFiles
{
    private static readonly SummaryContext Context = new()
    {
        Program = "sweepstats",
        Version = "0.1.0",
        GeneratedAt = new DateTimeOffset(2026, 3, 5, 14, 30, 0, TimeSpan.FromHours(1)),
        Seed = 42,
        Inputs = [new InputFile("floor/f \"1\".csv", new string('a', 64))],
        Assumptions = ["a \u0001 \"b\""],
        ReportFiles = [],
        LeftOut = ["x.csv: bad; mend"],
    };

    [Fact]
    public void ShieldingRowsTellEveryKindOfReadingApart()
    {
        string[] lines = Lines(ShieldingCsv.Write, SomeResult.OfEveryKind());
        Assert.Equal("lot,specimen,frequency_hz,sweeps,placements,reference_db,covered_db,floor_db,dynamic_range_db,se_db,"
            + "se_low_db,se_high_db,u_db,dof,state,flags,required_db,outcome,conformance_probability,confidence", lines[0]);
        Assert.Equal(5, lines.Length);
        Assert.All(lines[1..], l => Assert.StartsWith("'=lot,\"A, \"\"1\"\"\",3", l, StringComparison.Ordinal));
        Assert.EndsWith(",40.1235,39.0000,,0.2500,inf,near-floor,ambient drift,20.0000,meets,>=0.999000,0.95", lines[1],
            StringComparison.Ordinal);
        Assert.EndsWith(",,34.0000,,,,capped,ambient,30.0000,undecided,0.875000,0.95", lines[2], StringComparison.Ordinal);
        Assert.EndsWith(",0.0000,,,-3.0000,,,,,no-floor,ambient drift,20.0000,fails,<=0.001000,", lines[3],
            StringComparison.Ordinal);
        Assert.EndsWith(",,,,,,overloaded,,,,,", lines[4], StringComparison.Ordinal);
        Assert.DoesNotContain("-0.0000", string.Join('\n', lines), StringComparison.Ordinal);
        Assert.Contains(",30333333.333333332,", lines[2], StringComparison.Ordinal);
    }

    [Fact]
    public void FindingRowsGiveAStretchEachAndNoFormula()
    {
        string[] lines = Lines(FindingsCsv.Write, SomeResult.OfEveryKind());
        Assert.Equal("severity,code,role,lot,specimen,start_hz,stop_hz,size_db,message,next_step,basis", lines[0]);
        Assert.Equal(6, lines.Length);
        Assert.Equal("warning,placement-unknown,covered,,,,,1.5000,\"'-3 dB, \"\"odd\"\" line\",'@do,\"'+3 dB, \"\"by "
            + "rule\"\"\"", lines[1]);
        Assert.StartsWith("warning,drift,covered,'=lot,\"A, \"\"1\"\"\",30000000,30000000,1.5000,", lines[2],
            StringComparison.Ordinal);
    }

    [Fact]
    public void BandRowsHaveOneSpecimenEach()
    {
        string[] lines = Lines(BandsCsv.Write, SomeResult.Analysed());
        Assert.Equal(2, lines.Length);
        Assert.Equal(18, lines[0].Split(',').Length);
        Assert.EndsWith(",0,40,0.95", lines[1], StringComparison.Ordinal);
        string[] cells = lines[1].Replace("\"A, \"\"1\"\"\"", "A", StringComparison.Ordinal).Split(',');
        Assert.Equal(40, double.Parse(cells[6], CultureInfo.InvariantCulture), 0.6);
    }

    [Fact]
    public void OneHashOverAllInputsIsThatOfTheirListAsSha256sumPrintsIt()
    {
        // printf '%s  floor/f1.csv\n%s  reference/r1.csv\n' aaa…a bbb…b | sha256sum (coreutils 9.1), 64 letters each.
        const string Printed = "e93468dc08d920aade4883efb46252a5cb370253a5db2d8f58a15fa0f2e6d042";
        var floor = new InputFile("floor/f1.csv", new string('a', 64));
        var reference = new InputFile("reference/r1.csv", new string('b', 64));
        Assert.Equal(Printed, InputDigest.Of([floor, reference]));
        Assert.NotEqual(Printed, InputDigest.Of([floor, reference with { Path = "reference/r2.csv" }]));
        Assert.NotEqual(Printed, InputDigest.Of([floor]));
    }

    [Fact]
    public void TheSummaryKeepsItsSchema()
    {
        AnalysisResult plain = SomeResult.Analysed();
        AnalysisPlan asked = plain.Plan with
        {
            NamedBands = [new NamedBand("low", new FrequencyBand(new Hertz(30e6), new Hertz(35e6)))],
            Choice = new ChoiceQuestion
            {
                Yardstick = SomeResult.Name,
                LowerIsBetter = ["price"],
                HigherIsBetter = ["strength"],
                Shown = ["supplier"],
            },
        };
        foreach (AnalysisResult result in new[] { plain, plain with { Plan = asked }, SomeResult.OfEveryKind() })
        {
            EvaluationResults outcome = Evaluate(Summary(result));
            Assert.True(outcome.IsValid, string.Join('\n',
                outcome.Details.Where(d => d.HasErrors)
                    .SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"))));
        }
    }

    [Theory]
    [InlineData("trust", "\"perhaps\"")]
    [InlineData("generated_at", "\"yesterday\"")]
    [InlineData("schema_version", "2")]
    [InlineData("seed", "-1")]
    [InlineData("inputs", "[{\"path\": \"x\", \"sha256\": \"abc\"}]")]
    [InlineData("surplus", "1")]
    [InlineData("plan", null)]
    [InlineData("counts", null)]
    public void TheSchemaTurnsABrokenSummaryAway(string key, string? value)
    {
        JsonObject summary = JsonNode.Parse(Summary(SomeResult.Analysed()))!.AsObject();
        if (value is null)
        {
            summary.Remove(key);
        }
        else
        {
            summary[key] = JsonNode.Parse(value);
        }

        Assert.False(Evaluate(summary.ToJsonString()).IsValid);
    }

    [Fact]
    public void TheSummaryTellsVerdictCountsAndInputs()
    {
        using JsonDocument summary = JsonDocument.Parse(Summary(SomeResult.OfEveryKind()));
        JsonElement root = summary.RootElement;
        Assert.Equal(("limited", "cannot-tell"),
            (root.GetProperty("trust").GetString(), root.GetProperty("requirement").GetString()));
        Assert.Equal("2026-03-05T13:30:00Z", root.GetProperty("generated_at").GetString());
        Assert.Equal("Curtain \"µ\" <b>", root.GetProperty("title").GetString());
        Assert.Equal("a \u0001 \"b\"", root.GetProperty("assumptions")[0].GetString());
        JsonElement sweeps = root.GetProperty("counts").GetProperty("sweeps");
        Assert.Equal((4, 4, 3, 1), (sweeps.GetProperty("floor").GetInt32(), sweeps.GetProperty("reference").GetInt32(),
            sweeps.GetProperty("covered").GetInt32(), sweeps.GetProperty("excluded").GetInt32()));
        Assert.Equal("door \"open\"", root.GetProperty("excluded")[0].GetProperty("reason").GetString());
        Assert.Equal(1, root.GetProperty("counts").GetProperty("states").GetProperty("capped").GetInt32());
        Assert.Equal(4, root.GetProperty("counts").GetProperty("findings").GetProperty("warning").GetInt32());
        Assert.Equal((20.0, 20.0), (root.GetProperty("plan").GetProperty("required_least_db").GetDouble(),
            root.GetProperty("plan").GetProperty("required_most_db").GetDouble()));
        Assert.Equal("measured", root.GetProperty("floor").GetProperty("source").GetString());
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void NoCultureChangesAByte(string culture)
    {
        byte[][] plain = All();
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(plain, All());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static byte[][] All()
    {
        AnalysisResult result = SomeResult.OfEveryKind();
        return [Bytes(ShieldingCsv.Write, result), Bytes(BandsCsv.Write, result), Bytes(FindingsCsv.Write, result),
            Encoding.UTF8.GetBytes(Summary(result))];
    }

    private static EvaluationResults Evaluate(string json) =>
        JsonSchema.FromText(SummaryJson.Schema())
            .Evaluate(JsonNode.Parse(json), new EvaluationOptions { OutputFormat = OutputFormat.List });

    private static string Summary(AnalysisResult result)
    {
        using var stream = new MemoryStream();
        SummaryJson.Write(result, Context, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static byte[] Bytes(Action<AnalysisResult, Stream> write, AnalysisResult result)
    {
        using var stream = new MemoryStream();
        write(result, stream);
        return stream.ToArray();
    }

    private static string[] Lines(Action<AnalysisResult, Stream> write, AnalysisResult result) =>
        Encoding.UTF8.GetString(Bytes(write, result)).TrimEnd('\n').Split('\n');
}
