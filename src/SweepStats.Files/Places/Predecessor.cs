namespace SweepStats.Files.Places;

/// <summary>What may stand at a target before it is written, and how it goes.</summary>
internal sealed record Predecessor
{
    /// <summary>What is written, as messages name it, such as "the report".</summary>
    public required string What { get; init; }

    /// <summary>Where else to write it, such as "choose another folder with --out".</summary>
    public required string Elsewhere { get; init; }

    /// <summary>Why an existing folder may not be replaced; null where it may.</summary>
    public required Func<string, ReadFault?> Objection { get; init; }

    /// <summary>Paths of the files in an existing folder that are replaced.</summary>
    public required Func<string, IReadOnlyList<string>> Own { get; init; }

    /// <summary>
    /// Removes a folder that was replaced, and moves what is nobody's work to its successor; false where something else lies in
    /// it, which then stays.
    /// </summary>
    public required Func<string, string, bool> Remove { get; init; }

    /// <summary>The file that says what a folder is, and is written and removed last; null where none does.</summary>
    public string? Mark { get; init; }
}
