using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>
/// A column in which some numbers have their digits in groups, read both ways: the marks as parting thousands, and as decimal
/// marks.
/// </summary>
internal sealed class GroupedColumn
{
    private const int LongestField = 64;

    private Course _grouped = new(double.NaN, 0, true);
    private Course _decimal = new(double.NaN, 0, true);
    private int _rows;
    private bool _fits = true;

    private GroupedColumn(int index) => Index = index;

    /// <summary>Place of the column from 0.</summary>
    public int Index { get; }

    /// <summary>What parts the groups.</summary>
    public byte Mark { get; private set; }

    /// <summary>The decimal mark of the other columns; 0 where they have none.</summary>
    public byte OthersDecimalMark { get; private set; }

    /// <summary>Whether one number at least can be nothing but digits in groups.</summary>
    public bool IsCertain { get; private set; }

    /// <summary>Index of the first row's line.</summary>
    public int FirstLine { get; private set; }

    /// <summary>Number of the first row with the marks taken as parting thousands; NaN where it cannot be read so.</summary>
    public double FirstGrouped { get; private set; }

    /// <summary>Number of the first row with the marks taken as decimal.</summary>
    public double FirstDecimal { get; private set; }

    /// <summary>Number of the last row with the marks taken as parting thousands.</summary>
    public double LastGrouped => _grouped.Last;

    /// <summary>Number of the last row with the marks taken as decimal.</summary>
    public double LastDecimal => _decimal.Last;

    /// <summary>Whether the numbers rise, or fall, from row to row with the marks taken as parting thousands.</summary>
    public bool RisesGrouped => _grouped.Steady && FirstGrouped >= 0 && LastGrouped >= 0;

    /// <summary>The same with the marks taken as decimal.</summary>
    public bool RisesDecimal => _decimal.Steady;

    /// <summary>Looks at a column; null where none of its numbers has groups, or one cannot be read with the same mark.</summary>
    public static GroupedColumn? Of(TraceText text, RowPattern pattern, int index)
    {
        var column = new GroupedColumn(index);
        for (int i = 0; i < text.LineCount && column.Mark == 0; i++)
        {
            column.FindMark(text.Line(i), pattern);
        }

        for (int i = 0; i < text.LineCount && column.Mark != 0 && column._fits; i++)
        {
            if (pattern.IsRow(text.Line(i)))
            {
                column.Take(text.Line(i), pattern, i);
            }
        }

        return column is { Mark: not 0, _fits: true, _rows: > 1 } ? column : null;
    }

    private void FindMark(ReadOnlySpan<byte> line, RowPattern pattern)
    {
        if (pattern.IsRow(line) && GroupedNumber.Of(FieldRanges.Bare(line[pattern.Fields[Index]])) is { } number)
        {
            Mark = number.Mark;
        }
    }

    private void Take(ReadOnlySpan<byte> line, RowPattern pattern, int at)
    {
        ReadOnlySpan<byte> field = FieldRanges.Bare(line[pattern.Fields[Index]]);
        GroupedNumber? number = GroupedNumber.Of(field);
        IsCertain |= number is { IsCertain: true };
        Span<byte> plain = stackalloc byte[LongestField];
        if (field.Length > LongestField || !(number is { } grouped ? grouped.Mark == Mark : IsSmall(field)))
        {
            _fits = false;
            return;
        }

        int length = GroupedNumber.Plain(field, Mark, plain);
        double whole = Number(plain[..length], number?.DecimalMark is { } own and not 0 ? own : OtherMark);
        Go(at, whole, Number(field, Mark));
        FindOthersMark(line, pattern);
    }

    private byte OtherMark => Mark == (byte)'.' ? (byte)',' : (byte)'.';

    // Four digits without a mark would not stand beside thousands that have one; more decimals than three would part nothing.
    private bool IsSmall(ReadOnlySpan<byte> field) =>
        StrictNumber.TryParse(field, OtherMark, 0, out double small) && Math.Abs(small) < 1000;

    private static double Number(ReadOnlySpan<byte> field, byte decimalMark) =>
        StrictNumber.TryParse(field, decimalMark, 0, out double value) ? value : double.NaN;

    private void Go(int at, double grouped, double asDecimal)
    {
        bool first = _rows++ == 0;
        if (first)
        {
            (FirstLine, FirstGrouped, FirstDecimal) = (at, grouped, asDecimal);
        }

        _grouped = Next(_grouped, grouped, first);
        _decimal = Next(_decimal, asDecimal, first);
    }

    // One number that cannot be read this way, and the order is lost.
    private static Course Next(Course before, double value, bool first)
    {
        if (first || !before.Steady || !double.IsFinite(value))
        {
            return new(value, 0, before.Steady && double.IsFinite(value));
        }

        int sign = Math.Sign(value - before.Last);
        return new(value, sign, sign != 0 && (before.Sign == 0 || before.Sign == sign));
    }

    private void FindOthersMark(ReadOnlySpan<byte> line, RowPattern pattern)
    {
        for (int c = 0; c < pattern.Fields.Count && OthersDecimalMark == 0; c++)
        {
            ReadOnlySpan<byte> field = FieldRanges.Bare(line[pattern.Fields[c]]);
            int mark = c == Index || !pattern.IsNumber(c) || GroupedNumber.Of(field) is not null ? -1
                : field.IndexOfAny((byte)'.', (byte)',');
            OthersDecimalMark = mark >= 0 ? field[mark] : (byte)0;
        }
    }

    /// <summary>
    /// How far a reading of the column has come: its last number, whether it rises (1) or falls (−1), and whether it did so
    /// all along.
    /// </summary>
    private readonly record struct Course(double Last, int Sign, bool Steady);
}
