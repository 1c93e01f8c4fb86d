using SweepStats.Choice;

namespace SweepStats.Report.Choice;

/// <summary>A candidate under the name that is printed.</summary>
/// <param name="Specimen">The candidate.</param>
/// <param name="Name">The name, cut where it is long.</param>
internal readonly record struct NamedSpecimen(RankedSpecimen Specimen, string Name);
