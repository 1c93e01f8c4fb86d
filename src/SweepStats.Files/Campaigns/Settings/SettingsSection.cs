namespace SweepStats.Files.Campaigns.Settings;

/// <summary>A section of the table of settings.</summary>
/// <param name="Name">Its name in campaign.toml; empty for what stands above all sections.</param>
internal sealed record SettingsSection(string Name)
{
    /// <summary>Whether it is written [[name]], once for each entry.</summary>
    public bool IsRepeated { get; init; }

    /// <summary>Its keys, in the order in which they are told where one is mistyped.</summary>
    public required ImmutableArray<Setting> Settings { get; init; }

    /// <summary>Takes what its settings say only together, after all that each says by itself.</summary>
    public Func<KeyReader, CampaignSettings, CampaignSettings>? Together { get; init; }

    /// <summary>What the object is that holds what the plan tells of its settings; null where the plan itself does.</summary>
    public string? Object { get; init; }

    /// <summary>Whether that object is left out where none of its members has a value.</summary>
    public bool IsObjectOptional { get; init; }

    /// <summary>Its lines above those of its settings, in the file that init writes.</summary>
    public string Heading { get; init; } = "";

    /// <summary>Lines of a later turn stand behind those of an earlier one, and else as in the table.</summary>
    public int Turn { get; init; }

    /// <summary>Its row in the table of the guide; null where it has none.</summary>
    public string? Guide { get; init; }

    /// <summary>The settings with what this section states.</summary>
    public CampaignSettings Read(KeyReader keys, CampaignSettings settings)
    {
        CampaignSettings read = Settings.Aggregate(settings, (said, row) => row.Take?.Invoke(keys, said) ?? said);
        read = Together?.Invoke(keys, read) ?? read;
        keys.RefuseOthers();
        return read;
    }

    /// <summary>Its lines in the file that init writes.</summary>
    public string Template() => string.Join('\n',
        Settings.OrderBy(s => s.Turn).Select(s => s.Template).Prepend(Heading).Where(lines => lines.Length > 0));
}
