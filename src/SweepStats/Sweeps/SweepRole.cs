namespace SweepStats.Sweeps;

/// <summary>What a sweep was taken for.</summary>
public enum SweepRole
{
    /// <summary>Source off or input terminated: the noise floor.</summary>
    Floor,

    /// <summary>Source on, nothing in the way.</summary>
    Reference,

    /// <summary>Source on, specimen in the way.</summary>
    Covered,

    /// <summary>Reference repeated with the source stepped down by a known amount.</summary>
    Linearity,

    /// <summary>Solid metal plate in place of the specimen: what still arrives leaks round it.</summary>
    Plate,
}
