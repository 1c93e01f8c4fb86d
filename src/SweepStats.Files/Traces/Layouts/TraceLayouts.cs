using SweepStats.Files.Traces.Text;
using SweepStats.Files.Traces.Touchstone;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>All layouts, in the order in which they are asked; the last takes what no other wants.</summary>
internal static class TraceLayouts
{
    private static readonly ITraceLayout[] All = [new TouchstoneLayout(), new SectionLayout(), new SegmentRowLayout(),
        new SweepRowLayout(), new LevelListLayout(), new LevelRowLayout(), new DelimitedLayout()];

    /// <summary>The first layout that recognises the file; the last recognises any.</summary>
    public static ITraceLayout For(TraceText text) => Array.Find(All, layout => layout.Recognises(text))!;
}
