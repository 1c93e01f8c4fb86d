namespace SweepStats.Files.Traces.Preambles;

/// <summary>Something that a line above the data states: what, and one value or more.</summary>
/// <param name="Key">Lower-case words, such as "resolution bandwidth".</param>
/// <param name="KeyUnit">Unit in brackets behind the key; empty for none.</param>
/// <param name="Values">What is stated, in the order of the line.</param>
internal sealed record Statement(string Key, string KeyUnit, ImmutableArray<string> Values)
{
    /// <summary>The key as the file has it, without a unit in brackets.</summary>
    public string Written { get; init; } = Key;

    /// <summary>Line in the file, from 1.</summary>
    public int Line { get; init; }

    /// <summary>The one number within the key, as in "Trace 2 Mode"; null for none or several.</summary>
    public int? Number { get; init; }
}
