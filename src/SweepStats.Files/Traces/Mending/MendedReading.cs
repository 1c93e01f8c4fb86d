using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>
/// Reads a table that does not read plainly once more, with what keeps it from that taken out: repeated headers and remarks
/// between its rows, marks between thousands, columns of words. What was done is said; a text that does not read then either
/// keeps its first reason.
/// </summary>
internal static class MendedReading
{
    // The mended text stands beside the file; larger files are refused for their first reason.
    private const int MostLines = 2_000_000;

    /// <summary>The reading of the mended text where it is the better one, else the plain one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="plain">What it gave as it stands.</param>
    /// <param name="columns">The columns asked for.</param>
    /// <param name="read">Reads a text as it stands, all columns or those asked for.</param>
    public static TraceReading Best(TraceText text, TraceReading plain, ImmutableArray<string> columns,
        Func<TraceText, ImmutableArray<string>, TraceReading> read)
    {
        if (!MayHelp(text, plain))
        {
            return plain;
        }

        bool isRefused = !plain.Faults.IsEmpty;
        using var mended = new Mended(text);
        if (isRefused)
        {
            mended.Mend();
        }

        WordColumns? words = RowPattern.Find(mended.Text) is { } pattern ? WordColumns.Of(mended.Text, pattern) : null;
        if (isRefused && words is not null && Flagged(text.File, words) is { } flagged)
        {
            return flagged;
        }

        TraceText rows = mended.Text;
        mended.Take(words is { Any: true } ? words.Filled([]) : null);
        TraceReading whole = mended.IsChanged || !columns.IsEmpty ? read(mended.Text, []) : plain;
        if (words is not null && IsRead(whole) && (whole.IsStacked || Falls(whole))
            && new RowGroups(words, rows, t => read(t, [])).Read() is { } groups)
        {
            return mended.Said(groups);
        }

        if (isRefused && words is not null && IsRead(whole) && Meaning(text.File, words) is { } meaning)
        {
            return meaning;
        }

        return mended.IsChanged && isRefused && IsRead(whole) && whole.Faults.Length <= plain.Faults.Length
            ? mended.Said(columns.IsEmpty ? whole : read(mended.Text, columns)) : plain;
    }

    // Tables that stand below each other and read plainly have no column of words: only a number of the sweep may be hidden in
    // them.
    private static bool MayHelp(TraceText text, TraceReading plain) => text.LineCount <= MostLines
        && (!plain.Faults.IsEmpty || Falls(plain) || (plain.IsStacked && RowGroups.MayBeNumbered(text)));

    private static TraceReading? Flagged(string file, WordColumns words) =>
        words.Flagged() is not var (line, column) ? null : TraceReading.Refused(file, line + 1,
            $"'{words.Value(line, column)}' in column {ColumnList.Number(column)} marks the row as no good reading",
            "leave such rows out; if the readings count, leave the column out");

    private static TraceReading? Meaning(string file, WordColumns words) =>
        words.Meaning() is not { } means ? null : TraceReading.Refused(
            file, words.FirstRow + 1, $"column {ColumnList.Number(means)} holds words that may tell what each row is "
                + $"of: {string.Join(", ", words.Tally(means).Values.Take(4).Select(v => $"'{v}'"))}",
            "export each of them by itself, or leave the column out if its words say nothing of the level");

    private static bool Falls(TraceReading reading) => reading.Traces.Any(t => t.Axis.Grid is null);

    // A unit that is not stated can be: to be asked for it is a step on.
    private static bool IsRead(TraceReading reading) => reading.Faults.All(f => f.Unstated != UnstatedUnits.None);
}
