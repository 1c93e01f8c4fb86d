using System.Collections.Immutable;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>
/// Sections with headings in square brackets, a <c>[Trace]</c> for each trace: a line with its name and unit, lines with its
/// range, then rows of level and frequency in either order.
/// </summary>
internal sealed class SectionLayout : ITraceLayout
{
    private static readonly Separator Commas = new((byte)',', (byte)'.');

    /// <inheritdoc/>
    public bool Recognises(TraceText text) => Headings(text).Any();

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options)
    {
        var faults = new FaultList(text.File);
        Separator separator = SeparatorSearch.Find(text) ?? Commas;
        using var rows = new NumericRows(text, separator);
        var numbers = new Numbers(rows, separator);
        int[] headings = [.. Headings(text)];
        Preamble file = Preamble.Read(text, headings[0]);
        faults.AssumeAll(file.Remarks);
        var traces = ImmutableArray.CreateBuilder<Trace>();
        for (int i = 0; i < headings.Length && !faults.Any; i++)
        {
            int end = i + 1 < headings.Length ? headings[i + 1] : text.LineCount;
            if (Data(text, numbers, headings[i]..end, faults) is { } block)
            {
                traces.AddRange(ReadSection(text, numbers, new Section(block, headings[i], file), options, faults));
            }
        }

        return faults.Any
            ? new TraceReading { Faults = faults.All, IsStacked = headings.Length > 1 }
            : new TraceReading
            {
                Traces = traces.ToImmutable(),
                IsStacked = traces.Count > 1,
                Settings = file.Settings,
                Assumptions = faults.Assumptions,
            };
    }

    private static IEnumerable<int> Headings(TraceText text)
    {
        for (int i = 0; i < text.LineCount; i++)
        {
            // Most lines of a file are rows, which begin with a digit: they must cost nothing here.
            ReadOnlySpan<byte> line = text.Line(i);
            if (!line.IsEmpty && line[0] is (byte)'[' or (byte)' ' or (byte)'\t'
                && line.Trim(" \t,;"u8).SequenceEqual("[Trace]"u8))
            {
                yield return i;
            }
        }
    }

    private static DataBlock? Data(TraceText text, Numbers numbers, Range section, FaultList faults)
    {
        (int from, int to) = (section.Start.Value, section.End.Value);
        NumericRun[] runs = [.. numbers.Rows.Runs.Where(r => numbers.Rows.Line(r, 0) > from && numbers.Rows.Line(r, 0) < to)];
        if (runs.Length == 1 && runs[0].Rows > 1)
        {
            return DataBlock.Around(text, numbers.Rows, runs[0], numbers.Separator, faults);
        }

        faults.Add(
            from + 1,
            runs.Length == 0 ? "the section of the trace holds no row of numbers"
                : runs.Length == 1 ? "the section of the trace holds one row of numbers only"
                : "the section of the trace holds more than one table of numbers",
            runs.Length < 2 ? "export the trace again, with a frequency and a level in each row"
                : "put each table under a heading [Trace] of its own, or export the trace again");
        return null;
    }

    private static ImmutableArray<Trace> ReadSection(
        TraceText text, Numbers numbers, Section section, TraceReadOptions options, FaultList faults)
    {
        (DataBlock block, int heading, Preamble file) = section;
        (NumericRows rows, Separator separator) = numbers;
        Preamble own = Preamble.Read(text, heading + 1, block.FirstLine);
        var sight = new TableSight(text, rows, block.Run);
        if (AxisColumn.Find(sight, own, faults) is not { } axisColumn)
        {
            return [];
        }

        List<string> title = FieldReader.Texts(text.Line(heading + 1), separator);
        string name = title is [{ Length: > 0 } first, ..] ? first : "trace";
        string unit = title.Skip(1).FirstOrDefault(f => LevelUnits.Parse(f) is not null) ?? "";
        ImmutableArray<ColumnName> names =
            [.. Enumerable.Range(0, sight.Columns).Select(
                c => ColumnName.Of(c == axisColumn ? "frequency" : sight.Columns > 2 ? ""
                    : unit.Length > 0 ? $"{name} ({unit})" : name))];
        var table = new DelimitedTable(text, rows, separator, faults);
        if (new ColumnChoice(sight, options, own, faults).Choose(names) is not { } chosen
            || table.Axis(block.Run, chosen, options.Grids) is not { } axis)
        {
            return [];
        }

        var order = new AxisOrder(faults, options.Grids);
        if (chosen.Regular is null)
        {
            new DeclaredRange(own, chosen.FrequencyUnit, faults)
                .Check(order.Turned(axis), block.LastLine + 1, block.LastLine == text.LineCount - 1);
        }

        return [.. order.Of(table.Traces(block.Run, chosen, axis, file), axis, row => rows.Line(block.Run, row) + 1)
            .Select(t => t with
        {
            Column = sight.Columns > 2 ? t.Column : name,
            Settings = SharedSettings.Over(t.Settings, own.Settings),
        })];
    }

    /// <summary>The rows of numbers in the file, and what parts their fields.</summary>
    private readonly record struct Numbers(NumericRows Rows, Separator Separator);

    /// <summary>A trace: its rows, the line of its heading from 0, and what the lines above all headings state.</summary>
    private sealed record Section(DataBlock Block, int Heading, Preamble File);
}
