namespace SweepStats.Files.Campaigns;

/// <summary>A point of a requirement over frequency, as it is written and not yet checked.</summary>
/// <param name="Hertz">Its frequency in Hz.</param>
/// <param name="Db">The required shielding in dB.</param>
/// <param name="Line">The line from 1 that states it.</param>
internal readonly record struct StatedPoint(double Hertz, double Db, int Line);
