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

    private const int MostPending = 1 << 16;

    // The relaxed encoder leaves µ and Ω readable; what would break HTML is not put into HTML here.
    internal static readonly JsonWriterOptions Options =
        new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The JSON schema (draft 2020-12) of what <see cref="Write"/> writes.</summary>
    public static string Schema()
    {
        using Stream stream =
            typeof(SummaryJson).Assembly.GetManifestResourceStream("SweepStats.Files.Results.summary.schema.json")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
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
            json.WriteString("title", result.Title);
            json.WriteBoolean("rehearsed", result.Rehearsed);
            Identity(json, result.Identity);
            json.WriteString("trust", result.Verdict.Trust.ToString().ToLowerInvariant());
            Word(json, "requirement", Outcome(result.Verdict.AsRelied().Requirement));
            Texts(json, "not_tested", [.. result.Verdict.Untested.Select(Doubt)]);
            Texts(json, "overturned_by", result.Verdict.OverturnedBy);
            SummaryCounts.Write(json, result);
            SummaryPlan.Write(json, result);
            SummaryFigures.Floor(json, result.Floor);
            SummaryFigures.Specimens(json, result);
            json.WriteStartObject("lots");
            LotsJson.Lots(json, result);
            json.WriteEndObject();
            TrendJson.Write(json, result.Trend, result.Verdict);
            Choice(json, result);
            SummaryCounts.Checks(json, result);
            Hashes(json, "inputs", context.Inputs);
            json.WriteString("inputs_sha256", InputDigest.Of(context.Inputs));
            Hashes(json, EarlierReport.ListName, context.ReportFiles);
            Texts(json, "assumptions", context.Assumptions);
            Texts(json, "left_out", context.LeftOut);
            Excluded(json, result.Campaign);
            SummaryPlan.Whole(json, "seed", context.Seed);
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

    private static void Identity(Utf8JsonWriter json, TestIdentity identity)
    {
        json.WriteStartObject("report");
        Word(json, "laboratory", identity.Laboratory);
        Word(json, "customer", identity.Customer);
        Word(json, "operator", identity.Operator);
        Word(json, "instrument", identity.Instrument);
        Word(json, "calibration", identity.Calibration);
        Word(json, "date", identity.Date);
        json.WriteEndObject();
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

    internal static void Hashes(Utf8JsonWriter json, string name, ImmutableArray<InputFile> inputs)
    {
        json.WriteStartArray(name);
        foreach (InputFile input in inputs)
        {
            json.WriteStartObject();
            json.WriteString("path", input.Path);
            json.WriteString("sha256", input.Sha256);
            json.WriteEndObject();
            PassOn(json);
        }

        json.WriteEndArray();
    }

    private static void Choice(Utf8JsonWriter json, AnalysisResult result)
    {
        if (result.Choice is not { } choice)
        {
            json.WriteNull("choice");
            return;
        }

        json.WriteStartObject("choice");
        ChoiceJson.Write(json, choice, result.Plan.Confidence);
        json.WriteEndObject();
    }

    private static void Excluded(Utf8JsonWriter json, AlignedCampaign campaign)
    {
        json.WriteStartArray("excluded");
        foreach (Sweep sweep in campaign.Excluded)
        {
            json.WriteStartObject();
            json.WriteString("sweep", sweep.Name);
            json.WriteString("reason", sweep.ExcludedBecause);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    internal static void Texts(Utf8JsonWriter json, string name, ImmutableArray<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }

    /// <summary>Writes out what has gathered: of thousands of specimens it would take as much memory as they do.</summary>
    internal static void PassOn(Utf8JsonWriter json)
    {
        if (json.BytesPending > MostPending)
        {
            json.Flush();
        }
    }

    /// <summary>A word, or null.</summary>
    internal static void Word(Utf8JsonWriter json, string name, string? word)
    {
        if (word is null)
        {
            json.WriteNull(name);
        }
        else
        {
            json.WriteString(name, word);
        }
    }
}
