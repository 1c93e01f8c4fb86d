using System.Text.Json;
using System.Text.Json.Nodes;
using SweepStats.Files.Campaigns.Settings;
using SweepStats.Quantities;
using SweepStats.Uncertainty;

namespace SweepStats.Files.Results;

/// <summary>The choices of an analysis, as summary.json and its schema tell them by the table of settings.</summary>
internal static class SummaryPlan
{
    // What older versions wrote stands where they wrote it; what is not named here follows, as in the table.
    private static readonly string[] Order =
    [
        "confidence", "averaging", "averaging_in_use", "averaging_source", "scale", "start_hz", "stop_hz", "interpolate",
        "required_least_db", "required_most_db", "requirement_confidence", "guard_band_db", "margin_db", "declared_floor_db",
        "floor_taken", "reference_taken", "floor_stability_db", "leakage", "shields_nothing", "rbw_hz", "attenuation_db",
        "source_dbm", "max_input_dbm", "budget_frequencies_hz", "uncertainties", "named_bands", "lots", "choice", "field",
    ];

    // Lists of blocks, and what is no setting.
    private static readonly PlanMember[] Others =
    [
        new("scale", r => r.Campaign.Scale.Symbol(),
            """ "enum": ["dBm", "dB", "dBµV/m"] """, "What levels are measured against."),
        new("uncertainties", r => new JsonArray([.. r.Plan.Uncertainties.Select(Entry)]),
            """ "$ref": "#/$defs/uncertainties" """),
        new("named_bands", r => new JsonArray([.. r.Plan.NamedBands.Select(named => new JsonObject
        {
            ["name"] = named.Name, ["start_hz"] = named.Band.Start.Value, ["stop_hz"] = named.Band.Stop.Value,
        })]), """ "$ref": "#/$defs/namedBands" """),
    ];

    private static readonly ImmutableArray<PlanMember> Members =
    [
        .. SettingsTable.Sections.SelectMany(Told).Concat(Others)
            .OrderBy(m => Array.IndexOf(Order, m.Name) is >= 0 and int place ? place : Order.Length),
    ];

    public static void Write(Utf8JsonWriter json, AnalysisResult result)
    {
        json.WritePropertyName("plan");
        Values(Members, result).WriteTo(json);
    }

    /// <summary>Puts the plan into the schema of summary.json, which holds all else.</summary>
    public static string InSchema(string schema) => schema.Split("\"plan\": {}") is [var before, var after]
        ? $"{before}\"plan\": {{{Form(Members)}}}{after}"
        : throw new InvalidOperationException("The schema of summary.json has no place for the plan.");

    private static IEnumerable<PlanMember> Told(SettingsSection section)
    {
        PlanMember[] told = [.. section.Settings.SelectMany(s => s.Told)];
        bool mayMiss = section.IsObjectOptional;
        return section.Object is null ? told
            : [new(section.Name, r => mayMiss && told.All(m => m.Of(r) is null) ? null : Values(told, r), Form(told),
                section.Object) { IsOptional = mayMiss }];
    }

    private static JsonObject Values(IEnumerable<PlanMember> members, AnalysisResult result) => new(
        from member in members
        let value = Finite(member.Of(result))
        where value is not null || !member.IsOptional
        select KeyValuePair.Create(member.Name, value));

    // JSON has no other numbers.
    private static JsonNode? Finite(JsonNode? node) =>
        node is JsonValue value && value.TryGetValue(out double number) && !double.IsFinite(number) ? null : node;

    private static string Form(IReadOnlyCollection<PlanMember> members) => $$"""
        "type": "object", "additionalProperties": false,
        "required": [{{string.Join(", ", members.Where(m => !m.IsOptional).Select(m => $"\"{m.Name}\""))}}],
        "properties": { {{string.Join(",\n", members.Select(m => $"\"{m.Name}\": {m.Schema}"))}} }
        """;

    private static JsonObject Entry(UncertaintyEntry entry) => new()
    {
        ["name"] = entry.Name,
        ["half_width_db"] = entry.HalfWidthDb,
        ["distribution"] = entry.Distribution.ToString().ToLowerInvariant(),
        ["k"] = entry.Distribution == ErrorDistribution.Normal ? entry.CoverageFactor : null,
        ["dof"] = double.IsFinite(entry.DegreesOfFreedom) ? entry.DegreesOfFreedom : null,
        ["top_half_width_db"] = entry.Distribution == ErrorDistribution.Trapezoidal ? entry.TopHalfWidthDb : null,
        ["reflection_source"] = entry.Mismatch?.Source.Magnitude,
        ["reflection_load"] = entry.Mismatch?.Load.Magnitude,
        ["acts_on"] = entry.ActsOn.ToString().ToLowerInvariant(),
        ["common"] = entry.Common,
    };
}
