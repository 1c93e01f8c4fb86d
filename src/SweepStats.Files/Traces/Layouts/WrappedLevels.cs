using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>
/// Levels of one trace, ten or so in a line, the last line perhaps shorter; range and number of points are stated above. Tried
/// where a text reads in no other way.
/// </summary>
internal static class WrappedLevels
{
    private const int FewestInLine = 3;
    private const int MostLines = 1_000_000;
    private const double SameFrequency = 1e-6;

    private static readonly Separator[] Separators =
    [
        new((byte)';', (byte)'.'), new((byte)';', (byte)','), new((byte)'\t', (byte)'.'), new((byte)'\t', (byte)','),
        new((byte)',', (byte)'.'), new((byte)' ', (byte)'.'), new((byte)' ', (byte)','),
    ];

    /// <summary>
    /// The trace; null where the text is none such: the lines must hold as many levels as points are stated, and none may begin
    /// with its frequency.
    /// </summary>
    public static TraceReading? Read(TraceText text, TraceReadOptions options)
    {
        if (text.LineCount is < 3 or > MostLines || options.FrequencyColumn is not null || options.RealColumn is not null)
        {
            return null;
        }

        foreach (Separator separator in Separators)
        {
            List<double> levels = [];
            List<int> firsts = [];
            if (Take(text, separator, levels, firsts) is not { } first)
            {
                continue;
            }

            Preamble preamble = Preamble.Read(text, first, separator);
            if (NamesColumns(text, first, separator, firsts))
            {
                return null;
            }

            if (RegularAxis.IsStated(preamble) && (preamble.Points ?? preamble.Count) == levels.Count
                && !BeginsWithFrequency(levels, firsts, preamble))
            {
                return Trace(text, [.. levels], firsts, new(preamble, options, new FaultList(text.File)), first);
            }
        }

        return null;
    }

    // As many words above the rows as they have numbers are the names of columns.
    private static bool NamesColumns(TraceText text, int first, Separator separator, List<int> firsts)
    {
        for (int i = first - 1; i >= 0; i--)
        {
            if (!text.Line(i).Trim(" \t;,"u8).IsEmpty)
            {
                List<string> fields = FieldReader.Texts(text.Line(i), separator);
                return fields.Count == firsts[1] && fields.TrueForAll(f => f.Any(char.IsLetter));
            }
        }

        return false;
    }

    private static TraceReading Trace(TraceText text, double[] levels, List<int> firsts, PriorKnowledge known, int first)
    {
        if (RegularAxis.Of(levels.Length, known) is not { } regular)
        {
            return new TraceReading { Faults = known.Faults.All };
        }

        known.Faults.AssumeAll(known.Preamble.Remarks);
        known.Faults.Assume(FormattableString.Invariant(
            $"the levels stand several in a line from line {first + 1} on; they were read line by line, from left to right"));
        string name = known.Preamble.TraceNames is [var only] ? only : "1";
        int Line(int point) => firsts.BinarySearch(point) is var at && at >= 0 ? first + at + 1 : first + ~at;
        FrequencyAxis axis = known.Options.Grids.Of(regular.Hertz(levels.Length));
        ImmutableArray<Trace> traces = [LevelRowLayout.TraceOf(name, levels, axis, new(text.File, Line), known)];
        traces = known.Options.Columns.IsEmpty ? traces : AskedTraces.Pick(traces, known.Options.Columns, known.Faults);
        return known.Faults.Any
            ? new TraceReading { Faults = known.Faults.All }
            : new TraceReading { Traces = traces, Settings = known.Preamble.Settings, Assumptions = known.Faults.Assumptions };
    }

    // All lines from the first row on hold as many numbers, the last perhaps fewer; nothing else may follow.
    private static int? Take(TraceText text, Separator separator, List<double> levels, List<int> firsts)
    {
        var row = new NumericRow(separator, 1);
        using var numbers = new PooledList<double>(64);
        (int width, bool isOver) = (0, false);
        int? first = null;
        for (int i = 0; i < text.LineCount; i++)
        {
            numbers.CutAt(0);
            int count = row.Read(text.Line(i), numbers);
            if (first is null && count < FewestInLine)
            {
                continue;
            }

            if (count == 0 && text.Line(i).Trim(" \t;,"u8).IsEmpty && first is not null)
            {
                isOver = true;
                continue;
            }

            first ??= i;
            width = width == 0 ? count : width;
            if (count == 0 || isOver || count > width || row.Units is not null)
            {
                return null;
            }

            isOver = count < width;
            firsts.Add(levels.Count);
            for (int c = 0; c < count; c++)
            {
                levels.Add(numbers[c]);
            }
        }

        return firsts.Count > 1 ? first : null;
    }

    // Rows that begin at the start or the stop in whatever unit, and rise or fall, have a column of frequencies.
    private static bool BeginsWithFrequency(List<double> levels, List<int> firsts, Preamble preamble)
    {
        int sign = Math.Sign(levels[firsts[1]] - levels[firsts[0]]);
        for (int k = 1; k < firsts.Count; k++)
        {
            if (sign == 0 || Math.Sign(levels[firsts[k]] - levels[firsts[k - 1]]) != sign)
            {
                return false;
            }
        }

        StatedBound? start = preamble.StartBound ?? preamble.FirstBound;
        return IsSame(levels[0], start) || IsSame(levels[0], preamble.StopBound);
    }

    private static bool IsSame(double first, StatedBound? bound) => bound?.Number.Value() is { } value
        && Enumerable.Range(-3, 7).Any(p => Math.Abs((first * Math.Pow(10, 3 * p)) - value) <= SameFrequency * Math.Abs(value));
}
