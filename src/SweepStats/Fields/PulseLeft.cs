using SweepStats.Statistics;

namespace SweepStats.Fields;

/// <summary>
/// What is left of a pulse behind one specimen under one assumption on the frequencies outside the measured band. Immutable.
/// </summary>
/// <param name="Outside">The assumption.</param>
public sealed record PulseLeft(OutsideBand Outside)
{
    /// <summary>
    /// With the minimum phase; null where bounds or frequencies of which nothing is known stand in, since a shielding that is
    /// known from below alone leaves the phase open.
    /// </summary>
    public PulseFigures? Estimate { get; init; }

    /// <summary>Limits of the peak with the minimum phase, in V/m; null without an estimate and without repeats.</summary>
    public Interval? PeakLimits { get; init; }

    /// <summary>
    /// The peak is no higher whatever the phase, in V/m: the integral of the spectrum's size, at the lower limits of the
    /// shielding. Null where nothing is claimed.
    /// </summary>
    public double? PeakAtMost { get; init; }

    /// <summary>Why there is no <see cref="PeakAtMost"/>; null where there is one.</summary>
    public FieldSilence? Silence { get; init; }

    /// <summary>The energy is no more, in J/m², whatever the phase; null where no limit of the shielding is known.</summary>
    public double? EnergyAtMost { get; init; }

    /// <summary>
    /// Peak in V/m with the measured phase inside the band and the minimum phase outside; null where the sweeps carry no phase,
    /// or without an estimate.
    /// </summary>
    public double? PeakWithMeasuredPhase { get; init; }

    /// <summary>
    /// The highest that the peak may be under this assumption, in V/m: with the minimum phase where it is known, else whatever
    /// the phase.
    /// </summary>
    public double? Highest => MeasuredPhaseLeavesMore ? PeakAtMost : PeakLimits?.High ?? PeakAtMost;

    /// <summary>The lowest; null where only a bound is known.</summary>
    public double? Lowest => MeasuredPhaseLeavesMore ? null : PeakLimits?.Low;

    /// <summary>
    /// Whether more is left with the measured phase than the limits with the minimum phase allow: these then hold no longer.
    /// </summary>
    public bool MeasuredPhaseLeavesMore => PeakWithMeasuredPhase > PeakLimits?.High;
}
