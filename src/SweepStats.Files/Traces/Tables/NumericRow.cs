using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Reads a line as a row of numbers. A number may carry its unit, glued on or in the field after it: <c>1388.8MHz,-74.4dBm</c>
/// and <c>1388.8,MHz,-74.4,dBm,</c> are two columns. Frequencies with a unit come out in Hz, so that rows in kHz and rows in MHz
/// may follow each other.
/// </summary>
/// <param name="separator">How fields are parted.</param>
/// <param name="fewest">Numbers that a row has at least.</param>
internal sealed class NumericRow(Separator separator, int fewest = 2)
{
    private readonly List<LevelUnit?> _levelUnits = [];
    private readonly List<bool> _inHertz = [];
    private bool _anyUnit;

    /// <summary>The units that the row states, one a column; null where it states none.</summary>
    public RowUnits? Units => _anyUnit ? new RowUnits([.. _inHertz], [.. _levelUnits]) : null;

    /// <summary>Adds the numbers of a line to a list.</summary>
    /// <returns>How many; 0, and nothing added, where the line is no row of numbers, or holds fewer than a row must.</returns>
    public int Read(ReadOnlySpan<byte> line, PooledList<double> into)
    {
        int before = into.Count;
        _anyUnit = false;
        if (ReadPlain(line, into) is var plain && plain >= fewest)
        {
            return plain;
        }

        into.CutAt(before);
        if (fewest > 1 && !HoldsMark(line))
        {
            return 0;
        }

        var reader = new FieldReader(line, separator);
        ReadOnlySpan<byte> last = default;
        while (reader.Next(out ReadOnlySpan<byte> field))
        {
            if (StrictNumber.TryParse(field, separator.DecimalMark, 0, out double value))
            {
                into.Add(value);
                if (_anyUnit)
                {
                    Grow(into.Count - before, null, false);
                }

                last = field;
                continue;
            }

            if (field.IsEmpty && reader.AtEnd)
            {
                break;
            }

            if (field.IsEmpty || !(TakesUnit(field, last, into, before) || TakesGlued(field, into, before)))
            {
                into.CutAt(before);
                return 0;
            }

            last = default;
        }

        int columns = into.Count - before;
        if (columns < fewest)
        {
            into.CutAt(before);
            return 0;
        }

        return columns;
    }

    // Most rows are plain numbers with the mark between them and nothing else. 0 for any other, which is to be taken apart.
    private int ReadPlain(ReadOnlySpan<byte> line, PooledList<double> into)
    {
        if (separator.Mark == separator.DecimalMark)
        {
            return 0;
        }

        for (int columns = 1; PlainNumber.Read(line, separator.DecimalMark, out double value) is > 0 and var length; columns++)
        {
            into.Add(value);
            if (length == line.Length)
            {
                return columns;
            }

            if (line[length] != separator.Mark)
            {
                return 0;
            }

            line = line[(length + 1)..];
        }

        return 0;
    }

    // Without it a line is one field, which holds one number at most.
    private bool HoldsMark(ReadOnlySpan<byte> line) =>
        line.Contains(separator.Mark) || (separator.Mark == (byte)' ' && line.Contains((byte)'\t'));

    private void Grow(int columns, LevelUnit? unit, bool inHertz)
    {
        if (!_anyUnit)
        {
            _levelUnits.Clear();
            _inHertz.Clear();
            _anyUnit = true;
        }

        while (_levelUnits.Count < columns)
        {
            _levelUnits.Add(null);
            _inHertz.Add(false);
        }

        if (unit is not null || inHertz)
        {
            (_levelUnits[columns - 1], _inHertz[columns - 1]) = (unit, inHertz);
        }
    }

    // A unit on its own belongs to the number before it.
    private bool TakesUnit(ReadOnlySpan<byte> field, ReadOnlySpan<byte> number, PooledList<double> into, int before)
    {
        if (number.IsEmpty || !UnitWord.TryParse(field, out FrequencyUnit? frequency, out LevelUnit? level))
        {
            return false;
        }

        if (frequency is { } unit)
        {
            StrictNumber.TryParse(number, separator.DecimalMark, unit.Exponent(), out double hertz);
            into.CutAt(into.Count - 1);
            into.Add(hertz);
        }

        Grow(into.Count - before, level, frequency is not null);
        return true;
    }

    private bool TakesGlued(ReadOnlySpan<byte> field, PooledList<double> into, int before)
    {
        if (!UnitWord.TryParseNumber(field, separator.DecimalMark, out double value, out FrequencyUnit? frequency,
            out LevelUnit? level))
        {
            return false;
        }

        into.Add(value);
        Grow(into.Count - before, level, frequency is not null);
        return true;
    }
}
