using SweepStats.Uncertainty;

namespace SweepStats.Rehearsal;

/// <content>
/// What may go wrong at the bench, and the sweeps that show it. Each is drawn by itself: one that is not planned changes no other
/// level.
/// </content>
public sealed partial record RehearsalPlan
{
    /// <summary>Transmitters in the neighbourhood.</summary>
    public ImmutableArray<AmbientCarrier> Ambient { get; init; } = [];

    /// <summary>How far the source level moves in dB from the first sweep of the campaign to the last.</summary>
    public double DriftDb { get; init; }

    /// <summary>How it moves.</summary>
    public DriftShape DriftShape { get; init; } = DriftShape.Steady;

    /// <summary>Sweeps that differ from their repeats. Two entries for one sweep add up.</summary>
    public ImmutableArray<OddSweep> OddSweeps { get; init; } = [];

    /// <summary>
    /// Chance that a point of a reference or covered sweep is off by <see cref="JumpDb"/>, 0 to 1: a loose contact.
    /// </summary>
    public double JumpShare { get; init; }

    /// <summary>How far such a point is off, in dB; negative where it reads too low.</summary>
    public double JumpDb { get; init; } = -1;

    /// <summary>Input level in dBm at which the receiver shows 1 dB too little; null for a receiver that never does.</summary>
    public double? CompressionDbm { get; init; }

    /// <summary>Highest level in dBm that the display shows; what is higher is shown as this. Null for none.</summary>
    public double? LimitDbm { get; init; }

    /// <summary>Step of the displayed levels in dB; 0 for full digits.</summary>
    public double QuantisationDb { get; init; }

    /// <summary>
    /// Source level in dBm at which reference and covered sweeps are taken. The sweeps state it where linearity sweeps are
    /// planned.
    /// </summary>
    public double SourceDbm { get; init; } = 10;

    /// <summary>
    /// Source levels in dBm of the linearity sweeps; empty for none. They are taken in rounds, one sweep a level, so that drift
    /// does not look like a step.
    /// </summary>
    public ImmutableArray<double> LinearitySourcesDbm { get; init; } = [];

    /// <summary>Linearity sweeps at each source level, at least 1.</summary>
    public int LinearitySweeps { get; init; } = 3;

    /// <summary>
    /// How far below the reference, in dB, a leak round the specimen arrives. It adds to the specimen's signal as a voltage, with
    /// a phase that is drawn for each frequency and stays over the campaign. Null for no leak.
    /// </summary>
    public double? PlateDb { get; init; }

    /// <summary>Sweeps of a solid plate in place of the specimen, which show the leak alone; 0 for none.</summary>
    public int PlateSweeps { get; init; }

    /// <summary>When the first sweep is taken; null leaves the sweeps without times.</summary>
    public DateTimeOffset? StartsAt { get; init; }

    /// <summary>Seconds from one sweep to the next, above 0 and up to a week.</summary>
    public double SecondsPerSweep { get; init; } = 60;

    /// <summary>Errors that all sweeps of a role share, drawn at every frequency from their distributions.</summary>
    public ImmutableArray<UncertaintyEntry> SystematicErrors { get; init; } = [];

    /// <summary>
    /// Standard deviation in dB of what a placement differs by from frequency to frequency, beside the offset all frequencies
    /// share.
    /// </summary>
    public double PlacementScatterDb { get; init; }
}
