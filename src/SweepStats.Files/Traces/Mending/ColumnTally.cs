using System.Text;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>What the fields of one column are, counted row by row.</summary>
/// <param name="before">Rows that ended before the column.</param>
internal sealed class ColumnTally(int before)
{
    private const int MostValues = 10_000;
    private const int LongestCount = 8;

    private readonly HashSet<string> _values = [];
    private byte[] _last = [];
    private int _rows = before;
    private int _empty = before;
    private int _units;
    private bool _measures;

    /// <summary>Fields that are numbers.</summary>
    public int Numbers { get; private set; }

    /// <summary>The different texts of the column, as far as they were kept.</summary>
    public IReadOnlyCollection<string> Values => _values;

    /// <summary>Whether there are so many different texts that they tell nothing apart.</summary>
    public bool IsVaried => _measures || _values.Count >= MostValues || _values.Count * 2 > _rows;

    /// <summary>Whether the column holds nothing.</summary>
    public bool IsEmpty => _empty == _rows;

    /// <summary>Whether every field is a unit.</summary>
    public bool AreUnits => _units == _rows && _rows > 0;

    private static bool IsCount(ReadOnlySpan<byte> field) =>
        field.Length <= LongestCount && field.IndexOfAnyExceptInRange((byte)'0', (byte)'9') < 0;

    /// <summary>Takes a field.</summary>
    public void Add(ReadOnlySpan<byte> field)
    {
        _rows++;
        if (field.IsEmpty)
        {
            _empty++;
        }
        else if (LooseNumber.Is(field))
        {
            Numbers++;
            _measures |= !IsCount(field);
        }
        else
        {
            _units += UnitWord.TryParse(field, out _, out _) ? 1 : 0;
        }

        // Most fields repeat the one above; what is measured tells no traces apart and need not be kept.
        if (!_measures && _values.Count < MostValues && !(_values.Count > 0 && field.SequenceEqual(_last)))
        {
            _last = field.ToArray();
            _values.Add(Encoding.UTF8.GetString(field));
        }
    }
}
