namespace SweepStats.Sweeps;

/// <summary>
/// Which specimen of cloth: its lot and its own name. Ordered by lot, then specimen, in natural order: s2 comes before s10.
/// </summary>
/// <param name="Lot">Lot it came from.</param>
/// <param name="Specimen">Name within the lot.</param>
public readonly record struct SpecimenName(string Lot, string Specimen) : IComparable<SpecimenName>
{
    /// <summary>The specimen of a covered sweep; "1" stands for a lot or a specimen without a name.</summary>
    public static SpecimenName Of(Sweep sweep)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        return new(sweep.Lot ?? "1", sweep.Specimen ?? "1");
    }

    /// <inheritdoc/>
    public int CompareTo(SpecimenName other)
    {
        int byLot = NaturalOrder.Instance.Compare(Lot, other.Lot);
        return byLot != 0 ? byLot : NaturalOrder.Instance.Compare(Specimen, other.Specimen);
    }

    /// <summary>Whether the left name comes first.</summary>
    public static bool operator <(SpecimenName left, SpecimenName right) => left.CompareTo(right) < 0;

    /// <summary>Whether the left name comes last.</summary>
    public static bool operator >(SpecimenName left, SpecimenName right) => left.CompareTo(right) > 0;

    /// <summary>Whether the left name comes first or both are the same.</summary>
    public static bool operator <=(SpecimenName left, SpecimenName right) => left.CompareTo(right) <= 0;

    /// <summary>Whether the left name comes last or both are the same.</summary>
    public static bool operator >=(SpecimenName left, SpecimenName right) => left.CompareTo(right) >= 0;

    /// <summary>Lot and specimen as people write them.</summary>
    public override string ToString() => $"{Lot}/{Specimen}";
}
