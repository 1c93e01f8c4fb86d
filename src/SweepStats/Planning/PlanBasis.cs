using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Planning;

/// <summary>
/// What is known of a set-up before the day at the bench: how its levels repeat and how much range it has. In dB.
/// </summary>
public sealed record PlanBasis
{
    // Without a pilot the floor is taken to come from five sweeps pooled over nine frequencies; on a flat floor the product pools
    // over 33.
    private const int ReadingsOfFloor = 5 * 5;

    /// <summary>Standard deviation of the signal between reference sweeps at one frequency.</summary>
    public required double ReferenceDeviationDb { get; init; }

    /// <summary>Standard deviation of the signal between the sweeps of one placement at one frequency.</summary>
    public required double SweepDeviationDb { get; init; }

    /// <summary>
    /// Standard deviation between placements; null where not known: then the plan holds for a specimen that stays where it is.
    /// </summary>
    public required double? PlacementDeviationDb { get; init; }

    /// <summary>Placements differ, but stand nowhere far enough over the floor to tell by how much.</summary>
    public bool PlacementsHidden { get; init; }

    /// <summary>Displayed reference level less displayed floor, where it is least; null where no floor is known.</summary>
    public required double? RangeDb { get; init; }

    /// <summary>How noise reads, one for each way of averaging to be reckoned with; empty where no floor is known.</summary>
    public required ImmutableArray<DetectorNoise> Noise { get; init; }

    /// <summary>Standard error of the floor.</summary>
    public required Contribution FloorError { get; init; }

    /// <summary>Frequencies that the floor was measured at; null where it was stated or declared.</summary>
    public int? FloorFrequencies { get; init; }

    /// <summary>How far a declared floor may lie off as a whole, to either side.</summary>
    public double FloorHalfWidthDb { get; init; }

    /// <summary>Standard deviation of the display's rounding, which no repeat averages away.</summary>
    public double RoundingDb { get; init; }

    /// <summary>Stated errors of the shielding, which no repeat shows.</summary>
    public SystematicError TypeB { get; init; } = SystematicError.None;

    /// <summary>How reference sweeps go together in the order taken.</summary>
    internal PlannedRepeats ReferenceRepeats { get; init; } = PlannedRepeats.Independent;

    /// <summary>How the sweeps of a placement do.</summary>
    internal PlannedRepeats SweepRepeats { get; init; } = PlannedRepeats.Independent;

    /// <summary>How placements do.</summary>
    internal PlannedRepeats PlacementRepeats { get; init; } = PlannedRepeats.Independent;

    /// <summary>How what counts as a repeat of the covered signal goes together.</summary>
    internal PlannedRepeats UnitRepeats(SweepNumbers numbers) => numbers.Placements > 1 ? PlacementRepeats : SweepRepeats;

    /// <summary>Variance between repeats of the covered signal in dB².</summary>
    internal double UnitVariance(SweepNumbers numbers)
    {
        double sweep = SweepDeviationDb * SweepDeviationDb;
        double placement = PlacementDeviationDb ?? 0;
        return numbers.Placements > 1 ? (placement * placement) + SweepRepeats.OfMean(sweep, numbers.SweepsEach) : sweep;
    }

    /// <summary>A basis stated by hand, for planning from nothing.</summary>
    /// <param name="scatterDb">Standard deviation of one sweep of a strong signal, reference and covered, not negative.</param>
    /// <param name="placementSpreadDb">Standard deviation between placements; null where not known.</param>
    /// <param name="rangeDb">Displayed reference less displayed floor; null where not known.</param>
    /// <param name="looks">Independent looks averaged in power, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A deviation is negative, or there is less than one look.</exception>
    public static PlanBasis Stated(double scatterDb, double? placementSpreadDb, double? rangeDb, double looks)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(scatterDb);
        ArgumentOutOfRangeException.ThrowIfNegative(placementSpreadDb ?? 0, nameof(placementSpreadDb));
        ArgumentOutOfRangeException.ThrowIfLessThan(looks, 1);
        var noise = new DetectorNoise(looks);
        return new PlanBasis
        {
            ReferenceDeviationDb = scatterDb,
            SweepDeviationDb = scatterDb,
            PlacementDeviationDb = placementSpreadDb,
            RangeDb = rangeDb,
            Noise = [noise],
            FloorError = new Contribution(noise.LogStandardDeviation / Math.Sqrt(ReadingsOfFloor), double.PositiveInfinity),
        };
    }
}
