namespace SweepStats.Report.Specimens;

/// <summary>A figure in a row along an axis in dB.</summary>
/// <param name="Row">Its row from the top.</param>
/// <param name="Value">The value; null for a bound.</param>
/// <param name="Low">Its lower limit, or the bound.</param>
/// <param name="High">Its upper limit; null where it is open.</param>
internal readonly record struct FigureRow(double Row, double? Value, double Low, double? High);
