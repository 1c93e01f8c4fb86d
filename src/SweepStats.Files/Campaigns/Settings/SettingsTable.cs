namespace SweepStats.Files.Campaigns.Settings;

/// <summary>
/// Every setting of campaign.toml, in one table. The reader, the file that init writes and the plan of summary.json with its
/// schema follow from it; a test holds the guide against it.
/// </summary>
internal static class SettingsTable
{
    /// <summary>What stands above all sections, and these in the order in which they are told where one is mistyped.</summary>
    public static ImmutableArray<SettingsSection> Sections { get; } =
    [
        TopSettings.Section, SetupSettings.Section, FloorSettings.Section, FloorSettings.Reference, BandSettings.Section,
        RequirementSettings.Section, UncertaintySettings.Section, UncertaintySettings.Budget, BandSettings.Named,
        LotsSettings.Section, ChoiceSettings.Section, FieldSettings.Section, FilesSettings.Section, ReportSettings.Section,
    ];

    /// <summary>The text of campaign.toml as init writes it.</summary>
    public static string Template() =>
        string.Join("\n\n", Sections.OrderBy(s => s.Turn).Select(s => s.Template())) + "\n";
}
