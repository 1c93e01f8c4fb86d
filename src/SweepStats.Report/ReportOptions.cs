namespace SweepStats.Report;

/// <summary>
/// What a report shows beside the result itself. No time, place or machine belongs here: the same result gives the same bytes.
/// </summary>
public sealed record ReportOptions
{
    /// <summary>Also write every chart as PNG, which needs a font on this machine; SVG needs none.</summary>
    public bool Png { get; init; }

    /// <summary>Which charts to draw; null for every one of a campaign of few specimens, and a summary of one of many.</summary>
    public ChartsDrawn? Charts { get; init; }

    /// <summary>Version of the program; null where nobody says.</summary>
    public string? Version { get; init; }

    /// <summary>
    /// One hash over all input files in hexadecimal, of which the page shows the beginning; null where nobody says.
    /// </summary>
    public string? InputDigest { get; init; }

    /// <summary>What the readers of the files had to assume, one sentence each; printed with the choices.</summary>
    public ImmutableArray<string> Assumptions { get; init; } = [];

    /// <summary>
    /// Files or sweeps that could not be read and were left out at the user's wish, one sentence each; printed with the sweeps.
    /// </summary>
    public ImmutableArray<string> LeftOut { get; init; } = [];
}
