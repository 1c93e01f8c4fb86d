namespace SweepStats.Planning;

/// <summary>What a claim needs of range, and what there is.</summary>
public sealed record ClaimPlan
{
    /// <summary>Shielding to be claimed in dB.</summary>
    public required double ClaimDb { get; init; }

    /// <summary>What the specimen truly shields in dB.</summary>
    public required double ShieldingDb { get; init; }

    /// <summary>
    /// Displayed reference less displayed floor that the claim needs in dB; null where no range is enough for this number of
    /// sweeps.
    /// </summary>
    public required double? RangeNeededDb { get; init; }

    /// <summary>Share of campaigns that succeed where range is no concern.</summary>
    public required double ShareWithPlenty { get; init; }

    /// <summary>Share of campaigns that succeed with the range there is; null where that is not known.</summary>
    public required double? ShareNow { get; init; }

    /// <summary>What campaigns show with the range there is; null where that is not known.</summary>
    public required ExpectedResult? Expected { get; init; }
}

/// <summary>The answers to a <see cref="PlanQuestion"/>.</summary>
public sealed record SweepPlan
{
    /// <summary>What it rests on.</summary>
    public required PlanBasis Basis { get; init; }

    /// <summary>What was asked.</summary>
    public required PlanQuestion Question { get; init; }

    /// <summary>
    /// Expected half-widths, row by row for each number of placements (or of sweeps, where placements are not known) and sweeps
    /// of each.
    /// </summary>
    public required ImmutableArray<ImmutableArray<ExpectedWidth>> Table { get; init; }

    /// <summary>
    /// Fewest placements for the wanted half-width, then what more sweeps of each save of them; empty where none does, none was
    /// asked for, or the question fixes all.
    /// </summary>
    public required ImmutableArray<ExpectedWidth> Fewest { get; init; }

    /// <summary>
    /// The numbers that all below is reckoned for: fewest placements, then fewest sweeps of each; the question's where no
    /// half-width was asked for or none gives it.
    /// </summary>
    public required SweepNumbers Chosen { get; init; }

    /// <summary>Whether the question left nothing to search for, so that <see cref="Chosen"/> is enough or not.</summary>
    public bool AllFixed => Question.AllFixed(Basis.PlacementDeviationDb is not null);

    /// <summary>Half-width in dB of the chosen numbers in the middle of all campaigns.</summary>
    public required double HalfWidthDb { get; init; }

    /// <summary>Half-width in dB of the chosen numbers that 9 of 10 campaigns stay within.</summary>
    public required double HalfWidthInNineOfTenDb { get; init; }

    /// <summary>Half-width in dB with twice the placements; null where placements are not known.</summary>
    public required double? TwiceThePlacementsDb { get; init; }

    /// <summary>Half-width in dB with twice the sweeps of each.</summary>
    public required double TwiceTheSweepsDb { get; init; }

    /// <summary>
    /// Largest shielding in dB that the chosen numbers bound from both sides; null where the range is not known.
    /// </summary>
    public required double? UsableRangeDb { get; init; }

    /// <summary>What the claim needs; null where nothing is to be claimed.</summary>
    public required ClaimPlan? Claim { get; init; }

    /// <summary>
    /// Range in dB that the claim lacks with this set-up: 0 where there is enough, null where that cannot be told or no range is
    /// enough.
    /// </summary>
    public double? MissingRangeDb =>
        Claim?.RangeNeededDb is { } needed && Basis.RangeDb is { } there ? Math.Max(0, needed - there) : null;
}
