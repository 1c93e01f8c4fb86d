namespace SweepStats.Report;

/// <summary>One file of a report, ready to be written.</summary>
/// <param name="Path">Where it goes within the report folder: relative, with '/' between folders.</param>
/// <param name="Content">Its bytes; text is UTF-8 without byte order mark.</param>
public sealed record ReportFile(string Path, byte[] Content);
