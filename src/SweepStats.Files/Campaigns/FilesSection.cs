using SweepStats.Files.Traces;

namespace SweepStats.Files.Campaigns;

/// <summary>Reads a block [[files]] of campaign.toml: which columns and units the files of a pattern have.</summary>
internal static class FilesSection
{
    /// <summary>The settings with what a block states; without it, and with the reason told, where something is wrong.</summary>
    public static CampaignSettings Read(KeyReader keys, CampaignSettings settings) =>
        Statement(keys) is { } said ? settings with { Files = settings.Files.Add(said) } : settings;

    private static FileStatement? Statement(KeyReader keys)
    {
        string? match = keys.Text("match");
        keys.Require("match");
        if (match is not null && PathPattern.Problem(match) is { } problem)
        {
            keys.Refuse("match", $"the pattern '{match}' {problem}",
                "write it relative to campaign.toml, such as \"covered/**/*.txt\"");
            match = null;
        }

        TraceReadOptions said = Said(keys);
        ImmutableArray<KeyConflict> conflicts = KeyConflict.Of(said);
        foreach (KeyConflict conflict in conflicts)
        {
            keys.Refuse(conflict.Key, conflict.Problem, conflict.Remedy);
        }

        if (keys.HasOnly("match"))
        {
            keys.Refuse(keys.Line, "the block [[files]] says nothing of its files",
                "add a column or a unit, such as level_columns = [\"2\"], or remove it");
            return null;
        }

        return match is null || !conflicts.IsEmpty ? null : new FileStatement(match, keys.Line, said);
    }

    private static TraceReadOptions Said(KeyReader keys)
    {
        FrequencyUnit? frequency = SettingsUnits.OfFrequency(keys);
        LevelUnit? level = SettingsUnits.OfLevel(keys, "files");
        return new TraceReadOptions
        {
            ColumnsStatedIn = "level_columns under [[files]] in campaign.toml",
            FrequencyColumn = keys.Text("frequency_column"),
            Columns = Levels(keys),
            PhaseColumn = keys.Text("phase_column"),
            PhaseUnit = keys.Choice<PhaseUnit>("phase_unit", new("deg", PhaseUnit.Degrees), new("rad", PhaseUnit.Radians)),
            RealColumn = keys.Text("real_column"),
            ImaginaryColumn = keys.Text("imaginary_column"),
            FrequencyUnit = frequency,
            IsOwnFrequencyUnit = frequency is not null,
            LevelUnit = level,
            IsOwnLevelUnit = level is not null,
        };
    }

    private static ImmutableArray<string> Levels(KeyReader keys)
    {
        string? one = keys.Text("level_column");
        ImmutableArray<(string Text, int Line)>? several = keys.Texts("level_columns");
        if (one is not null && several is not null)
        {
            keys.Refuse("level_column", "level_column and level_columns are both stated", "keep level_columns");
        }

        if (several is { IsEmpty: true })
        {
            keys.Refuse("level_columns", "level_columns names no column", "write it as [\"2\", \"3\"], or remove the key");
        }

        foreach ((string text, int line) in several ?? [])
        {
            if (text.Length == 0
                || several!.Value.Count(s => string.Equals(s.Text, text, StringComparison.OrdinalIgnoreCase)) > 1)
            {
                keys.Refuse(line, text.Length == 0 ? "level_columns holds an empty text" : $"level_columns names '{text}' twice",
                    "name each column of levels once, by its header or its number from 1");
                return [];
            }
        }

        return several is { } named ? [.. named.Select(n => n.Text)] : one is null ? [] : [one];
    }
}
