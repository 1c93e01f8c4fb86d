using SweepStats.Checks;

namespace SweepStats.Report.Findings;

/// <summary>Findings of one check that ask for the same step: told once, however many specimens they concern.</summary>
/// <param name="Severity">How much they weigh.</param>
/// <param name="Code">Name of the check.</param>
/// <param name="NextStep">What to do.</param>
/// <param name="Findings">The findings, at least one, in order.</param>
internal sealed record FindingGroup(Severity Severity, string Code, string NextStep, ImmutableArray<Finding> Findings)
{
    /// <summary>What all of them say, with the span of their numbers; null where they differ in more.</summary>
    public string? CommonMessage => MergedMessage.Of([.. Findings.Select(f => f.Message)]);

    /// <summary>What all of them rest on, with the span of their numbers; null where they differ in more.</summary>
    public string? CommonBasis => MergedMessage.Of([.. Findings.Select(f => f.Basis)]);

    /// <summary>Groups, gravest first, else in the order of their first finding.</summary>
    public static IEnumerable<FindingGroup> Of(IEnumerable<Finding> findings) =>
        findings.GroupBy(f => (f.Severity, f.Code, f.NextStep))
            .Select(g => new FindingGroup(g.Key.Severity, g.Key.Code, g.Key.NextStep, [.. g]))
            .OrderByDescending(g => g.Severity);
}
