using SweepStats.Alignment;
using SweepStats.Checks;
using SweepStats.Files.Summaries;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Files.Results;

/// <summary>What was counted and what was looked at, as summary.json tells it.</summary>
internal static class SummaryCounts
{
    public static SummaryCounted Of(AnalysisResult result) => new(Sweeps(result.Campaign), result.Curves.Length,
        result.Campaign.Grid.Count, States(result), Findings(result));

    public static ImmutableArray<SummaryCheck> Checks(AnalysisResult result) =>
        [.. result.Checks.Select(run => new SummaryCheck(
            run.Code, result.Findings.Count(f => f.Code == run.Code), run.UntestedBecause, run.LeftBecause))];

    private static SummarySweeps Sweeps(AlignedCampaign campaign) => new(
        Floor: campaign.Floor?.SweepCount ?? 0,
        Reference: campaign.Reference.SweepCount,
        Covered: campaign.Covered.Sum(c => c.Block.SweepCount),
        Linearity: campaign.SetAside.Count(s => s.Role == SweepRole.Linearity),
        Plate: campaign.SetAside.Count(s => s.Role == SweepRole.Plate),
        Duplicates: campaign.Duplicates.Length,
        Excluded: campaign.Excluded.Length);

    private static SummaryStates States(AnalysisResult result)
    {
        int Counted(ShieldingState state) => result.Curves.Sum(c => c.Readings.Counted(state));
        return new(Counted(ShieldingState.Clear), Counted(ShieldingState.NearFloor), Counted(ShieldingState.Capped),
            Counted(ShieldingState.Overloaded), Counted(ShieldingState.NoFloor));
    }

    private static SummaryFindings Findings(AnalysisResult result)
    {
        int Counted(Severity severity) => result.Findings.Count(f => f.Severity == severity);
        return new(Counted(Severity.Note), Counted(Severity.Warning), Counted(Severity.Fault));
    }
}
