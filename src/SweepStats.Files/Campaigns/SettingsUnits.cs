using SweepStats.Files.Traces;

namespace SweepStats.Files.Campaigns;

/// <summary>Reads the units that campaign.toml states.</summary>
internal static class SettingsUnits
{
    /// <summary>The key frequency_unit.</summary>
    public static FrequencyUnit? OfFrequency(KeyReader keys) => keys.Choice<FrequencyUnit>(
        "frequency_unit", new("Hz", FrequencyUnit.Hertz), new("kHz", FrequencyUnit.Kilohertz),
            new("MHz", FrequencyUnit.Megahertz), new("GHz", FrequencyUnit.Gigahertz));

    /// <summary>The key level_unit. By name and not by Choice: in level units case tells milli from mega.</summary>
    /// <param name="keys">The section.</param>
    /// <param name="section">Its name.</param>
    public static LevelUnit? OfLevel(KeyReader keys, string section)
    {
        string? word = keys.Text("level_unit");
        LevelUnit? unit = word is null ? null : LevelUnits.Stated(word);
        if (word is not null && unit is null)
        {
            keys.Refuse("level_unit", $"{section}.level_unit is '{word}'",
                $"use {LevelUnits.Words}; linear is the magnitude of a ratio");
        }

        return unit;
    }
}
