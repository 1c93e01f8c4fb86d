namespace SweepStats.Statistics;

/// <summary>Variables of one loading.</summary>
/// <param name="Eta">η, the loading on the common one over that on their own, as its inverse hyperbolic sine.</param>
/// <param name="Times">How many they are.</param>
internal readonly record struct LoadingGroup(double Eta, double Times);
