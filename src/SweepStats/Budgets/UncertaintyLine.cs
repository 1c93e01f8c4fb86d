using SweepStats.Uncertainty;

namespace SweepStats.Budgets;

/// <summary>One source of uncertainty and what it contributes. Immutable.</summary>
/// <remarks>
/// Levels and ratios in dB. Sensitivity, contribution and share are null where the result has no slope: where the covered level
/// does not rise over the floor.
/// </remarks>
public sealed record UncertaintyLine
{
    /// <summary>What it comes from.</summary>
    public required BudgetPart Part { get; init; }

    /// <summary>The stated error; null for what repeats show.</summary>
    public required UncertaintyEntry? Entry { get; init; }

    /// <summary>
    /// Levels that a stated error acts on in this line: reference or covered, or both where it is common to them and cancels.
    /// </summary>
    public required ErrorActsOn ActsOn { get; init; }

    /// <summary>Standard uncertainty of the source in dB.</summary>
    public required double StandardUncertaintyDb { get; init; }

    /// <summary>Its degrees of freedom; infinite where it is taken as known.</summary>
    public required double DegreesOfFreedom { get; init; }

    /// <summary>How much the shielding changes per dB of the source.</summary>
    public required double? Sensitivity { get; init; }

    /// <summary>Share of the variance of the result, 0 to 1; null where that is zero too.</summary>
    public required double? Share { get; init; }

    /// <summary>
    /// Its name for people: reference, covered, floor, leakage, or the stated error's own, with the level where each level has
    /// one of its own.
    /// </summary>
    public string Source => Part switch
    {
        BudgetPart.Reference => "reference",
        BudgetPart.Covered => "covered",
        BudgetPart.Floor => "floor",
        BudgetPart.Leakage => "leakage",
        _ => Entry!.TimesInDifference == 2
            ? $"{Entry.Name} ({(ActsOn == ErrorActsOn.Reference ? "reference" : "covered")})" : Entry.Name,
    };

    /// <summary>|Sensitivity| times standard uncertainty, in dB.</summary>
    public double? ContributionDb => Sensitivity is { } slope ? Math.Abs(slope) * StandardUncertaintyDb : null;

    /// <summary>The error is the same in reference and covered and cancels.</summary>
    public bool Cancels => Entry is { TimesInDifference: 0 };

    /// <summary>Evaluated by other means than repeats (type B). Source of the terms: JCGM 100:2008, 2.3.2 and 2.3.3.</summary>
    public bool TypeB => Entry is not null || Part == BudgetPart.Leakage;
}
