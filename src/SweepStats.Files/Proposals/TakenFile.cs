namespace SweepStats.Files.Proposals;

/// <summary>What init makes of a file.</summary>
/// <param name="File">The file, relative to the folder, with '/'.</param>
/// <param name="Sweeps">Its sweeps; where it cannot be read, one that stands for the file and holds the reasons.</param>
internal sealed record TakenFile(string File, ImmutableArray<SweepCandidate> Sweeps)
{
    /// <summary>Traces of it that are no sweeps, for a person.</summary>
    public ImmutableArray<string> NotTaken { get; init; } = [];
}
