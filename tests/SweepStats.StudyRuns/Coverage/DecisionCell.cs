using System.Collections.Immutable;
using SweepStats.Uncertainty;

namespace SweepStats.StudyRuns.Coverage;

/// <summary>What a specimen truly does against the requirement.</summary>
public enum HairTruth
{
    /// <summary>It shields a hair less than asked at one frequency and far more at all others.</summary>
    FailsAtOneFrequency,

    /// <summary>It shields a hair less than asked everywhere.</summary>
    FailsEverywhere,

    /// <summary>It shields a hair more than asked everywhere.</summary>
    MeetsEverywhere,
}

/// <summary>A kind of campaign whose specimen lies within a hair of the requirement.</summary>
/// <param name="Name">Name for people.</param>
/// <param name="Truth">How it truly stands.</param>
/// <param name="ShieldingDb">Its shielding; the reference stands 70 dB over the noise.</param>
public sealed record DecisionCell(string Name, HairTruth Truth, double ShieldingDb)
{
    /// <summary>Sweeps of each role, or of each placement.</summary>
    public int Sweeps { get; init; } = 5;

    /// <summary>Scatter between sweeps in dB.</summary>
    public double ScatterDb { get; init; } = 0.5;

    /// <summary>Placements; 0 leaves them unnamed.</summary>
    public int Placements { get; init; }

    /// <summary>How far placements differ in dB.</summary>
    public double PlacementDb { get; init; }

    /// <summary>Stated errors, drawn anew at each frequency.</summary>
    public ImmutableArray<UncertaintyEntry> Errors { get; init; } = [];

    /// <summary>The cells of the study.</summary>
    public static ImmutableArray<DecisionCell> All { get; } =
    [
        .. from truth in Enum.GetValues<HairTruth>()
           from cell in Kinds(truth)
           select cell,
    ];

    private static IEnumerable<DecisionCell> Kinds(HairTruth truth)
    {
        UncertaintyEntry scale = new() { Name = "scale", HalfWidthDb = 1, Distribution = ErrorDistribution.Rectangular };
        UncertaintyEntry mismatch =
            new() { Name = "mismatch", HalfWidthDb = 0.6, Distribution = ErrorDistribution.Arcsine, ActsOn = ErrorActsOn.Both };
        yield return new DecisionCell("far above the floor", truth, 40);
        yield return new DecisionCell("far above the floor, 3 sweeps", truth, 40) { Sweeps = 3 };
        yield return new DecisionCell("5 dB over the noise", truth, 65);
        yield return new DecisionCell("at the noise", truth, 70);
        yield return new DecisionCell("a rectangle and a mismatch stated", truth, 40) { Errors = [scale, mismatch] };
        yield return new DecisionCell("the same, 5 dB over the noise", truth, 65) { Errors = [scale, mismatch] };
        yield return new DecisionCell("4 placements of 2 sweeps, 0.8 dB apart", truth, 40)
        {
            Placements = 4,
            PlacementDb = 0.8,
            Sweeps = 2,
            ScatterDb = 0.2,
        };
    }
}
