namespace SweepStats.Trends;

/// <summary>What is missing for a trend.</summary>
public enum TrendLack
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>Fewer than three values of the factor differ: two always lie on a line.</summary>
    Values,

    /// <summary>Fewer than four specimens: three leave one degree of freedom, and nothing to hold the line against.</summary>
    Specimens,
}
