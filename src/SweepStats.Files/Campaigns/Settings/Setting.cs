namespace SweepStats.Files.Campaigns.Settings;

/// <summary>A row of the table of settings: a key of campaign.toml, and all that is said of it anywhere.</summary>
/// <param name="Key">Its name in the file.</param>
/// <param name="Template">Its lines in the file that init writes: an example behind '#', and a remark.</param>
/// <param name="Told">What the plan of summary.json tells of it; nothing where it tells nothing.</param>
internal sealed record Setting(string Key, string Template = "", params ImmutableArray<PlanMember> Told)
{
    /// <summary>Takes its value out of the file; null where <see cref="SettingsSection.Together"/> does.</summary>
    public Func<KeyReader, CampaignSettings, CampaignSettings>? Take { get; init; }

    /// <summary>Lines of a later turn stand behind those of an earlier one, and else as in the table.</summary>
    public int Turn { get; init; }

    /// <summary>A number of a range that includes its ends, for the plan.</summary>
    public static Setting Number(string key, double least, double most, Func<AnalysisPlan, double, AnalysisPlan> put,
        string template, params ImmutableArray<PlanMember> told) =>
        Of(key, keys => keys.Number(key, least, most), (s, value) => s with { Plan = put(s.Plan, value) }, template, told);

    /// <summary>True or false, for the plan.</summary>
    public static Setting Truth(
        string key, Func<AnalysisPlan, bool, AnalysisPlan> put, string template, params ImmutableArray<PlanMember> told) =>
        Of(key, keys => keys.Truth(key), (s, value) => s with { Plan = put(s.Plan, value) }, template, told);

    /// <summary>One of a few words, for the plan.</summary>
    public static Setting Choice<T>(string key, KeyWord<T>[] words, Func<AnalysisPlan, T, AnalysisPlan> put,
        string template, params ImmutableArray<PlanMember> told)
        where T : struct =>
        Of(key, keys => keys.Choice(key, words), (s, value) => s with { Plan = put(s.Plan, value) }, template, told);

    /// <summary>A text.</summary>
    public static Setting Text(string key, Func<CampaignSettings, string, CampaignSettings> put, string template) =>
        new(key, template) { Take = (keys, s) => keys.Text(key) is { } text ? put(s, text) : s };

    /// <summary>A value that is read in a way of its own, or that is for another place than the plan.</summary>
    public static Setting Of<T>(string key, Func<KeyReader, T?> read, Func<CampaignSettings, T, CampaignSettings> put,
        string template, params ImmutableArray<PlanMember> told)
        where T : struct =>
        new(key, template, told) { Take = (keys, s) => read(keys) is { } value ? put(s, value) : s };
}
