namespace SweepStats.Report;

/// <summary>Which charts a report holds.</summary>
public enum ChartsDrawn
{
    /// <summary>None: tables and sentences alone.</summary>
    None,

    /// <summary>
    /// What a person looks at first: all that is about the campaign, its lots and the choice, and the weakest specimens.
    /// </summary>
    Summary,

    /// <summary>Also shielding and levels of every specimen.</summary>
    All,
}
