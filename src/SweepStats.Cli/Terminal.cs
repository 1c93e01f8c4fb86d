namespace SweepStats.Cli;

/// <summary>Where a command writes.</summary>
/// <param name="Out">Results.</param>
/// <param name="Error">Errors, one a line, and progress.</param>
/// <param name="Interactive">A person is watching: progress may be shown.</param>
internal sealed record Terminal(TextWriter Out, TextWriter Error, bool Interactive);
