using SweepStats.Files.Traces;

namespace SweepStats.Files.Campaigns;

/// <summary>Reads the units that campaign.toml states.</summary>
internal static class SettingsUnits
{
    private const string LevelWords = "use dBm, dBµV, dBmV, dB, dBµV/m, V, mV, µV, W or mW";

    /// <summary>The key frequency_unit.</summary>
    public static FrequencyUnit? OfFrequency(KeyReader keys) => keys.Choice(
        "frequency_unit", ("Hz", FrequencyUnit.Hertz), ("kHz", FrequencyUnit.Kilohertz), ("MHz", FrequencyUnit.Megahertz), ("GHz", FrequencyUnit.Gigahertz));

    /// <summary>The key level_unit. By name and not by Choice: in level units case tells milli from mega.</summary>
    /// <param name="keys">The section.</param>
    /// <param name="section">Its name.</param>
    /// <param name="linear">Whether the linear magnitude of a ratio may be stated, which is one of single files.</param>
    public static LevelUnit? OfLevel(KeyReader keys, string section, bool linear)
    {
        string? word = keys.Text("level_unit");
        LevelUnit? unit = word is null ? null : OfWord(word, linear);
        if (word is not null && unit is null)
        {
            keys.Refuse("level_unit", $"{section}.level_unit is '{word}'", linear ? LevelWords + "; or linear, for the magnitude of a ratio" : LevelWords);
        }

        return unit;
    }

    private static LevelUnit? OfWord(string word, bool linear) =>
        linear ? LevelUnits.Stated(word) : LevelUnits.Parse(word) is { } unit and not LevelUnit.DecibelsPerMeter ? unit : null;
}
