namespace SweepStats.Files.Campaigns;

/// <summary>Where sweeps.csv has its columns: those it knows, and the user's own that campaign.toml names.</summary>
internal sealed class ManifestColumns
{
    private readonly Dictionary<string, int> _places = [];

    /// <summary>Looks for the columns in a header; each that is unknown, or that no sweep does without, is a fault.</summary>
    public ManifestColumns(CsvTable table, ImmutableArray<PropertyColumn> own, FaultList faults)
    {
        (ImmutableArray<string> header, int line) = (table.Header, table.HeaderLine);
        string[] all = [.. Known, LayersColumn.Name, .. own.Select(c => c.Key)];
        for (int i = 0; i < header.Length; i++)
        {
            string name = header[i].Trim().ToLowerInvariant();
            if (name.Length == 0)
            {
                bool last = header.AsSpan()[i..].IndexOfAnyExcept("") < 0;
                faults.Add(line, FormattableString.Invariant($"column {i + 1} has no name"),
                    last ? "remove the comma at the end" : "name it, or remove it");
            }
            else if (!all.Contains(name))
            {
                faults.Add(line, $"'{header[i].Trim()}' is not a column{Spelling.Hint(name, all)}",
                    $"use {string.Join(", ", Known)}, {LayersColumn.Name}; a column of your own is named under [choice] or "
                        + $"[lots] in {CampaignFolder.SettingsName}");
            }
            else if (!_places.TryAdd(name, i))
            {
                faults.Add(line, $"the column '{name}' is there twice", "keep one of them");
            }
        }

        foreach (string needed in Needed.Where(n => !_places.ContainsKey(n)))
        {
            faults.Add(line, $"the column '{needed}' is missing", "the header names the columns; file and role are needed");
        }
    }

    /// <summary>Columns that every sweeps.csv may have.</summary>
    public static ImmutableArray<string> Known { get; } =
        ["file", "role", "lot", "specimen", "placement", "column", "taken_at", "source_dbm", "exclude"];

    private static ImmutableArray<string> Needed { get; } = ["file", "role"];

    /// <summary>Columns that campaign.toml names and the header does not.</summary>
    public IEnumerable<ReadFault> Lacking(ImmutableArray<PropertyColumn> own) =>
        own.Where(c => !_places.ContainsKey(c.Key))
            .Select(c => Missing(c, $"and {CampaignFolder.ManifestName} has none of that name", "add it there"));

    /// <summary>Columns that campaign.toml names where no row of sweeps.csv could fill them.</summary>
    public static IEnumerable<ReadFault> WithoutRows(ImmutableArray<PropertyColumn> own, bool hasFile) =>
        own.Select(c => Missing(
            c, hasFile ? $"and {CampaignFolder.ManifestName} lists no sweeps" : $"and there is no {CampaignFolder.ManifestName}",
            $"list the sweeps in {CampaignFolder.ManifestName}, with that column"));

    /// <summary>A cell without surrounding blanks; empty where the column or the cell is missing.</summary>
    public string Cell(ImmutableArray<string> fields, string name) =>
        _places.TryGetValue(name, out int at) && at < fields.Length ? fields[at].Trim() : "";

    private static ReadFault Missing(PropertyColumn column, string why, string remedy) => new(
        CampaignFolder.SettingsName, column.Line, $"the column '{column.Name}' is named under {column.Section}, {why}",
        $"{remedy}, or take its name away");
}
