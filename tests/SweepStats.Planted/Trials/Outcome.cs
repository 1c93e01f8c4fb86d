namespace SweepStats.Planted.Trials;

/// <summary>What the tests made of one core.</summary>
/// <param name="Caught">The test that failed, or where the run was ended or ended by itself; null where all tests passed.</param>
/// <param name="Passed">Tests that passed, where all did.</param>
/// <param name="Seconds">Processor time by class, in the order in which they ran.</param>
internal sealed record Outcome(string? Caught, int Passed, IReadOnlyDictionary<string, double> Seconds);
