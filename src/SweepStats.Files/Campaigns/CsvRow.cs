namespace SweepStats.Files.Campaigns;

/// <summary>A row of a table below its header.</summary>
/// <param name="Line">Its line from 1.</param>
/// <param name="Fields">Its fields, in the order of the header; it may have fewer or more than that.</param>
internal readonly record struct CsvRow(int Line, ImmutableArray<string> Fields);
