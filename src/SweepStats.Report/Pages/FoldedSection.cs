namespace SweepStats.Report.Pages;

/// <summary>A section that was written folded.</summary>
/// <param name="Id">Where a link leads.</param>
/// <param name="Heading">What it is about.</param>
internal sealed record FoldedSection(string Id, string Heading);
