using System.Text.Json;
using SweepStats.Alignment;
using SweepStats.Checks;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Files.Results;

/// <summary>What was counted and what was looked at, as summary.json tells it.</summary>
internal static class SummaryCounts
{
    public static void Write(Utf8JsonWriter json, AnalysisResult result) => json.Object("counts", () =>
    {
        json.Object("sweeps", () => Sweeps(json, result.Campaign));
        json.WriteNumber("specimens", result.Curves.Length);
        json.WriteNumber("frequencies", result.Campaign.Grid.Count);
        json.Object("states", () => States(json, result));
        json.Object("findings", () => Findings(json, result));
    });

    public static void Checks(Utf8JsonWriter json, AnalysisResult result) => json.Objects("checks", result.Checks, run =>
    {
        json.WriteString("code", run.Code);
        json.WriteNumber("findings", result.Findings.Count(f => f.Code == run.Code));
        json.WriteString("untested_because", run.UntestedBecause);
        json.WriteString("left_because", run.LeftBecause);
    });

    private static void Sweeps(Utf8JsonWriter json, AlignedCampaign campaign)
    {
        json.WriteNumber("floor", campaign.Floor?.SweepCount ?? 0);
        json.WriteNumber("reference", campaign.Reference.SweepCount);
        json.WriteNumber("covered", campaign.Covered.Sum(c => c.Block.SweepCount));
        json.WriteNumber("linearity", campaign.SetAside.Count(s => s.Role == SweepRole.Linearity));
        json.WriteNumber("plate", campaign.SetAside.Count(s => s.Role == SweepRole.Plate));
        json.WriteNumber("duplicates", campaign.Duplicates.Length);
        json.WriteNumber("excluded", campaign.Excluded.Length);
    }

    private static void States(Utf8JsonWriter json, AnalysisResult result)
    {
        foreach (ShieldingState state in Enum.GetValues<ShieldingState>())
        {
            json.WriteNumber(ShieldingCsv.StateName(state), result.Curves.Sum(c => c.Readings.Counted(state)));
        }
    }

    private static void Findings(Utf8JsonWriter json, AnalysisResult result)
    {
        foreach (Severity severity in Enum.GetValues<Severity>())
        {
            json.WriteNumber(FindingsCsv.SeverityName(severity), result.Findings.Count(f => f.Severity == severity));
        }
    }
}
