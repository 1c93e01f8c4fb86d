namespace SweepStats.Files.Traces.Layouts;

/// <summary>Part of a sweep: one row.</summary>
/// <param name="At">When it was taken.</param>
/// <param name="When">The same as written.</param>
/// <param name="Range">Start, stop and step in Hz.</param>
/// <param name="Levels">A level for every step.</param>
/// <param name="Line">Its line from 1.</param>
internal sealed record Segment(DateTimeOffset? At, string When, (double Start, double Stop, double Step) Range, double[] Levels, int Line)
{
    /// <summary>How many of the levels lie below the stop.</summary>
    public int Own => Math.Min(Levels.Length, Math.Max(1, (int)Math.Round((Range.Stop - Range.Start) / Range.Step)));
}
