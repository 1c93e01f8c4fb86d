using SweepStats.Floor;
using SweepStats.Report.Answer;
using SweepStats.Report.Pages;
using SweepStats.Report.Setup;
using SweepStats.Report.Text;
using SweepStats.Sweeps;

namespace SweepStats.Report.Sheets;

/// <summary>Set-up and method in eight lines; the annex has all of it.</summary>
internal static class SetupLines
{
    /// <summary>The lines in their order, each with its name; what is not stated is said not to be.</summary>
    public static IEnumerable<IdentityLine> Of(AnalysisResult result)
    {
        AnalysisPlan plan = result.Plan;
        yield return new("Sweeps", string.Join(", ", Sweeps(result)));
        yield return new("Receiver", Receiver(result) is { Length: > 0 } stated ? stated : "settings not stated");
        yield return new("Averaging", SettingWords.Averages(result.Averaging));
        yield return new("Floor", Floor(result));
        yield return new("Shielding", "reference level minus covered level, freed of noise where the floor is known");
        yield return new("Intervals", $"{Printed.Level(plan.Confidence)}, from the scatter of repeats and {Stated(plan)}");
        yield return new("Bounds", "where noise, leakage or overload hides the level");
        yield return new("Requirement", plan.Requirement is not { } asked ? "none stated"
            : $"{VerdictWords.Required(asked, result.Campaign.Grid)}. {DecisionWords.DecisionRuleInBrief(result)}");
    }

    private static IEnumerable<string> Sweeps(AnalysisResult result)
    {
        AlignedSweeps counts = AlignedSweeps.Of(result.Campaign);
        yield return $"{Printed.Plain(counts.Floor)} floor";
        yield return $"{Printed.Plain(counts.Reference)} reference";
        yield return $"{Printed.Plain(counts.Covered)} covered";
        foreach (IGrouping<SweepRole, Sweep> beside in result.Campaign.SetAside.GroupBy(s => s.Role).OrderBy(g => g.Key))
        {
            yield return $"{Printed.Plain(beside.Count())} {beside.Key.ToString().ToLowerInvariant()}";
        }
    }

    private static string Receiver(AnalysisResult result)
    {
        IEnumerable<Sweep> covered = result.Campaign.Covered.SelectMany(c => c.Block.Sweeps);
        return string.Join(", ", PageWords.SettingColumns.Skip(1).Zip(SettingWords.Settings(covered, result.Plan.Setup))
            .Where(s => s.Second != SettingWords.NotStated).Select(s => $"{s.First.ToLowerInvariant()} {s.Second}"));
    }

    private static string Floor(AnalysisResult result) => result.Floor is not { } floor ? "not known"
        : $"{(floor.Source == FloorSource.Measured ? "measured" : "declared")}, "
            + $"{SettingWords.Span(floor.LevelDb, result.Campaign.Scale)}{Apart(result)}";

    // A mean of sweeps on two levels is a level that none of them shows.
    private static string Apart(AnalysisResult result) =>
        result.Findings.FirstOrDefault(f => f is { Code: "floor-unsteady", Size: not null })?.Size is { } apart
            ? $"; its sweeps lie up to {Printed.HighTenths(apart.Value)} dB apart" : string.Empty;

    private static string Stated(AnalysisPlan plan) =>
        plan.Uncertainties.IsDefaultOrEmpty ? "no stated errors" : Printed.Count(plan.Uncertainties.Length, "stated error");
}
