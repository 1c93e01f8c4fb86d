using SweepStats.Report.Drawing;

namespace SweepStats.Report.Specimens;

/// <summary>The lines of what is asked over frequency.</summary>
/// <param name="Required">The shielding asked for; null where nothing is.</param>
/// <param name="Guarded">What a lower limit has to reach; null where no guard band is stated.</param>
internal sealed record AskedLines(Trace? Required, Trace? Guarded)
{
    /// <summary>The lines over the grid of a result.</summary>
    public static AskedLines Of(AnalysisResult result) => new(RequirementLine.Of(result.Plan.Requirement, result.Campaign.Grid),
        RequirementLine.Guarded(result.Plan.Rule, result.Campaign.Grid));

    /// <summary>dB values that an axis must hold.</summary>
    public IEnumerable<double> Seen => (Guarded ?? Required)?.Points.Select(p => p.Y) ?? [];
}
