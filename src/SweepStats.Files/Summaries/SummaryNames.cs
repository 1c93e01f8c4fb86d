using System.Text.Json;
using System.Text.Json.Serialization;
using SweepStats.Files.Results;

namespace SweepStats.Files.Summaries;

/// <summary>Reads and writes without looking at types while running, which machine code alone cannot.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(ResultSummary))]
[JsonSerializable(typeof(SummaryDifferences))]
internal sealed partial class SummaryNames : JsonSerializerContext
{
    /// <summary>As the other results are written.</summary>
    public static SummaryNames Printed => new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = SummaryJson.Options.Indented,
        NewLine = SummaryJson.Options.NewLine,
        Encoder = SummaryJson.Options.Encoder,
    });
}
