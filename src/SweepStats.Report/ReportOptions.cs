using System.Collections.Immutable;

namespace SweepStats.Report;

/// <summary>What a report shows beside the result itself. No time, place or machine belongs here: the same result gives the same bytes.</summary>
public sealed record ReportOptions
{
    /// <summary>Also write every chart as PNG, which needs a font on this machine; SVG is always written and needs none.</summary>
    public bool Png { get; init; }

    /// <summary>What the readers of the files had to assume, one sentence each; printed with the choices.</summary>
    public ImmutableArray<string> Assumptions { get; init; } = [];

    /// <summary>Files or sweeps that could not be read and were left out at the user's wish, one sentence each; printed with the sweeps.</summary>
    public ImmutableArray<string> LeftOut { get; init; } = [];
}
