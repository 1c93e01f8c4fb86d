namespace SweepStats.Report.Pages;

/// <summary>An attribute of an element, called as in the DOM standard.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Value">Its value, not yet escaped.</param>
internal readonly record struct Attr(string Name, string Value);
