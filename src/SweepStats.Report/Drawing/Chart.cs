using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>A chart before it is drawn.</summary>
/// <param name="Name">File name without extension.</param>
/// <param name="Kind">What it shows.</param>
/// <param name="Title">Short title for people.</param>
/// <param name="Description">What a person who cannot see it should know.</param>
/// <param name="Model">The drawing.</param>
/// <param name="Height">Height in pixels at <see cref="Width"/>.</param>
internal sealed record Chart(string Name, ChartKind Kind, string Title, string Description, PlotModel Model, int Height = 500)
{
    /// <summary>Width of every chart in pixels.</summary>
    public const int Width = 900;

    /// <summary>Codes of the findings that it shows.</summary>
    public ImmutableArray<string> Shows { get; init; } = [];
}
