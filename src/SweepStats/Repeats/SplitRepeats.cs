using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>Sweeps of the reference, or of one placement of a specimen, that lie on two levels. Immutable.</summary>
/// <param name="Specimen">Which specimen; null for the reference.</param>
/// <param name="Lower">The sweeps that lie lower.</param>
/// <param name="Higher">The others.</param>
/// <param name="LowerDb">Mean level of the lower ones in dB.</param>
/// <param name="HigherDb">Mean level of the others in dB.</param>
/// <param name="ToldFromDb">The narrowest gap in dB that was told.</param>
internal sealed record SplitRepeats(SpecimenName? Specimen, ImmutableArray<Sweep> Lower, ImmutableArray<Sweep> Higher,
    double LowerDb, double HigherDb, double ToldFromDb)
{
    /// <summary>How far the two levels lie apart in dB.</summary>
    public double ApartDb => HigherDb - LowerDb;
}
