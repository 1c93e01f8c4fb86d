using SweepStats.Planted.Faults;

namespace SweepStats.Planted.Trials;

/// <summary>One fault and what came of it.</summary>
internal sealed record Trial(Fault Fault, Outcome Outcome);
