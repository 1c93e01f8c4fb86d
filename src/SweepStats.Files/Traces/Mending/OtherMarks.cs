using SweepStats.Files.Traces.Layouts;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>
/// Reads a text that is marked otherwise than usual: bars between its columns, other marks of comments, levels several in a line.
/// </summary>
internal static class OtherMarks
{
    /// <summary>
    /// The reading of the text; where it is refused as it stands, that with other marks of comments or with wrapped levels, if
    /// that is read.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="options">What is known beside it.</param>
    /// <param name="read">Reads a text of the usual marks.</param>
    public static TraceReading Best(TraceText text, TraceReadOptions options, Func<TraceText, TraceReading> read)
    {
        using var mended = new Mended(text);
        mended.Take(BarTable.Mend(text));
        TraceReading plain = read(mended.Text);
        if (plain.Faults.IsEmpty)
        {
            return plain;
        }

        if (WrappedLevels.Read(mended.Text, options) is { } levels)
        {
            return levels;
        }

        if (CommentMarks.Mend(mended.Text) is not { } commented)
        {
            return plain;
        }

        mended.Take(commented);
        TraceReading other = read(mended.Text);
        return other.Faults.IsEmpty ? mended.Said(other) : WrappedLevels.Read(mended.Text, options) is { } wrapped
            ? mended.Said(wrapped) : IsAsked(other) ? other : plain;
    }

    // A unit that is not stated can be: to be asked for it is a step on.
    private static bool IsAsked(TraceReading reading) => reading.Faults.All(f => f.Unstated != UnstatedUnits.None);
}
