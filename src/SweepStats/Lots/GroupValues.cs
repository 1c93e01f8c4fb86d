namespace SweepStats.Lots;

/// <summary>Repeats of one specimen or lot.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Values">Their values in dB.</param>
internal readonly record struct GroupValues(string Name, double[] Values);
