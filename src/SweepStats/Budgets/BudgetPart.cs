namespace SweepStats.Budgets;

/// <summary>What an uncertainty comes from.</summary>
public enum BudgetPart
{
    /// <summary>Scatter of the reference repeats.</summary>
    Reference,

    /// <summary>Scatter of the covered repeats.</summary>
    Covered,

    /// <summary>Error of the noise floor.</summary>
    Floor,

    /// <summary>What reaches the receiver on another way, with unknown phase.</summary>
    Leakage,

    /// <summary>An error that the campaign states.</summary>
    Stated,
}
