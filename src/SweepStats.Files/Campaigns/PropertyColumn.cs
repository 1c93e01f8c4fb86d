namespace SweepStats.Files.Campaigns;

/// <summary>A column of sweeps.csv that holds a property of the specimens.</summary>
/// <param name="Name">The user's word for it, as written in campaign.toml.</param>
/// <param name="Line">Where campaign.toml names it.</param>
/// <param name="IsWeighed">Whether its cells have to be numbers.</param>
internal readonly record struct PropertyColumn(string Name, int Line, bool IsWeighed)
{
    /// <summary>Whether [lots] orders specimens by it, so that each of them needs a number.</summary>
    public bool IsNeeded { get; init; }

    /// <summary>Whether it is the column of layers, which campaign.toml need not name.</summary>
    public bool IsLayers { get; init; }

    /// <summary>The section that names it.</summary>
    public string Section => IsNeeded ? "[lots]" : "[choice]";

    /// <summary>The name as columns of sweeps.csv are compared.</summary>
    public string Key => Name.ToLowerInvariant();
}
