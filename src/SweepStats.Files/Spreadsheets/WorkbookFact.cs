namespace SweepStats.Files.Spreadsheets;

/// <summary>One line of what a workbook is of.</summary>
/// <param name="Name">What is told.</param>
/// <param name="Value">What it is.</param>
public sealed record WorkbookFact(string Name, string Value);
