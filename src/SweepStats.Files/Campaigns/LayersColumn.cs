using SweepStats.Fields;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// The column of sweeps.csv that states of how many layers of a cloth a specimen is. It is read wherever it stands, and may be
/// named in campaign.toml besides.
/// </summary>
internal static class LayersColumn
{
    public const string Name = LayerComparer.Property;

    /// <summary>What campaign.toml says, with this column among the user's own where sweeps.csv has it.</summary>
    public static CampaignSettings In(CsvTable? table, CampaignSettings settings)
    {
        bool stands = table?.Header.Any(h => h.Trim().Equals(Name, StringComparison.OrdinalIgnoreCase)) == true;
        return stands && settings.OwnColumns.All(c => c.Key != Name)
            ? settings with
            {
                PropertyColumns =
                settings.PropertyColumns.Add(new PropertyColumn(Name, 0, IsWeighed: true) { IsLayers = true }),
            }
            : settings;
    }

    /// <summary>Whether a number can be one of layers.</summary>
    public static bool Holds(double? number) => number is { } layers && LayerComparer.IsCount(layers);
}
