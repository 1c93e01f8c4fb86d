using System.Collections.Immutable;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>Something that a line above the data states: what, and one value or more.</summary>
/// <param name="Key">Lower-case words, such as "resolution bandwidth".</param>
/// <param name="KeyUnit">Unit in brackets behind the key; empty for none.</param>
/// <param name="Values">What is stated, in the order of the line.</param>
internal sealed record Statement(string Key, string KeyUnit, ImmutableArray<string> Values);
