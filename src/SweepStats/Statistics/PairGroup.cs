namespace SweepStats.Statistics;

/// <summary>A group of pairs.</summary>
/// <param name="X">What y depends on.</param>
/// <param name="Y">As many values, in the same order.</param>
internal readonly record struct PairGroup(double[] X, double[] Y);
