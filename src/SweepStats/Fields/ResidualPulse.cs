using SweepStats.Sweeps;

namespace SweepStats.Fields;

/// <summary>What is left of a pulse behind one specimen. Immutable.</summary>
/// <param name="Name">Which specimen.</param>
/// <param name="Silence">Why nothing is told at all; null where something is.</param>
public sealed record ResidualPulse(SpecimenName Name, FieldSilence? Silence)
{
    /// <summary>One for each assumption, in the order of <see cref="OutsideBand"/>; empty where nothing is told.</summary>
    public ImmutableArray<PulseLeft> Assumed { get; init; } = [];

    /// <summary>
    /// The field over the first 25 decay times of the pulse, under the assumption asked for; null where nothing is told.
    /// </summary>
    public Waveform? Waveform { get; init; }

    /// <summary>
    /// Whether the record of the pulse had to end before what the lowest measured frequency leaves behind has died away: peaks
    /// may then err by more than their limits say.
    /// </summary>
    public bool EndsEarly { get; init; }

    /// <summary>Measured frequencies at which the shielding is known from below alone.</summary>
    public int BoundCount { get; init; }

    /// <summary>Measured frequencies at which nothing is known; none is taken to be kept out there.</summary>
    public int UnknownCount { get; init; }

    /// <summary>What is left under an assumption; null where nothing is told.</summary>
    public PulseLeft? Under(OutsideBand outside) => Assumed.FirstOrDefault(a => a.Outside == outside);
}
