using SweepStats.Sweeps;

namespace SweepStats.StudyRuns.Choice;

/// <summary>How likely a candidate is called the best.</summary>
/// <param name="Name">The candidate.</param>
/// <param name="Chance">The probability, 0 to 1.</param>
internal readonly record struct StatedChance(SpecimenName Name, double Chance);
