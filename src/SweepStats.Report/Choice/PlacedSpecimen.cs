using SweepStats.Choice;

namespace SweepStats.Report.Choice;

/// <summary>A candidate in a row of a chart.</summary>
/// <param name="Row">The row from the top.</param>
/// <param name="Specimen">The candidate.</param>
internal readonly record struct PlacedSpecimen(double Row, RankedSpecimen Specimen);
