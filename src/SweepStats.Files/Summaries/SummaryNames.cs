using System.Text.Json;
using System.Text.Json.Serialization;
using SweepStats.Files.Results;

namespace SweepStats.Files.Summaries;

/// <summary>Reads and writes without looking at types while running, which machine code alone cannot.</summary>
[JsonSourceGenerationOptions(GenerationMode = JsonSourceGenerationMode.Metadata,
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(ResultSummary))]
[JsonSerializable(typeof(HistorySummary))]
[JsonSerializable(typeof(ReceiverSummary))]
[JsonSerializable(typeof(SummaryList))]
[JsonSerializable(typeof(SummaryDifferences))]
internal sealed partial class SummaryNames : JsonSerializerContext
{
    /// <summary>As results are written.</summary>
    public static SummaryNames Printed => field ??= new(new JsonSerializerOptions(Default.Options)
    {
        WriteIndented = SummaryJson.Options.Indented,
        NewLine = SummaryJson.Options.NewLine,
        Encoder = SummaryJson.Options.Encoder,
    });
}
