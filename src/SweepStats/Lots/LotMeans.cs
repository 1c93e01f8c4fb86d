namespace SweepStats.Lots;

/// <summary>Means over a band of the specimens of a lot.</summary>
/// <param name="Lot">Name of the lot.</param>
/// <param name="Means">Mean shielding of each specimen in dB; not a number where it is not known.</param>
/// <param name="PlainMean">Mean of its plain readings in dB.</param>
internal readonly record struct LotMeans(string Lot, double[] Means, double PlainMean);
