namespace SweepStats.Files.Traces.Layouts;

/// <summary>The frequencies of a segment, in Hz.</summary>
/// <param name="Start">The first.</param>
/// <param name="Stop">The last.</param>
/// <param name="Step">The distance of two.</param>
internal readonly record struct SegmentRange(double Start, double Stop, double Step);
