using System.Globalization;
using System.Text;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>
/// Takes the marks between thousands out of a column of frequencies, where the column, its order, or the start and stop that the
/// file states settle what the marks are.
/// </summary>
internal static class GroupedDigits
{
    /// <summary>The text without them; null where there are none, or nothing settles it.</summary>
    public static MendedText? Mend(TraceText text, RowPattern pattern)
    {
        for (int column = 0; column < MostColumns && (pattern.Numbers >> column) != 0; column++)
        {
            if (pattern.IsNumber(column) && GroupedColumn.Of(text, pattern, column) is { } grouped
                && Settled(text, pattern, grouped) is { } reading)
            {
                return Written(text, pattern, grouped, reading);
            }
        }

        return null;
    }

    private const int MostColumns = 64;
    private const int LinesAbove = 5;

    // Certain groups settle the column; else the order of its rows, or the range that the file states.
    private static Reading? Settled(TraceText text, RowPattern pattern, GroupedColumn column)
    {
        if (column.IsCertain)
        {
            return column.RisesGrouped ? new Reading(true, "they are parted as no decimals are") : null;
        }

        if (column.RisesGrouped != column.RisesDecimal)
        {
            return column.RisesGrouped ? new Reading(true, "as decimals they would not rise") : null;
        }

        Preamble stated = Preamble.Read(text, column.FirstLine);
        double[] scales = HeadedUnit(text, pattern, column) is { } unit ? [Math.Pow(10, unit.Exponent())] : Scales;
        bool grouped = Agrees(stated, scales, column.FirstGrouped, column.LastGrouped);
        bool decimals = Agrees(stated, scales, column.FirstDecimal, column.LastDecimal);
        return !column.RisesGrouped || grouped == decimals ? null
            : new Reading(grouped, "so start and stop are as the file states them");
    }

    // In the unit stated, or as the bare number.
    private static bool Agrees(Preamble stated, double[] scales, double first, double last) =>
        stated.Start is { } start && stated.Stop is { } stop
        && ((start.Unit.Length == 0 && Near(start.Value(), first) && Near(stop.Value(), last))
            || scales.Any(s => Near(start.Hertz(), first * s) && Near(stop.Hertz(), last * s)));

    private static FrequencyUnit? HeadedUnit(TraceText text, RowPattern pattern, GroupedColumn column)
    {
        List<Range> fields = [];
        for (int i = column.FirstLine - 1; i >= Math.Max(0, column.FirstLine - LinesAbove); i--)
        {
            FieldRanges.Of(text.Line(i), pattern.Mark, fields);
            string name = column.Index < fields.Count
                ? Encoding.UTF8.GetString(FieldRanges.Bare(text.Line(i)[fields[column.Index]])) : "";
            if (!name.Any(char.IsAsciiDigit) && ColumnName.Of(name).FrequencyUnit is { } unit)
            {
                return unit;
            }
        }

        return null;
    }

    private static double[] Scales { get; } = [1, 1e3, 1e6, 1e9];

    private static bool Near(double? stated, double value) => stated is { } s && Math.Abs(s - value) <= 1e-6 * Math.Abs(s);

    private static MendedText Written(TraceText text, RowPattern pattern, GroupedColumn column, Reading reading)
    {
        var buffer = new LineBuffer(text, text.LineCount * 24);
        for (int i = 0; i < text.LineCount; i++)
        {
            ReadOnlySpan<byte> line = text.Line(i);
            if (pattern.IsRow(line))
            {
                Range field = pattern.Fields[column.Index];
                buffer.Write(line[..field.Start.Value]);
                Number(buffer, line[field], column, reading.AreThousands);
                line = line[field.End.Value..];
            }

            buffer.Line(line);
        }

        string mark = column.Mark switch
        {
            (byte)'.' => "points",
            (byte)',' => "commas",
            (byte)'\'' => "apostrophes",
            _ => "blanks",
        };
        string number = (column.Index + 1).ToString(CultureInfo.InvariantCulture);
        return new MendedText(buffer.Finish(true),
            $"the {mark} in column {number} were read as {(reading.AreThousands ? "parting thousands" : "decimal marks")}: "
                + $"{reading.Because}");
    }

    private static void Number(LineBuffer buffer, ReadOnlySpan<byte> field, GroupedColumn column, bool thousands)
    {
        ReadOnlySpan<byte> bare = FieldRanges.Bare(field);
        Span<byte> plain = stackalloc byte[64];
        if (bare.Length > plain.Length)
        {
            buffer.Write(field);
            return;
        }

        int length = bare.Length;
        if (thousands)
        {
            length = GroupedNumber.Plain(bare, column.Mark, plain);
        }
        else
        {
            bare.CopyTo(plain);
        }

        // The mark of the decimals has to be that of the other columns.
        int decimals = plain[..length].IndexOfAny((byte)'.', (byte)',');
        if (decimals >= 0 && column.OthersDecimalMark != 0)
        {
            plain[decimals] = column.OthersDecimalMark;
        }

        bool quoted = plain[..length].Contains((byte)',') && field.Contains((byte)'"');
        buffer.Write(quoted ? "\""u8 : default);
        buffer.Write(plain[..length]);
        buffer.Write(quoted ? "\""u8 : default);
    }

    private sealed record Reading(bool AreThousands, string Because);
}
