using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>What sweeps that repeat each other have in common.</summary>
/// <param name="Role">What they were taken for.</param>
/// <param name="Lot">Lot of the specimen; null where there is none.</param>
/// <param name="Specimen">The specimen; null where there is none.</param>
/// <param name="SourceDbm">Level of the source of linearity sweeps in dBm; null of others, which are all taken at one.</param>
internal readonly record struct SweepKind(SweepRole Role, string? Lot, string? Specimen, double? SourceDbm)
{
    /// <summary>The kind of a sweep; placements of one specimen are of one kind.</summary>
    public static SweepKind Of(Sweep sweep) =>
        new(sweep.Role, sweep.Lot, sweep.Specimen, sweep.Role == SweepRole.Linearity ? sweep.SourceDbm : null);

    /// <summary>Whether noise alone is read.</summary>
    public bool IsNoise => Role == SweepRole.Floor;
}
