namespace SweepStats.Sweeps;

/// <summary>A file of a campaign that was left out because it could not be read. Immutable.</summary>
/// <param name="File">Its path within the campaign.</param>
/// <param name="Role">What its sweeps were taken for.</param>
/// <param name="Reason">What is wrong, as half a sentence; the same for all files with which the same is wrong.</param>
/// <param name="Remedy">What to do, as half a sentence.</param>
public sealed record UnreadFile(string File, SweepRole Role, string Reason, string Remedy)
{
    /// <summary>The specimen of covered sweeps; null for other roles, and where the file holds several specimens.</summary>
    public SpecimenName? Specimen { get; init; }
}
