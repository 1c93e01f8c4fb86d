using System.Text;

namespace SweepStats.Files.Traces.Text;

/// <summary>Units as they stand in rows of numbers.</summary>
internal static class UnitWord
{
    private const int Longest = 16;

    /// <summary>Whether a field is a unit of frequency or level and nothing else.</summary>
    public static bool TryParse(ReadOnlySpan<byte> field, out FrequencyUnit? frequency, out LevelUnit? level)
    {
        (frequency, level) = (null, null);
        if (field.IsEmpty || field.Length > Longest || char.IsAsciiDigit((char)field[0]))
        {
            return false;
        }

        string word = Encoding.UTF8.GetString(field);
        frequency = FrequencyUnits.Parse(word);
        level = frequency is null ? LevelUnits.Parse(word) : null;
        return frequency is not null || level is not null;
    }

    /// <summary>Whether a field is a number with its unit behind it; a frequency comes out in Hz, a level as written.</summary>
    public static bool TryParseNumber(ReadOnlySpan<byte> field, byte decimalMark, out double value, out FrequencyUnit? frequency,
        out LevelUnit? level)
    {
        (value, frequency, level) = (0, null, null);
        int at = StartIn(field);
        return at > 0 && TryParse(field[at..], out frequency, out level)
            && StrictNumber.TryParse(field[..at].TrimEnd((byte)' '), decimalMark, frequency?.Exponent() ?? 0, out value);
    }

    /// <summary>Where a unit may start in a field such as 108695.65Hz or -7.44e+01dBm; 0 where none can.</summary>
    public static int StartIn(ReadOnlySpan<byte> field)
    {
        int at = field.Length;
        while (at > 0 && !char.IsAsciiDigit((char)field[at - 1]) && field[at - 1] is not ((byte)'.' or (byte)' '))
        {
            at--;
        }

        return at == field.Length ? 0 : at;
    }
}
