using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using SweepStats.Alignment;
using SweepStats.Files.Campaigns;
using SweepStats.Sweeps;
using SweepStats.Verdicts;

namespace SweepStats.Files.Results;

/// <summary>summary.json: the verdict and everything needed to repeat the run. Its form is in summary.schema.json.</summary>
public static class SummaryJson
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "summary.json";

    /// <summary>Rises when a field changes its meaning or goes.</summary>
    public const int SchemaVersion = 1;

    // The relaxed encoder leaves µ and Ω readable; what would break HTML is not put into HTML here.
    internal static readonly JsonWriterOptions Options =
        new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The JSON schema (draft 2020-12) of what <see cref="Write"/> writes.</summary>
    public static string Schema()
    {
        using Stream stream =
            typeof(SummaryJson).Assembly.GetManifestResourceStream("SweepStats.Files.Results.summary.schema.json")!;
        using var reader = new StreamReader(stream);
        return SummaryPlan.InSchema(reader.ReadToEnd());
    }

    /// <summary>Writes the summary.</summary>
    public static void Write(AnalysisResult result, SummaryContext context, Stream to)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(context);
        using (var json = new Utf8JsonWriter(to, Options))
        {
            json.WriteStartObject();
            Program(json, context);
            Answer(json, result);
            SummaryCounts.Write(json, result);
            SummaryPlan.Write(json, result);
            SummaryFigures.Floor(json, result.Floor);
            SummaryFigures.Specimens(json, result);
            json.Object("lots", () => LotsJson.Lots(json, result));
            TrendJson.Write(json, result.Trend, result.Verdict);
            json.Object("choice", result.Choice, choice => ChoiceJson.Write(json, choice, result.Plan.Confidence));
            SummaryCounts.Checks(json, result);
            Files(json, context);
            Excluded(json, result.Campaign);
            json.Whole("seed", context.Seed);
            json.WriteEndObject();
        }

        to.Write("\n"u8);
    }

    /// <summary>Which program wrote it, and when.</summary>
    internal static void Program(Utf8JsonWriter json, SummaryContext context)
    {
        json.WriteNumber("schema_version", SchemaVersion);
        json.WriteString("program", context.Program);
        json.WriteString("version", context.Version);
        json.WriteString("generated_at", context.GeneratedAt.ToUniversalTime()
            .ToString("yyyy-MM-ddTHH:mm:ssZ", System.Globalization.CultureInfo.InvariantCulture));
    }

    private static void Answer(Utf8JsonWriter json, AnalysisResult result)
    {
        json.WriteString("title", result.Title);
        json.WriteBoolean("rehearsed", result.Rehearsed);
        json.Object("report", () => Identity(json, result.Identity));
        json.WriteString("trust", result.Verdict.Trust.ToString().ToLowerInvariant());
        json.WriteString("requirement", Outcome(result.Verdict.AsRelied().Requirement));
        json.Texts("not_tested", result.Verdict.Untested.Select(Doubt));
        json.Texts("overturned_by", result.Verdict.OverturnedBy);
    }

    private static void Identity(Utf8JsonWriter json, TestIdentity identity)
    {
        json.WriteString("laboratory", identity.Laboratory);
        json.WriteString("customer", identity.Customer);
        json.WriteString("operator", identity.Operator);
        json.WriteString("instrument", identity.Instrument);
        json.WriteString("calibration", identity.Calibration);
        json.WriteString("date", identity.Date);
    }

    private static void Files(Utf8JsonWriter json, SummaryContext context)
    {
        Hashes(json, "inputs", context.Inputs);
        json.WriteString("inputs_sha256", InputDigest.Of(context.Inputs));
        Hashes(json, EarlierReport.ListName, context.ReportFiles);
        json.Texts("assumptions", context.Assumptions);
        json.Texts("left_out", context.LeftOut);
    }

    private static string Doubt(UntestedDoubt doubt) => doubt switch
    {
        UntestedDoubt.Overload => "overload",
        UntestedDoubt.Leakage => "leakage",
        UntestedDoubt.PuttingBack => "putting-back",
        _ => "drift",
    };

    /// <summary>How an outcome is written; null where nothing was required.</summary>
    internal static string? Outcome(RequirementOutcome? outcome) => outcome switch
    {
        RequirementOutcome.Meets => "meets",
        RequirementOutcome.Fails => "fails",
        RequirementOutcome.Undecided => "undecided",
        RequirementOutcome.CannotTell => "cannot-tell",
        _ => null,
    };

    internal static void Hashes(Utf8JsonWriter json, string name, ImmutableArray<InputFile> inputs) =>
        json.Objects(name, inputs, input =>
    {
        json.WriteString("path", input.Path);
        json.WriteString("sha256", input.Sha256);
    });

    private static void Excluded(Utf8JsonWriter json, AlignedCampaign campaign) =>
        json.Objects("excluded", campaign.Excluded, sweep =>
    {
        json.WriteString("sweep", sweep.Name);
        json.WriteString("reason", sweep.ExcludedBecause);
    });
}
