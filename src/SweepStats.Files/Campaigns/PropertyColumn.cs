namespace SweepStats.Files.Campaigns;

/// <summary>A column of sweeps.csv that holds a property of the specimens.</summary>
/// <param name="Name">The user's word for it, as written under [choice].</param>
/// <param name="Line">Where campaign.toml names it.</param>
/// <param name="IsWeighed">Whether its cells have to be numbers.</param>
internal readonly record struct PropertyColumn(string Name, int Line, bool IsWeighed)
{
    /// <summary>The name as columns of sweeps.csv are compared.</summary>
    public string Key => Name.ToLowerInvariant();
}
