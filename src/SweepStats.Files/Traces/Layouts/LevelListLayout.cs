using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>One level a line and no frequencies: these follow from the range and the number of points that the lines above state.</summary>
internal sealed class LevelListLayout : ITraceLayout
{
    private const int LinesLookedAt = 32;
    private const int LongestRow = 64;

    // Commas alone part nothing in a list of single numbers; blanks may stand before a unit.
    private static readonly Separator Points = new((byte)';', (byte)'.');
    private static readonly Separator Commas = new((byte)';', (byte)',');

    /// <inheritdoc/>
    public bool Recognises(TraceText text) => SeparatorOf(text) is not null;

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options) => DelimitedLayout.Read(text, options, SeparatorOf(text)!.Value, 1);

    // Lines from all over the second half, where settings are over: nearly all of them must hold one number.
    private static Separator? SeparatorOf(TraceText text)
    {
        int half = text.LineCount / 2;
        int step = Math.Max(1, (text.LineCount - half) / LinesLookedAt);
        int rows = 0;
        int points = 0;
        int commas = 0;
        bool falls = false;
        double before = double.NegativeInfinity;
        for (int i = half; i < text.LineCount; i += step)
        {
            ReadOnlySpan<byte> line = text.Line(i).Trim(" \t;,"u8);
            if (line.IsEmpty)
            {
                continue;
            }

            rows++;
            points += IsLevel(line, Points, out _) ? 1 : 0;
            if (IsLevel(line, Commas, out double level))
            {
                commas++;
                falls |= level < 0 || level < before;
                before = level;
            }
        }

        // "45,12" may be two columns of whole numbers; a first column that falls or is below zero is no frequency.
        return rows < 2 ? null : points * 4 >= rows * 3 ? Points : commas * 4 >= rows * 3 && falls ? Commas : null;
    }

    private static bool IsLevel(ReadOnlySpan<byte> line, Separator separator, out double level)
    {
        level = 0;
        return line.Length <= LongestRow
            && (StrictNumber.TryParse(line, separator.DecimalMark, 0, out level)
                || (UnitWord.TryParseNumber(line, separator.DecimalMark, out level, out _, out LevelUnit? unit) && unit is not null));
    }
}
