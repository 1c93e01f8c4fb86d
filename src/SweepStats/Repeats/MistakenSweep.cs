using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>A sweep that reads like those of another kind. Immutable.</summary>
/// <param name="Sweep">The sweep.</param>
/// <param name="Likes">What it reads like, the nearest first; at least one.</param>
/// <param name="Agreeing">Frequencies at which it lies within the scatter of the nearest.</param>
/// <param name="AboveOwnDb">
/// How far it lies above the sweeps of its own kind, as a median over frequency in dB; negative where below.
/// </param>
/// <param name="OwnCount">How many of its own kind it was held against.</param>
/// <param name="FarDb">How far from those it had to lie in dB.</param>
internal sealed record MistakenSweep(
    Sweep Sweep, ImmutableArray<KindCurve> Likes, int Agreeing, double AboveOwnDb, int OwnCount, double FarDb)
{
    /// <summary>What it reads most like.</summary>
    public KindCurve Like => Likes[0];

    /// <summary>Its specimen; null for floor, reference and plate.</summary>
    public SpecimenName? Specimen =>
        Sweep.Role == SweepRole.Covered ? SpecimenName.Of(Sweep) : null;

    /// <summary>Whether this and another read like each other's kind, as files do that were exchanged.</summary>
    public bool IsExchangedWith(MistakenSweep other) => ReadsLike(other) && other.ReadsLike(this);

    private bool ReadsLike(MistakenSweep other) => Likes.Any(k => k.Role == other.Sweep.Role && k.Specimen == other.Specimen);
}
