namespace SweepStats.Report.Drawing;

/// <summary>A name at an axis.</summary>
/// <param name="Place">Where it stands, in units of the axis.</param>
/// <param name="Label">The name.</param>
internal readonly record struct PlaceLabel(double Place, string Label);
