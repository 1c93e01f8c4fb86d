namespace SweepStats.Statistics;

/// <summary>A loading that stands for several.</summary>
/// <param name="Eta">η = artanh λ of the loading λ.</param>
/// <param name="Times">How many it stands for; not always a whole number.</param>
internal readonly record struct LoadingGroup(double Eta, double Times);
