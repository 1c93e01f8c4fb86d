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
        int rows = 0;
        int points = 0;
        int commas = 0;
        int ended = 0;
        bool single = false;
        var parts = new TwoParts();
        for (int i = half; i < text.LineCount; i += step)
        {
            ReadOnlySpan<byte> line = text.Line(i).Trim(" \t;,"u8);
            if (line.IsEmpty)
            {
                continue;
            }

            rows++;
            bool level = IsLevel(line, Points);
            points += level ? 1 : 0;
            ended += level && text.Line(i).TrimEnd(" \t"u8) is [.., (byte)','] ? 1 : 0;
            if (line.IndexOfAny((byte)'e', (byte)'E') < 0 && IsLevel(line, Commas))
            {
                commas++;
                single |= text.Line(i).IndexOf((byte)';') >= 0;
                parts.Add(line);
            }
        }

        return rows < 2 ? null : points * 4 >= rows * 3 ? (ended > 0 ? Ended : Points)
            : commas * 4 >= rows * 3 && (single || parts.AreOneNumber) ? Commas : null;
    }

    private static bool IsLevel(ReadOnlySpan<byte> line, Separator separator) => line.Length <= LongestRow
        && (StrictNumber.TryParse(line, separator.DecimalMark, 0, out _)
            || (UnitWord.TryParseNumber(line, separator.DecimalMark, out _, out _, out LevelUnit? unit) && unit is not null));

    // "-45,12" is one number or two columns of whole numbers. No frequency is below zero, so the first is none; the second is
    // none where it does not rise.
    private struct TwoParts
    {
        private double _before = double.NegativeInfinity;
        private bool _negative;
        private bool _falls;

        public TwoParts()
        {
        }

        public readonly bool AreOneNumber => _negative && _falls;

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
