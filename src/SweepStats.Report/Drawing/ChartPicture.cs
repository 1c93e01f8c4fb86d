namespace SweepStats.Report.Drawing;

/// <summary>A chart as the page shows it: one <c>svg</c> element whose ids start with the chart's name.</summary>
/// <param name="Name">File name without extension.</param>
/// <param name="Kind">What it shows.</param>
/// <param name="Title">Short title for people.</param>
/// <param name="File">The picture as a file of its own, UTF-8.</param>
/// <param name="Shows">Codes of the findings that it shows.</param>
internal sealed record ChartPicture(string Name, ChartKind Kind, string Title, byte[] File, ImmutableArray<string> Shows)
{
    /// <summary>The element without what stands before it in the file, UTF-8.</summary>
    public ReadOnlySpan<byte> Svg => File.AsSpan(SvgPicture.Declaration.Length);
}
