using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>A text as it is read in place of another, line for line, and what a person has to know of it.</summary>
/// <param name="Text">The text; owns its memory.</param>
/// <param name="Said">What was done, as an assumption of the reading; empty for nothing.</param>
internal sealed record MendedText(TraceText Text, string Said);
