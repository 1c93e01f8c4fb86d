using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Summaries;
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
        // Straight to the stream, a piece at a time: that of thousands of specimens is large.
        JsonSerializer.Serialize(to, Of(result, context), SummaryNames.Printed.ResultSummary);
        to.Write("\n"u8);
    }

    /// <summary>What is written.</summary>
    internal static ResultSummary Of(AnalysisResult result, SummaryContext context) => new()
    {
        SchemaVersion = SchemaVersion,
        Program = context.Program,
        Version = context.Version,
        GeneratedAt = WholeSeconds(context.GeneratedAt).UtcDateTime,
        Title = result.Title,
        Rehearsed = result.Rehearsed,
        Report = Identity(result.Identity),
        Trust = result.Verdict.Trust.ToString().ToLowerInvariant(),
        Requirement = Outcome(result.Verdict.AsRelied().Requirement),
        NotTested = [.. result.Verdict.Untested.Select(Doubt)],
        OverturnedBy = result.Verdict.OverturnedBy,
        Counts = SummaryCounts.Of(result),
        Plan = Plan(result),
        Floor = SummaryFigures.Floor(result.Floor),
        Specimens = SummaryFigures.Specimens(result),
        Lots = LotsJson.Of(result),
        Trend = TrendJson.Of(result.Trend, result.Verdict),
        Choice = result.Choice is { } choice ? ChoiceJson.Of(choice, result.Plan.Confidence) : null,
        Checks = SummaryCounts.Checks(result),
        Inputs = Files(context.Inputs),
        InputsSha256 = InputDigest.Of(context.Inputs),
        ReportFiles = Files(context.ReportFiles),
        Assumptions = context.Assumptions,
        LeftOut = context.LeftOut,
        Excluded = [.. result.Campaign.Excluded.Select(sweep => new SummaryExcluded(sweep.Name, sweep.ExcludedBecause!))],
        Seed = context.Seed,
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

    /// <summary>A time as the file has it.</summary>
    internal static DateTimeOffset WholeSeconds(DateTimeOffset time) => time.AddTicks(-(time.Ticks % TimeSpan.TicksPerSecond));

    internal static ImmutableArray<SummaryFile> Files(ImmutableArray<InputFile> files) =>
        [.. files.Select(file => new SummaryFile(file.Path, file.Sha256))];

    private static SummaryIdentity Identity(TestIdentity of) =>
        new(of.Laboratory, of.Customer, of.Operator, of.Instrument, of.Calibration, of.Date);

    private static string Doubt(UntestedDoubt doubt) => doubt switch
    {
        UntestedDoubt.Overload => "overload",
        UntestedDoubt.Leakage => "leakage",
        UntestedDoubt.PuttingBack => "putting-back",
        _ => "drift",
    };

    // The plan has a writer of its own.
    private static Dictionary<string, JsonElement> Plan(AnalysisResult result)
    {
        var written = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(written))
        {
            json.WriteStartObject();
            SummaryPlan.Write(json, result);
            json.WriteEndObject();
        }

        return JsonElement.Parse(written.WrittenSpan).GetProperty("plan").EnumerateObject()
            .ToDictionary(member => member.Name, member => member.Value, StringComparer.Ordinal);
    }
}
