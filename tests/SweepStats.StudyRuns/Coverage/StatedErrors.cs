using System.Collections.Immutable;
using SweepStats.Uncertainty;

namespace SweepStats.StudyRuns.Coverage;

/// <summary>Errors that no repeat shows, under a name: drawn from their distributions, and stated to the analysis.</summary>
/// <param name="Name">One word, for tables.</param>
/// <param name="Entries">As a campaign states them.</param>
public sealed record StatedErrors(string Name, ImmutableArray<UncertaintyEntry> Entries)
{
    /// <summary>No errors.</summary>
    public static StatedErrors None { get; } = new("none", []);

    /// <summary>A rectangle that rules: a normal sum would reach past its ends.</summary>
    public static StatedErrors Rectangle { get; } =
        new("rectangle", [Entry("scale", 2, ErrorDistribution.Rectangular, ErrorActsOn.Covered)]);

    /// <summary>A mismatch that rules, of reference and covered each.</summary>
    public static StatedErrors Mismatch { get; } =
        new("mismatch", [Entry("mismatch", 1.5, ErrorDistribution.Arcsine, ErrorActsOn.Both)]);

    /// <summary>Four of the usual size together, one of them common to reference and covered.</summary>
    public static StatedErrors Together { get; } = new("four",
    [
        Entry("scale", 0.5, ErrorDistribution.Rectangular, ErrorActsOn.Covered),
        Entry("mismatch", 0.3, ErrorDistribution.Arcsine, ErrorActsOn.Both),
        Entry("antenna", 1, ErrorDistribution.Normal, ErrorActsOn.Both) with { Common = true },
        Entry("cable", 0.4, ErrorDistribution.Triangular, ErrorActsOn.Reference),
    ]);

    /// <summary>All of them.</summary>
    public static ImmutableArray<StatedErrors> All { get; } = [None, Rectangle, Mismatch, Together];

    private static UncertaintyEntry Entry(string name, double halfWidthDb, ErrorDistribution distribution, ErrorActsOn actsOn) =>
        new() { Name = name, HalfWidthDb = halfWidthDb, Distribution = distribution, ActsOn = actsOn };
}
