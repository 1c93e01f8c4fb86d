using SweepStats.Sweeps;

namespace SweepStats.Report.Drawing;

/// <summary>
/// A chart that can be built, and has its name already: a name may not depend on which other charts are drawn, or in which order.
/// </summary>
/// <param name="Name">File name without extension.</param>
/// <param name="Build">Builds it under that name; null where the result has nothing for it to show.</param>
internal sealed record PlannedChart(string Name, Func<string, Chart?> Build)
{
    /// <summary>The specimens that it is about; empty where it is about the whole campaign.</summary>
    public ImmutableArray<SpecimenName> Of { get; init; } = [];

    /// <summary>Whether it shows them side by side, and is no chart of a specimen by itself.</summary>
    public bool IsOverview { get; init; }

    /// <summary>The chart; null where there is nothing to show.</summary>
    public Chart? Model() => Build(Name);
}
