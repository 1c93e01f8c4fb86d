using System.Collections.Immutable;
using SweepStats.Checks;

namespace SweepStats.StudyRuns.Trust;

/// <summary>A fault of growing size, and the check that is to find it.</summary>
/// <param name="Code">Code of the check.</param>
/// <param name="Name">The fault in a few words.</param>
/// <param name="Unit">Unit of the size.</param>
/// <param name="Sizes">Sizes, rising; the first is that of no fault where there is such a size.</param>
/// <param name="Of">The campaign with the fault of a size.</param>
public sealed record FaultCurve(string Code, string Name, string Unit, ImmutableArray<double> Sizes, Func<double, TrustCase> Of)
{
    /// <summary>Whether a finding of the check is about this fault, as for one sweep of several; any is unless set.</summary>
    public Func<Finding, bool> IsAbout { get; init; } = _ => true;
}
