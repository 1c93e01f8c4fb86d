namespace SweepStats.Report.Sheets;

/// <summary>One line of the identity.</summary>
/// <param name="Name">What it names.</param>
/// <param name="Text">As stated; null where it is left to be filled in by hand.</param>
internal sealed record IdentityLine(string Name, string? Text);
