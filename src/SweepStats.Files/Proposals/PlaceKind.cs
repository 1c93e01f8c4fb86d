namespace SweepStats.Files.Proposals;

/// <summary>What a number or a name within a name counts.</summary>
internal enum PlaceKind
{
    /// <summary>Lots.</summary>
    Lot,

    /// <summary>Specimens.</summary>
    Specimen,

    /// <summary>Placements of a specimen.</summary>
    Placement,

    /// <summary>Sweeps of a placement.</summary>
    Repeat,
}
