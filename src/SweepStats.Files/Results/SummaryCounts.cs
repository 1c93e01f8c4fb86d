using System.Text.Json;
using SweepStats.Alignment;
using SweepStats.Checks;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Files.Results;

/// <summary>What was counted and what was looked at, as summary.json tells it.</summary>
internal static class SummaryCounts
{
    public static void Write(Utf8JsonWriter json, AnalysisResult result)
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
            json.WriteNumber(ShieldingCsv.StateName(state), result.Curves.Sum(c => c.Readings.Counted(state)));
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

    public static void Checks(Utf8JsonWriter json, AnalysisResult result)
    {
        json.WriteStartArray("checks");
        foreach (CheckRun run in result.Checks)
        {
            json.WriteStartObject();
            json.WriteString("code", run.Code);
            json.WriteNumber("findings", result.Findings.Count(f => f.Code == run.Code));
            SummaryJson.Word(json, "untested_because", run.UntestedBecause);
            SummaryJson.Word(json, "left_because", run.LeftBecause);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
