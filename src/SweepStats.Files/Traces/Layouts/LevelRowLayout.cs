using System.Collections.Immutable;
using System.Text;
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
    private const int FewestLevels = 5;
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
        List<string> fields = FieldReader.Texts(text.Line(first.Line), first.Separator);
        int lead = Lead(fields, first.Separator);
        bool alone =
            lead > 0 && (DataBlock.NextLine(text, first.Line, 1) is not { } next || RowOf(text, next, first.Separator) is null);
        return RegularAxis.IsStated(preamble) && ((preamble.Points ?? preamble.Count) == fields.Count - lead || alone)
            && (lead == 0 || IsLevel(fields[0])) && !HoldsTable(text, first.Separator);
    }

    // A limit, a correction or a phase may stand in a row above a table, or below one of levels.
    private static bool IsLevel(string label) =>
        ColumnName.Of(label) is { Kind: not ColumnKind.Other, IsCorrection: false, Part: ComplexPart.None, Statistic: null };

    // Rows of two numbers and more, a line each, are a table with frequencies of its own.
    private static bool HoldsTable(TraceText text, Separator separator)
    {
        int rows = 0;
        for (int i = 0; i < text.LineCount && rows < FewestRows; i++)
        {
            rows += RowOf(text, i, separator) is null && FieldReader.Texts(text.Line(i), separator) is { Count: > 1 } fields
                && fields.TrueForAll(f => Number(f, separator) is not null) ? 1 : 0;
        }

        return rows >= FewestRows;
    }

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options)
    {
        var faults = new FaultList(text.File);
        (int line, Separator separator) = First(text)!.Value;
        Preamble preamble = Preamble.Read(text, line);
        List<string> fields = FieldReader.Texts(text.Line(line), separator);
        double[] levels = [.. fields.Skip(Lead(fields, separator)).Select(f => Number(f, separator)!.Value)];
        if (RegularAxis.Of(levels.Length, new(preamble, options, faults)) is not { } regular)
        {
            return new TraceReading { Faults = faults.All };
        }

        FrequencyAxis axis = options.Grids.Of(regular.Hertz(levels.Length));
        var traces = ImmutableArray.CreateBuilder<Trace>();
        for (int i = line; i < text.LineCount; i++)
        {
            if (RowOf(text, i, separator) is not { } row)
            {
                continue;
            }

            double[] here = [.. row.Skip(Lead(row, separator)).Select(f => Number(f, separator)!.Value)];
            if (here.Length != levels.Length)
            {
                faults.Add(i + 1,
                    FormattableString.Invariant($"the row holds {here.Length} levels and that of line {line + 1} ")
                        + FormattableString.Invariant($"{levels.Length}"), "export the sweeps again");
                break;
            }

            if (Lead(row, separator) > 0 && !IsLevel(row[0]))
            {
                faults.Add(i + 1, $"the row called '{row[0]}' is no level",
                    "leave such rows out, or export the sweeps with a column of frequencies");
                break;
            }

            string name = Lead(row, separator) > 0 ? row[0] : FormattableString.Invariant($"{traces.Count + 1}");
            traces.Add(TraceOf(name, here, axis, new(text.File, LineOf(i)), new(preamble, options, faults)));
        }

        ImmutableArray<Trace> asked = options.Columns.IsEmpty ? traces.ToImmutable()
            : AskedTraces.Pick(traces.ToImmutable(), options.Columns, faults);
        return faults.Any
            ? new TraceReading { Faults = faults.All }
            : new TraceReading { Traces = asked, Settings = preamble.Settings, Assumptions = faults.Assumptions };
    }

    /// <summary>The trace that a row holds.</summary>
    internal static Trace TraceOf(
        string label, double[] levels, FrequencyAxis axis, RowPlaces place, PriorKnowledge known)
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
            if (text.Line(i).Length is < 4 * FewestLevels or > LongestRow || !EndsInDigit(text.Line(i)))
            {
                continue;
            }

            foreach (Separator separator in Separators)
            {
                if (RowOf(text, i, separator) is not null)
                {
                    return (i, separator);
                }
            }
        }

        return null;
    }

    private static bool EndsInDigit(ReadOnlySpan<byte> line) => line.TrimEnd(" \t;,"u8) is [.., >= (byte)'0' and <= (byte)'9'];

    private static List<string>? RowOf(TraceText text, int line, Separator separator)
    {
        ReadOnlySpan<byte> bytes = text.Line(line);
        if (bytes.Count(separator.Mark) < FewestLevels - 1 || !IsRow(bytes, separator))
        {
            return null;
        }

        List<string> fields = FieldReader.Texts(bytes, separator);
        int lead = Lead(fields, separator);
        return fields.Count - lead >= FewestLevels && fields.Skip(lead).All(f => Number(f, separator) is not null)
            && !Rises(fields, lead, separator) ? fields : null;
    }

    // Before the fields are kept: most lines hold no numbers, or too few.
    private static bool IsRow(ReadOnlySpan<byte> line, Separator separator)
    {
        var reader = new FieldReader(line, separator);
        int numbers = 0;
        for (int i = 0; reader.Next(out ReadOnlySpan<byte> field); i++)
        {
            bool number = StrictNumber.TryParse(field, separator.DecimalMark, 0, out _);
            numbers += number ? 1 : 0;
            if (!number && i > 0 && !field.IsEmpty)
            {
                return false;
            }
        }

        return numbers >= FewestLevels && !NumericRows.IsBlankOrComment(line);
    }

    // Frequencies may stand in a row too.
    private static bool Rises(List<string> fields, int lead, Separator separator)
    {
        for (int i = lead + 1; i < fields.Count; i++)
        {
            if (Number(fields[i], separator) <= Number(fields[i - 1], separator))
            {
                return false;
            }
        }

        return true;
    }

    private static int Lead(List<string> fields, Separator separator) =>
        fields.Count > 0 && Number(fields[0], separator) is null ? 1 : 0;

    private static double? Number(string field, Separator separator) =>
        StrictNumber.TryParse(Encoding.UTF8.GetBytes(field), separator.DecimalMark, 0, out double value) ? value : null;
}
