namespace SweepStats.Statistics;

/// <summary>Where an outlier is looked for.</summary>
internal enum OutlierSide
{
    /// <summary>Above or below the rest.</summary>
    Either,

    /// <summary>Above the rest.</summary>
    High,

    /// <summary>Below the rest.</summary>
    Low,
}
