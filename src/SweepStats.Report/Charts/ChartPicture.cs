using System.Collections.Immutable;

namespace SweepStats.Report.Charts;

/// <summary>A chart as the page shows it: one <c>svg</c> element whose ids start with the chart's name.</summary>
/// <param name="Name">File name without extension.</param>
/// <param name="Kind">What it shows.</param>
/// <param name="Title">Short title for people.</param>
/// <param name="Svg">The element.</param>
/// <param name="Shows">Codes of the findings that it shows.</param>
internal sealed record ChartPicture(string Name, ChartKind Kind, string Title, string Svg, ImmutableArray<string> Shows);
