using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>A campaign of known truth, to be drawn. Every default makes a small, clean campaign.</summary>
public sealed partial record RehearsalPlan
{
    /// <summary>What the number of cycles is called where it is stated of a specimen.</summary>
    public const string CyclesName = "cycles";

    /// <summary>Name for people.</summary>
    public string Title { get; init; } = "Rehearsed campaign";

    /// <summary>Seed of all draws; same plan and seed give the same levels.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Band swept.</summary>
    public FrequencyBand Band { get; init; } = new(new Hertz(30e6), new Hertz(1e9));

    /// <summary>Points of a sweep, evenly spaced over log frequency and rounded to whole kHz from 1 MHz on, at least 1.</summary>
    public int Points { get; init; } = 201;

    /// <summary>Floor sweeps; 0 leaves them out.</summary>
    public int FloorSweeps { get; init; } = 5;

    /// <summary>Reference sweeps, at least 1.</summary>
    public int ReferenceSweeps { get; init; } = 5;

    /// <summary>Lots, at least 1.</summary>
    public int Lots { get; init; } = 1;

    /// <summary>Specimens in a lot, at least 1.</summary>
    public int SpecimensPerLot { get; init; } = 1;

    /// <summary>Placements of a specimen; 0 leaves placements unnamed.</summary>
    public int Placements { get; init; }

    /// <summary>Covered sweeps a placement (or a specimen, where placements are unnamed), at least 1.</summary>
    public int CoveredSweeps { get; init; } = 5;

    /// <summary>Shielding at the start of the band in dB; between start and stop it runs straight over log frequency.</summary>
    public double ShieldingStartDb { get; init; } = 40;

    /// <summary>Shielding at the stop of the band in dB.</summary>
    public double ShieldingStopDb { get; init; } = 40;

    /// <summary>Standard deviation between lots in dB.</summary>
    public double LotDeviationDb { get; init; }

    /// <summary>
    /// Where the specimens of a lot shield otherwise than the rest of the band says. Steps that overlap add up.
    /// </summary>
    public ImmutableArray<LotStep> LotSteps { get; init; } = [];

    /// <summary>
    /// Cycles of wear that the specimens of each lot have behind them, one number a lot; empty where there is no wear. They are
    /// stated with the campaign, as <see cref="CyclesName"/>.
    /// </summary>
    public ImmutableArray<double> Cycles { get; init; } = [];

    /// <summary>Shielding that each cycle takes away, in dB.</summary>
    public double WearDb { get; init; }

    /// <summary>Standard deviation between specimens of a lot in dB.</summary>
    public double SpecimenDeviationDb { get; init; }

    /// <summary>
    /// How many times as much the specimens of lots A, B and so on differ, as whole curves and from frequency to frequency; 1 for
    /// lots that are not listed.
    /// </summary>
    public ImmutableArray<double> LotSpreads { get; init; } = [];

    /// <summary>Standard deviation between placements in dB, the same at all frequencies of a placement.</summary>
    public double PlacementDeviationDb { get; init; }

    /// <summary>Standard deviation of the offset that all points of a sweep share, in dB; reference and covered.</summary>
    public double SweepDeviationDb { get; init; }

    /// <summary>Standard deviation of a point of a sweep in dB, on top of noise; reference and covered.</summary>
    public double ScatterDb { get; init; } = 0.2;

    /// <summary>Noise power in one resolution bandwidth in dBm, at the start of the band.</summary>
    public double FloorDbm { get; init; } = -100;

    /// <summary>How much higher the noise is at the stop of the band, in dB.</summary>
    public double FloorTiltDb { get; init; }

    /// <summary>Reference level in dBm.</summary>
    public double ReferenceDbm { get; init; } = -30;

    /// <summary>Swing of the reference level over the band in dB, as antennas and cables have it.</summary>
    public double ReferenceRippleDb { get; init; }

    /// <summary>How the detector averages.</summary>
    public Averaging Averaging { get; init; } = Averaging.Power;

    /// <summary>Looks averaged in a reading, at least 1.</summary>
    public double Looks { get; init; } = 20;
}
