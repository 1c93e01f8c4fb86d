namespace SweepStats.Lots;

/// <summary>What one given group passes by chance, of Mandel's h or k; not numbers where it has none.</summary>
/// <param name="Straggler">At 5 %.</param>
/// <param name="Outlier">At 1 %.</param>
public readonly record struct ConsistencyLimits(double Straggler, double Outlier);
