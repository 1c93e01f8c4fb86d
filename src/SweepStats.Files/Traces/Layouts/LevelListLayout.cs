using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>
/// One level a line and no frequencies: these follow from the range and the number of points that the lines above state.
/// </summary>
internal sealed class LevelListLayout : ITraceLayout
{
    private const int LinesLookedAt = 32;
    private const int LongestRow = 64;

    // Commas alone part nothing in a list of single numbers; blanks may stand before a unit.
    private static readonly Separator Points = new((byte)';', (byte)'.');
    private static readonly Separator Ended = new((byte)',', (byte)'.');
    private static readonly Separator Commas = new((byte)';', (byte)',');

    /// <inheritdoc/>
    public bool Recognises(TraceText text) => SeparatorOf(text) is not null;

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options) =>
        DelimitedLayout.Read(text, options, SeparatorOf(text)!.Value, 1);

    // Lines from all over the second half, where settings are over: nearly all of them must hold one number.
    private static Separator? SeparatorOf(TraceText text)
    {
        int half = text.LineCount / 2;
        int step = Math.Max(1, (text.LineCount - half) / LinesLookedAt);
        var seen = new LinesSeen();
        for (int i = half; i < text.LineCount; i += step)
        {
            ReadOnlySpan<byte> line = text.Line(i).Trim(" \t;,"u8);
            if (!line.IsEmpty)
            {
                seen.Add(line, text.Line(i));
            }
        }

        return seen.Separator;
    }

    private static bool IsLevel(ReadOnlySpan<byte> line, Separator separator) => line.Length <= LongestRow
        && (StrictNumber.TryParse(line, separator.DecimalMark, 0, out _)
            || (UnitWord.TryParseNumber(line, separator.DecimalMark, out _, out _, out LevelUnit? unit) && unit is not null));

    /// <summary>How many lines hold one number, by how it is written.</summary>
    private struct LinesSeen
    {
        private TwoParts _parts = new();
        private int _rows;
        private int _points;
        private int _commas;
        private bool _ended;
        private bool _single;

        /// <summary>No line seen yet.</summary>
        public LinesSeen()
        {
        }

        /// <summary>How three in four lines or more write their one number; null where fewer do, or below two lines.</summary>
        public readonly Separator? Separator => _rows < 2 ? null
            : _points * 4 >= _rows * 3 ? (_ended ? Ended : Points)
            : _commas * 4 >= _rows * 3 && (_single || _parts.AreOneNumber) ? Commas : null;

        /// <summary>Counts a line by its text without blanks and marks at the ends, and by the whole of it.</summary>
        public void Add(ReadOnlySpan<byte> line, ReadOnlySpan<byte> whole)
        {
            _rows++;
            bool level = IsLevel(line, Points);
            _points += level ? 1 : 0;
            _ended |= level && whole.TrimEnd(" \t"u8) is [.., (byte)','];
            if (line.IndexOfAny((byte)'e', (byte)'E') < 0 && IsLevel(line, Commas))
            {
                _commas++;
                _single |= whole.IndexOf((byte)';') >= 0;
                _parts.Add(line);
            }
        }
    }

    // "-45,12" is one number or two columns of whole numbers. No frequency is below zero, so the first is none; the second is
    // none where it does not rise.
    private struct TwoParts
    {
        private double _before = double.NegativeInfinity;
        private bool _negative;
        private bool _falls;

        /// <summary>No line seen yet.</summary>
        public TwoParts()
        {
        }

        /// <summary>Whether the lines can be nothing but one number with a decimal comma each.</summary>
        public readonly bool AreOneNumber => _negative && _falls;

        /// <summary>Takes a line that holds a number with a comma in it, blanks at the ends taken off.</summary>
        public void Add(ReadOnlySpan<byte> line)
        {
            int comma = line.IndexOf((byte)',');
            _negative |= line[0] == (byte)'-';
            if (comma > 0 && StrictNumber.TryParse(line[(comma + 1)..], (byte)'.', 0, out double second))
            {
                _falls |= second <= _before;
                _before = second;
            }
        }
    }
}
