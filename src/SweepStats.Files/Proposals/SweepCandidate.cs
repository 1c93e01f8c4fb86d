using SweepStats.Files.Traces;
using SweepStats.Quantities;

namespace SweepStats.Files.Proposals;

/// <summary>A trace that may be a sweep of the campaign, with all that tells what it was taken for.</summary>
/// <param name="File">Its file, relative to the folder, with '/'.</param>
/// <param name="Column">What names it within the file; null where the file holds it alone.</param>
internal sealed record SweepCandidate(string File, string? Column)
{
    /// <summary>What the folders tell, the outermost first.</summary>
    public required ImmutableArray<NamePart> Folders { get; init; }

    /// <summary>What the name of the file tells.</summary>
    public required NamePart Name { get; init; }

    /// <summary>What the name of the column tells; null where the file holds one sweep.</summary>
    public NamePart? Header { get; init; }

    /// <summary>Median of its levels over frequency, in dB; null where they cannot be read yet.</summary>
    public double? Level { get; init; }

    /// <summary>The scale of <see cref="Level"/>; null where the file does not say its unit: levels of such files are held
    /// against each other.</summary>
    public LevelScale? Scale { get; init; }

    /// <summary>First and last frequency in Hz: only over the same frequencies do levels compare.</summary>
    public FrequencyBand? Span { get; init; }

    /// <summary>When it was taken, as the file states it.</summary>
    public DateTimeOffset? TakenAt { get; init; }

    /// <summary>Why the file cannot be read as it is; its names are looked at all the same.</summary>
    public ImmutableArray<ReadFault> Faults { get; init; } = [];

    /// <summary>Units that the file does not say.</summary>
    public StatableKeys Asks { get; init; }

    /// <summary>The parts of its name, the nearest first: what the column says goes before the file, the file before its
    /// folders.</summary>
    public IEnumerable<NamePart> NearestFirst => new[] { Header, Name }.OfType<NamePart>().Concat(Folders.Reverse());
}
