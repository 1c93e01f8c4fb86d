using SweepStats.Lots;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// The section [lots] of campaign.toml: what is asked of lots, and the column of sweeps.csv that puts specimens in an order.
/// </summary>
internal sealed class LotsSection
{
    public LotsSection(KeyReader keys, LotQuestion unless)
    {
        OrderedBy = Column(keys);
        Question = unless with
        {
            MarginDb = keys.Number("same_within_db", 0.01, 60) ?? unless.MarginDb,
            Share = keys.Number("share", 0.5, 0.999) ?? unless.Share,
            OrderedBy = OrderedBy?.Name,
        };
    }

    public LotQuestion Question { get; }

    /// <summary>The column; null where specimens have no order.</summary>
    public PropertyColumn? OrderedBy { get; }

    private static PropertyColumn? Column(KeyReader keys)
    {
        const string Key = "ordered_by";
        if (keys.Text(Key) is not { } name)
        {
            return null;
        }

        var column = new PropertyColumn(name, keys.LineOf(Key), IsWeighed: true) { IsNeeded = true };
        if (NameRule.Problem(name) is { } problem)
        {
            keys.Refuse(Key, $"the name of the column in lots.{Key} {problem}", "shorten or correct it");
            return null;
        }

        if (ManifestColumns.Known.Contains(column.Key))
        {
            keys.Refuse(
                Key, $"the column '{name}' of {CampaignFolder.ManifestName} has a meaning of its own and is no number of each "
                    + "specimen",
                "name a column of your own, such as washes");
            return null;
        }

        return column;
    }
}
