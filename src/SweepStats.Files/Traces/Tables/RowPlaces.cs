namespace SweepStats.Files.Traces.Tables;

/// <summary>Where the rows of a trace stand.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Line">The line from 1 of a row from 0.</param>
internal readonly record struct RowPlaces(string File, Func<int, int> Line);
