using System.Runtime.InteropServices;
using SweepStats.Files.Traces.Layouts;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Twins;

/// <summary>
/// Tells of a file that was read whether its reading would be the same with other plain levels, but for these. Every question
/// that the reader asks of a text is answered by the head and by the shape of the rows where this holds; what it asks of the
/// levels themselves is asked again of each file (<see cref="Twin.IsSound"/>). The test of that name reads files both ways.
/// </summary>
internal static class TwinProof
{
    // Of fewer lines a text may be levels in rows, which is asked number by number.
    private const int FewestLines = 101;

    /// <summary>The file as a twin of others; null where its levels may have decided more than themselves.</summary>
    /// <param name="text">The file.</param>
    /// <param name="reading">What was found in it.</param>
    /// <param name="options">What was known beside it.</param>
    public static Twin? Of(TraceText text, TraceReading reading, TraceReadOptions options)
    {
        if (!IsPlain(reading) || !IsPlain(text) || options.NamedColumns.Any() || TraceLayouts.For(text) is not DelimitedLayout)
        {
            return null;
        }

        return SeparatorSearch.Find(text) is { DecimalMark: (byte)'.', Mark: not (byte)' ' } separator
            && FirstRow(text, separator.Mark) is > 0 and var first && first < text.LineCount
            && !HoldsNumbers(text, first, separator.Mark) && IsNamed(text, first, separator)
            && BetweenLevels.Of(text.Bytes, text.StartOf(first), separator.Mark) is { } between && Gives(between, text, reading)
            ? new Twin(between, Path.GetExtension(text.File), reading, options)
            : null;
    }

    // One trace of which nothing is doubted, in the unit and the order of its column.
    private static bool IsPlain(TraceReading reading) =>
        reading is
        {
            Faults.IsEmpty: true, IsStacked: false, AreNamedApart: false,
            Traces: [
                {
                    Unit: not null, Axis.Grid: not null, Blank: null, Doubts.IsEmpty: true, Phases.IsEmpty: true,
                    ReverseLevels.IsEmpty: true
                }]
        };

    private static bool IsPlain(TraceText text) => text.LineCount >= FewestLines && text.Assumption is null;

    // The rows go to the end of the file.
    private static int FirstRow(TraceText text, byte mark)
    {
        int first = text.LineCount;
        while (first > 0 && BetweenLevels.IsRow(text.Line(first - 1), mark))
        {
            first--;
        }

        return first;
    }

    // Numbers in the head may be a second table, or speak for decimal commas where levels have no decimals.
    private static bool HoldsNumbers(TraceText text, int lines, byte mark)
    {
        using var numbers = new PooledList<double>(16);
        var points = new NumericRow(new Separator(mark, (byte)'.'), 1);
        var commas = new NumericRow(new Separator(mark, (byte)','));
        for (int i = 0; i < lines; i++)
        {
            if (points.Read(text.Line(i), numbers) > 0 || commas.Read(text.Line(i), numbers) > 0)
            {
                return true;
            }
        }

        return false;
    }

    // Names that tell the frequency, the level and its unit: without them the numbers would be asked. So they are of a heading
    // that may be a sentence.
    private static bool IsNamed(TraceText text, int first, Separator separator) =>
        new ColumnHeader(text, separator, [], new FaultList(text.File)).Find(first, 2)
            is [{ Kind: ColumnKind.Frequency } frequency, { Kind: ColumnKind.Level, LevelUnit: not null }]
        && !frequency.Text.Contains(" in ", StringComparison.OrdinalIgnoreCase)
        && !frequency.Text.Contains(" en ", StringComparison.OrdinalIgnoreCase);

    // The levels in their order, to the last bit: no row more or less was taken, and none turned round.
    private static bool Gives(BetweenLevels between, TraceText text, TraceReading reading)
    {
        double[] levels = new double[between.Levels];
        return between.TryRead(text.Bytes, levels)
            && MemoryMarshal.AsBytes<double>(levels).SequenceEqual(MemoryMarshal.AsBytes(reading.Traces[0].Levels.AsSpan()))
            && reading.Assumptions.All(a => !a.Contains(text.File, StringComparison.Ordinal));
    }
}
