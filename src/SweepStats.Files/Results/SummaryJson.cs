using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Files.Campaigns;
using SweepStats.Floor;
using SweepStats.Shielding;
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
    private static readonly JsonWriterOptions Options = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The JSON schema (draft 2020-12) of what <see cref="Write"/> writes.</summary>
    public static string Schema()
    {
        using Stream stream = typeof(SummaryJson).Assembly.GetManifestResourceStream("SweepStats.Files.Results.summary.schema.json")!;
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
            json.WriteNumber("schema_version", SchemaVersion);
            json.WriteString("program", context.Program);
            json.WriteString("version", context.Version);
            json.WriteString("generated_at", context.GeneratedAt.ToUniversalTime().ToString("yyyy-MM-ddTHH:mm:ssZ", System.Globalization.CultureInfo.InvariantCulture));
            json.WriteString("title", result.Title);
            json.WriteString("trust", result.Verdict.Trust.ToString().ToLowerInvariant());
            Word(json, "requirement", Outcome(result.Verdict.Requirement));
            Counts(json, result);
            SummaryPlan.Write(json, result);
            Floor(json, result.Floor);
            Specimens(json, result);
            Inputs(json, context.Inputs);
            Texts(json, "assumptions", context.Assumptions);
            Texts(json, "left_out", context.LeftOut);
            Excluded(json, result.Campaign);
            SummaryPlan.Whole(json, "seed", context.Seed);
            json.WriteEndObject();
        }

        to.Write("\n"u8);
    }

    /// <summary>How an outcome is written; null where nothing was required.</summary>
    internal static string? Outcome(RequirementOutcome? outcome) => outcome switch
    {
        RequirementOutcome.Meets => "meets",
        RequirementOutcome.Fails => "fails",
        RequirementOutcome.Undecided => "undecided",
        RequirementOutcome.CannotTell => "cannot-tell",
        _ => null,
    };

    private static void Counts(Utf8JsonWriter json, AnalysisResult result)
    {
        AlignedCampaign campaign = result.Campaign;
        json.WriteStartObject("counts");
        json.WriteStartObject("sweeps");
        json.WriteNumber("floor", campaign.Floor?.SweepCount ?? 0);
        json.WriteNumber("reference", campaign.Reference.SweepCount);
        json.WriteNumber("covered", campaign.Covered.Sum(c => c.Block.SweepCount));
        json.WriteNumber("linearity", campaign.SetAside.Count(s => s.Role == SweepRole.Linearity));
        json.WriteNumber("plate", campaign.SetAside.Count(s => s.Role == SweepRole.Plate));
        json.WriteNumber("duplicates", campaign.Duplicates.Length);
        json.WriteNumber("excluded", campaign.Excluded.Length);
        json.WriteEndObject();
        json.WriteNumber("specimens", result.Curves.Length);
        json.WriteNumber("frequencies", campaign.Grid.Count);
        json.WriteStartObject("states");
        foreach (ShieldingState state in Enum.GetValues<ShieldingState>())
        {
            json.WriteNumber(ShieldingCsv.StateName(state), result.Curves.Sum(c => c.Readings.Count(r => r.State == state)));
        }

        json.WriteEndObject();
        json.WriteStartObject("findings");
        foreach (Severity severity in Enum.GetValues<Severity>())
        {
            json.WriteNumber(FindingsCsv.SeverityName(severity), result.Findings.Count(f => f.Severity == severity));
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Floor(Utf8JsonWriter json, NoiseFloor? floor)
    {
        if (floor is null)
        {
            json.WriteNull("floor");
            return;
        }

        json.WriteStartObject("floor");
        json.WriteString("source", floor.Source.ToString().ToLowerInvariant());
        json.WriteNumber("sweeps", floor.SweepCount);
        SummaryPlan.Number(json, "reading_deviation_db", floor.ReadingDeviationDb);
        SummaryPlan.Number(json, "sweep_offset_deviation_db", floor.SweepOffsetDeviationDb);
        json.WriteStartArray("noise");
        foreach (DetectorNoise noise in floor.Noise)
        {
            json.WriteStartObject();
            // Noise without scatter has endless looks, which JSON cannot write.
            SummaryPlan.Number(json, "looks", noise.Looks);
            SummaryPlan.Number(json, "log_averages", noise.LogAverages);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Specimens(Utf8JsonWriter json, AnalysisResult result)
    {
        json.WriteStartArray("specimens");
        foreach ((ShieldingCurve curve, BandStatement band) in result.Curves.Zip(result.Bands))
        {
            json.WriteStartObject();
            json.WriteString("lot", curve.Name.Lot);
            json.WriteString("specimen", curve.Name.Specimen);
            json.WriteNumber("sweeps", curve.SweepCount);
            SummaryPlan.Number(json, "placements", curve.PlacementCount);
            SummaryPlan.Number(json, "start_hz", band.Band.Start.Value);
            SummaryPlan.Number(json, "stop_hz", band.Band.Stop.Value);
            SummaryPlan.Number(json, "at_least_db", band.AtLeast?.Value);
            SummaryPlan.Number(json, "weakest_hz", band.WeakestAt?.Value);
            Figure(json, "mean_db", band.MeanDb);
            Figure(json, "p10_db", band.TenthPercentileDb);
            Figure(json, "share_meeting", band.ShareMeeting);
            json.WriteNumber("capped_points", band.CappedCount);
            json.WriteNumber("points", band.PointCount);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Figure(Utf8JsonWriter json, string name, BandFigure? figure)
    {
        if (figure is not { } stated)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        SummaryPlan.Number(json, "value", stated.Value);
        SummaryPlan.Number(json, "low", stated.Low);
        SummaryPlan.Number(json, "high", stated.High);
        json.WriteEndObject();
    }

    private static void Inputs(Utf8JsonWriter json, ImmutableArray<InputFile> inputs)
    {
        json.WriteStartArray("inputs");
        foreach (InputFile input in inputs)
        {
            json.WriteStartObject();
            json.WriteString("path", input.Path);
            json.WriteString("sha256", input.Sha256);
            json.WriteEndObject();
        }

        json.WriteEndArray();
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

    private static void Texts(Utf8JsonWriter json, string name, ImmutableArray<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }

    private static void Word(Utf8JsonWriter json, string name, string? word)
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
