using SweepStats.Statistics;

namespace SweepStats.Report.Lots;

/// <summary>Whether the means of two lots are the same within a margin.</summary>
/// <param name="Name">Name of the pair.</param>
/// <param name="Tested">The test; null where there is none.</param>
internal readonly record struct NamedEquivalence(string Name, Equivalence? Tested);
