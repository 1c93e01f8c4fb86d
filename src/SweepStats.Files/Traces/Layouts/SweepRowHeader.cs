using System.Text;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>The line of a file with a row for each sweep that lists the frequencies: words, then numbers that rise.</summary>
/// <param name="Line">Index of the line.</param>
/// <param name="Separator">How its fields are parted.</param>
/// <param name="Lead">The fields before the first frequency.</param>
/// <param name="Frequencies">The frequencies as written.</param>
internal sealed record SweepRowHeader(int Line, Separator Separator, IReadOnlyList<string> Lead,
    IReadOnlyList<string> Frequencies)
{
    /// <summary>Where the sweeps stand: 1 below, −1 above.</summary>
    public int Step { get; private init; } = 1;

    /// <summary>The unit of frequency that a row of units below states; null where there is none.</summary>
    public FrequencyUnit? Unit { get; private init; }

    /// <summary>Index of the last line of the heading, which may be a row of units.</summary>
    public int LastLine { get; private init; } = Line;

    private const int FewestFrequencies = 3;
    private const int LongestNumber = 64;
    private const int LinesSearched = 300;

    private static readonly Separator[] Separators =
        [new((byte)';', (byte)'.'), new((byte)';', (byte)','), new((byte)'\t', (byte)'.'), new((byte)'\t', (byte)','),
            new((byte)',', (byte)'.'), new((byte)' ', (byte)'.'), new((byte)' ', (byte)',')];

    /// <summary>
    /// Finds it; null where the file has none. The row below must have as many fields, and must not be a row of an ordinary
    /// table.
    /// </summary>
    public static SweepRowHeader? Find(TraceText text)
    {
        for (int i = 0; i < Math.Min(text.LineCount, LinesSearched); i++)
        {
            ReadOnlySpan<byte> whole = text.Line(i);
            if (whole.Length < 10 || whole[0] is >= (byte)'+' and <= (byte)'9')
            {
                continue;
            }

            ReadOnlySpan<byte> line = whole.Trim(" \t\"#!%"u8);
            if (line.Length < 10 || !char.IsLetter((char)line[0]) || line.IndexOfAnyInRange((byte)'0', (byte)'9') < 0)
            {
                continue;
            }

            foreach (Separator separator in Separators)
            {
                if (Of(text, i, separator) is { } header && header.Placed(text) is { } placed)
                {
                    return placed;
                }
            }
        }

        return null;
    }

    /// <summary>A number, and the unit that may be glued to it, as a frequency in Hz; NaN for anything else.</summary>
    public static double Hertz(string field, byte decimalMark, FrequencyUnit? unit)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(field);
        int at = UnitWord.StartIn(bytes);
        if (at > 0)
        {
            unit = FrequencyUnits.Parse(Encoding.UTF8.GetString(bytes.AsSpan(at)));
            bytes = bytes[..at];
        }

        return (at == 0 || unit is not null) && StrictNumber.TryParse(bytes.AsSpan().Trim((byte)' '), decimalMark,
            unit?.Exponent() ?? 0, out double hertz) ? hertz : double.NaN;
    }

    // The sweeps stand below the frequencies; above them only where these are named.
    private SweepRowHeader? Placed(TraceText text)
    {
        if (DataBlock.NextLine(text, Line, 1) is { } next)
        {
            if (Heads(text.Line(next)))
            {
                return this;
            }

            if (UnitIn(text.Line(next)) is { } unit && DataBlock.NextLine(text, next, 1) is { } below && Heads(text.Line(below)))
            {
                return this with { Unit = unit, LastLine = next };
            }
        }

        return NamesFrequency && DataBlock.NextLine(text, Line, -1) is { } before && Heads(text.Line(before))
            ? this with { Step = -1 } : null;
    }

    // "Einheit;;;MHz;MHz;MHz": one unit of frequency under all frequencies.
    private FrequencyUnit? UnitIn(ReadOnlySpan<byte> line)
    {
        if (line.IndexOf("z"u8) < 0)
        {
            return null;
        }

        List<string> fields = FieldReader.Texts(line, Separator);
        FrequencyUnit?[] units = fields.Count == Lead.Count + Frequencies.Count
            ? [.. fields.Skip(Lead.Count).Select(f => FrequencyUnits.Parse(f.Trim('(', ')', '[', ']'))).Distinct()] : [];
        return units is [{ } unit] ? unit : null;
    }

    private bool NamesFrequency => Lead.Any(l => ColumnName.Of(l).Kind == ColumnKind.Frequency);

    private static SweepRowHeader? Of(TraceText text, int index, Separator separator)
    {
        ReadOnlySpan<byte> line = text.Line(index).Trim(" \t#!%"u8).TrimEnd(separator.Mark);
        if (!double.IsFinite(Hertz(Encoding.UTF8.GetString(Last(line, separator)), separator.DecimalMark, null)))
        {
            return null;
        }

        List<string> fields = FieldReader.Texts(line, separator);
        int first = fields.Count;
        double above = double.PositiveInfinity;
        while (first > 0 && Hertz(fields[first - 1], separator.DecimalMark, null) is var hertz && hertz >= 0 && hertz < above)
        {
            (first, above) = (first - 1, hertz);
        }

        return first > 0 && fields.Count - first >= FewestFrequencies
            && fields.Take(first).All(f => !StrictNumber.TryParse(Encoding.UTF8.GetBytes(f), separator.DecimalMark, 0, out _))
            ? new SweepRowHeader(index, separator, fields[..first], fields[first..])
            : null;
    }

    // Asked first: most lines end otherwise, and to cut them all into fields would cost more than the file.
    private static ReadOnlySpan<byte> Last(ReadOnlySpan<byte> line, Separator separator)
    {
        ReadOnlySpan<byte> last = line[(line.LastIndexOf(separator.Mark) + 1)..].Trim("\" \t"u8);
        return last[..Math.Min(last.Length, LongestNumber)];
    }

    // "Frequency (Hz),1,2,3" over rows of numbers heads an ordinary table whose traces are numbered.
    private bool Heads(ReadOnlySpan<byte> line)
    {
        List<string> fields = FieldReader.Texts(line, Separator);
        bool numeric =
            fields.Take(Lead.Count).All(f => StrictNumber.TryParse(Encoding.UTF8.GetBytes(f), Separator.DecimalMark, 0, out _));
        return fields.Count == Lead.Count + Frequencies.Count && !(numeric && NamesFrequency)
            && StrictNumber.TryParse(Encoding.UTF8.GetBytes(fields[^1]), Separator.DecimalMark, 0, out _);
    }
}
