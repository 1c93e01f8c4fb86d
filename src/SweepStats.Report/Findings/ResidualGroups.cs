using SweepStats.Checks;
using SweepStats.Repeats;
using SweepStats.Sweeps;

namespace SweepStats.Report.Findings;

/// <summary>Chooses the groups whose sweeps are worth looking at frequency by frequency: those that findings concern.</summary>
internal static class ResidualGroups
{
    private const int Most = 6;

    private static readonly string[] Codes = ["odd-sweep", "drift", "non-normal", "saturation-plateau"];

    /// <summary>
    /// Groups with their findings: gravest finding first, then those that a finding names, then those that differ most.
    /// </summary>
    public static IEnumerable<(RepeatGroup Group, ImmutableArray<Finding> Findings)> Of(AnalysisResult result)
    {
        Finding[] telling = [.. result.Findings.Where(f => Codes.Contains(f.Code))];
        return result.Repeats
            .Select(group => (Group: group, Findings: telling.Where(f => Concerns(f, group)).ToArray()))
            .Where(g => g.Findings.Length > 0)
            .Select(g => (g.Group, g.Findings, Farthest: g.Group.Sweeps.Max(s => s.RestDb.FarthestDb())))
            .Where(g => g.Farthest > 0)
            .OrderByDescending(g => g.Findings.Max(f => f.Severity))
            .ThenByDescending(g => g.Findings.Any(f => f.Sweep is not null))
            .ThenByDescending(g => g.Findings.Any(f => f.Role is not null))
            .ThenByDescending(g => g.Farthest)
            .Take(Most)
            .Select(g => (g.Group, g.Findings.ToImmutableArray()));
    }

    /// <summary>
    /// Whether a finding is about the sweeps of a group. One that names no role is about signals: noise has no level to drift.
    /// </summary>
    private static bool Concerns(Finding finding, RepeatGroup group) =>
        (finding.Role is { } role ? role == group.Role : group.Role != SweepRole.Floor)
        && finding.Concerns(group.Specimen)
        && (finding.Sweep is null || group.Sweeps.Any(s => s.Sweep.Name == finding.Sweep));
}
