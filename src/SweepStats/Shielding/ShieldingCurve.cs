using SweepStats.Sweeps;

namespace SweepStats.Shielding;

/// <summary>Shielding of one specimen over frequency. Immutable.</summary>
public sealed record ShieldingCurve
{
    /// <summary>Which specimen.</summary>
    public required SpecimenName Name { get; init; }

    /// <summary>One reading a frequency, in grid order.</summary>
    public required ShieldingReadings Readings { get; init; }

    /// <summary>Covered sweeps used.</summary>
    public required int SweepCount { get; init; }

    /// <summary>Placements noted; null where the campaign does not name them.</summary>
    public required int? PlacementCount { get; init; }

    /// <summary>Typical scatter between sweeps of one placement in dB; null where no placement has two sweeps.</summary>
    public required double? RepeatabilityDb { get; init; }

    /// <summary>
    /// Standard deviation of the display's rounding in dB, the larger of reference and covered; 0 where levels come with all
    /// digits.
    /// </summary>
    public double RoundingDb { get; init; }

    /// <summary>The levels behind the readings, for limits of another confidence.</summary>
    internal CurveLevels? Levels { get; init; }

    /// <summary>What each repeat contributes, for figures over the band.</summary>
    internal CurveSpread? Spread { get; init; }
}
