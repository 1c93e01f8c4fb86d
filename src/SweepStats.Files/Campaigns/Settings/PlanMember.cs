using System.Text.Json.Nodes;

namespace SweepStats.Files.Campaigns.Settings;

/// <summary>A member of the plan in summary.json.</summary>
/// <param name="Name">Its name there.</param>
/// <param name="Of">Its value; null where there is none.</param>
/// <param name="Form">What may stand there, in the words of JSON schema.</param>
/// <param name="Description">What the schema says of it; null where its name says all.</param>
internal sealed record PlanMember(
    string Name, Func<AnalysisResult, JsonNode?> Of, string Form = PlanMember.Number, string? Description = null)
{
    public const string Number = """ "$ref": "#/$defs/numberOrNull" """;
    public const string Frequency = """ "$ref": "#/$defs/frequencyOrNull" """;
    public const string Positive = """ "type": "number", "exclusiveMinimum": 0 """;
    public const string Share = """ "type": "number", "exclusiveMinimum": 0, "exclusiveMaximum": 1 """;
    public const string Names = """ "$ref": "#/$defs/names" """;

    /// <summary>Left out where it has no value, so that the schema does not ask for it; else it is null there.</summary>
    public bool IsOptional { get; init; }

    /// <summary>Its schema.</summary>
    public string Schema => $"{{{(Description is null ? "" : $"\"description\": \"{Description}\",")}{Form}}}";

    /// <summary>A member that is there only where it was stated.</summary>
    public static PlanMember Stated(string name, Func<AnalysisResult, JsonNode?> of, string form, string description) =>
        new(name, of, form, $"{description}; there only where it was stated.") { IsOptional = true };

    /// <summary>A list of texts.</summary>
    public static JsonArray List(IEnumerable<string> texts) => [.. texts.Select(text => (JsonNode)text)];
}
