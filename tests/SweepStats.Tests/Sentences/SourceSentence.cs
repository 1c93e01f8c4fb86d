namespace SweepStats.Tests.Sentences;

/// <summary>A sentence in the source that a person may read, and when it is printed.</summary>
/// <param name="Place">Type and member it stands in.</param>
/// <param name="Text">As in the source; what is filled in stands in braces.</param>
/// <param name="Conditions">The conditions of the source that have to hold, outermost first.</param>
internal sealed record SourceSentence(string Place, string Text, IReadOnlyList<string> Conditions);
