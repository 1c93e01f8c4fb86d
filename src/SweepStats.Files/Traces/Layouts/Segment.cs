namespace SweepStats.Files.Traces.Layouts;

/// <summary>Part of a sweep: one row.</summary>
/// <param name="At">When it was taken.</param>
/// <param name="When">The same as written.</param>
/// <param name="Range">Start, stop and step in Hz.</param>
/// <param name="Levels">A level for every step.</param>
/// <param name="Line">Its line from 1.</param>
internal sealed record Segment(DateTimeOffset? At, string When, SegmentRange Range, double[] Levels, int Line);
