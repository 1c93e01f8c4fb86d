using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>A trace file and what its sweeps were taken for.</summary>
/// <param name="File">Path relative to the campaign, with '/'.</param>
/// <param name="Role">What the sweeps were taken for.</param>
internal sealed record SweepEntry(string File, SweepRole Role)
{
    public string? Lot { get; init; }

    public string? Specimen { get; init; }

    public string? Placement { get; init; }

    public string? Column { get; init; }

    public DateTimeOffset? TakenAt { get; init; }

    public double? SourceDbm { get; init; }

    public string? Exclude { get; init; }
}
