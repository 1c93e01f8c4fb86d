namespace SweepStats.Report.Drawing;

/// <summary>The part of a band at one frequency; not a number where there is none.</summary>
/// <param name="X">Frequency in Hz.</param>
/// <param name="Low">Lower edge in dB.</param>
/// <param name="High">Upper edge in dB; infinity where open.</param>
internal readonly record struct Slice(double X, double Low, double High);
