using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>
/// All levels of a trace in one row behind its name, and no frequencies: <c>Trace,-70.8,-69.0,…</c>. These follow from the range
/// and the number of points that the lines above state.
/// </summary>
internal sealed class LevelRowLayout : ITraceLayout
{
    // A table has a line for each frequency; here a line has them all.
    private const int MostLines = 100;
    private const int LongestRow = 1 << 16;
    private const int FewestRows = 3;

    private static readonly Separator[] Separators =
        [new((byte)';', (byte)'.'), new((byte)';', (byte)','), new((byte)'\t', (byte)'.'), new((byte)'\t', (byte)','),
            new((byte)',', (byte)'.'), new((byte)' ', (byte)'.')];

    /// <inheritdoc/>
    public bool Recognises(TraceText text)
    {
        if (text.LineCount is < 2 or > MostLines || First(text) is not { } first)
        {
            return false;
        }

        // As many levels as there are points; or a named row that stands alone, whose points may not agree.
        Preamble preamble = Preamble.Read(text, first.Line);
        LevelRow row = LevelRow.Of(text, first.Line, first.Separator)!;
        bool alone = row.Label is not null && (DataBlock.NextLine(text, first.Line, 1) is not { } next
            || LevelRow.Of(text, next, first.Separator) is null);
        return RegularAxis.IsStated(preamble) && ((preamble.Points ?? preamble.Count) == row.Levels.Length || alone)
            && row.IsLevel && !HoldsTable(text, first.Separator);
    }

    // Rows of two numbers and more, a line each, are a table with frequencies of its own.
    private static bool HoldsTable(TraceText text, Separator separator)
    {
        int rows = 0;
        for (int i = 0; i < text.LineCount && rows < FewestRows; i++)
        {
            rows += LevelRow.Of(text, i, separator) is null && FieldReader.Texts(text.Line(i), separator) is { Count: > 1 } fields
                && fields.TrueForAll(f => LevelRow.Number(f, separator) is not null) ? 1 : 0;
        }

        return rows >= FewestRows;
    }

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options)
    {
        var faults = new FaultList(text.File);
        (int line, Separator separator) = First(text)!.Value;
        var known = new PriorKnowledge(Preamble.Read(text, line), options, faults);
        int points = LevelRow.Of(text, line, separator)!.Levels.Length;
        if (RegularAxis.Of(points, known) is not { } regular)
        {
            return new TraceReading { Faults = faults.All };
        }

        ImmutableArray<Trace> traces = Traces(text, options.Grids.Of(regular.Hertz(points)), known);
        ImmutableArray<Trace> asked = options.Columns.IsEmpty ? traces : AskedTraces.Pick(traces, options.Columns, faults);
        return TraceReading.Of(asked, known.Preamble.Settings, faults);
    }

    private static ImmutableArray<Trace> Traces(TraceText text, FrequencyAxis axis, PriorKnowledge known)
    {
        (int line, Separator separator) = First(text)!.Value;
        var traces = ImmutableArray.CreateBuilder<Trace>();
        for (int i = line; i < text.LineCount; i++)
        {
            if (LevelRow.Of(text, i, separator) is not { } row)
            {
                continue;
            }

            if (!MayStand(row, axis.Hertz.Length, i, line, known.Faults))
            {
                break;
            }

            string name = row.Label ?? FormattableString.Invariant($"{traces.Count + 1}");
            traces.Add(TraceOf(name, row.Levels, axis, new(text.File, LineOf(i)), known));
        }

        CutNumber.RefuseRow(text, separator, first: 0, known.Faults);
        return traces.ToImmutable();
    }

    private static bool MayStand(LevelRow row, int points, int index, int first, FaultList faults)
    {
        if (row.Levels.Length != points)
        {
            faults.Add(index + 1,
                FormattableString.Invariant($"the row holds {row.Levels.Length} levels and that of line {first + 1} {points}"),
                "export the sweeps again");
            return false;
        }

        if (!row.IsLevel)
        {
            faults.Add(index + 1, $"the row called '{row.Label}' is no level",
                "leave such rows out, or export the sweeps with a column of frequencies");
        }

        return row.IsLevel;
    }

    /// <summary>The trace that a row holds.</summary>
    internal static Trace TraceOf(string label, double[] levels, FrequencyAxis axis, RowPlaces place, PriorKnowledge known)
    {
        var name = ColumnName.Of(label);
        LevelUnit? unit = name.LevelUnit ?? known.Preamble.LevelUnit;
        if (unit is null && known.Options.LevelUnit is { } told)
        {
            known.Faults.Assume($"levels are in {told.Symbol()}, as {known.Options.StatedIn} says");
            unit = told;
        }

        var column = new LevelColumn(0, label, unit) { Asked = !known.Options.Columns.IsEmpty };
        return new Trace(label, "level", unit, axis, [.. levels])
        {
            Settings = NamedDetector.Beside(known.Preamble.Settings, name),
            TakenAt = known.Preamble.Taken.At,
            Blank = LevelDoubts.Blank(unit, levels),
            Doubts = unit is null ? [UnstatedUnitFault.InSettingsAlone(place.File)] : LevelDoubts.Of(column, levels, place),
        };
    }

    private static Func<int, int> LineOf(int index) => _ => index + 1;

    // The first such row.
    private static (int Line, Separator Separator)? First(TraceText text)
    {
        for (int i = 1; i < text.LineCount; i++)
        {
            if (text.Line(i).Length is < 4 * LevelRow.FewestLevels or > LongestRow || !EndsInDigit(text.Line(i)))
            {
                continue;
            }

            foreach (Separator separator in Separators)
            {
                if (LevelRow.Of(text, i, separator) is not null)
                {
                    return (i, separator);
                }
            }
        }

        return null;
    }

    private static bool EndsInDigit(ReadOnlySpan<byte> line) => line.TrimEnd(" \t;,"u8) is [.., >= (byte)'0' and <= (byte)'9'];
}
