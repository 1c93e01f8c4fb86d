namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// The units that the values behind a key for units name, one or both: "MHz", "[dBm]", "MHz, dBµV/m", "MHz / dBm".
/// </summary>
internal static class StatedUnits
{
    private const int LongestValue = 60;

    /// <summary>The unit of frequency; null for none.</summary>
    public static FrequencyUnit? Frequency(ImmutableArray<string> values) =>
        Words(values).Select(FrequencyUnits.Parse).FirstOrDefault(u => u is not null);

    /// <summary>The unit of level; null for none.</summary>
    public static LevelUnit? Level(ImmutableArray<string> values) =>
        Words(values).Select(LevelUnits.Parse).FirstOrDefault(u => u is not null);

    private static IEnumerable<string> Words(ImmutableArray<string> values)
    {
        foreach (string value in values.Where(v => v.Length <= LongestValue).Select(v => v.Trim('(', ')', '[', ']', ' ')))
        {
            // dBµV/m is one unit; only what is none as a whole is cut.
            if (FrequencyUnits.Parse(value) is not null || LevelUnits.Parse(value) is not null)
            {
                yield return value;
                continue;
            }

            // "decibel volts" are no decibels alone.
            if (SpelledDecibels.In(value) is not null)
            {
                continue;
            }

            foreach (string part in value.Split([',', ';', '/', ' ', '|'],
                StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            {
                yield return part;
            }
        }
    }
}
