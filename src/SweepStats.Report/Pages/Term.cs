namespace SweepStats.Report.Pages;

/// <summary>A word and what it means.</summary>
/// <param name="Word">As a standard has it.</param>
/// <param name="Meaning">In short sentences.</param>
public sealed record Term(string Word, string Meaning);
