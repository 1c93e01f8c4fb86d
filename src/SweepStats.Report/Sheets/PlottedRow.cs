namespace SweepStats.Report.Sheets;

/// <summary>One line of what a picture shows.</summary>
/// <param name="Kind"><c>value</c>, <c>range</c> or <c>asked</c>.</param>
/// <param name="Name">What it is of.</param>
/// <param name="At">What is known at a place of the grid, as the script of the page reads it.</param>
internal sealed record PlottedRow(string Kind, string Name, Func<int, string> At);
