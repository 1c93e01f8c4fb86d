namespace SweepStats.Cli;

/// <summary>A file of a report that is written from the result.</summary>
/// <param name="Name">Its path within the report.</param>
/// <param name="Write">Writes it.</param>
internal sealed record ReportTable(string Name, Action<Stream> Write);
