using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>Reads sweeps.csv: one row a sweep.</summary>
internal sealed class Manifest
{
    private readonly FaultList _faults;
    private readonly FaultList _missing = new(CampaignFolder.ManifestName);
    private readonly HashSet<(string, string?)> _seen = [];
    private readonly string _root;

    private readonly ImmutableArray<PropertyColumn> _own;
    private readonly PropertyCells _properties;
    private readonly ManifestPaths _paths;

    private Manifest(string root, CampaignSettings settings, FaultList faults)
    {
        (_root, _own, _faults) = (root, settings.OwnColumns, faults);
        (_properties, _paths) = (new PropertyCells(settings, faults), new ManifestPaths(root, faults));
    }

    /// <summary>Reads the list of a campaign.</summary>
    /// <param name="root">The campaign's folder.</param>
    /// <param name="settings">What campaign.toml says: the user's own columns among it.</param>
    public static SweepList Read(string root, CampaignSettings settings)
    {
        var faults = new FaultList(CampaignFolder.ManifestName);
        if (OwnFile.Refusal(root, CampaignFolder.ManifestName) is { } refusal)
        {
            return new SweepList { Faults = [refusal] };
        }

        CsvTable? table = CsvTable.Read(Path.Combine(root, CampaignFolder.ManifestName), faults);
        var manifest = new Manifest(root, LayersColumn.In(table, settings), faults);
        // Remarks alone, or nothing behind the header: the template as it was written.
        bool blank = table is { Header.IsEmpty: true, Rows.IsEmpty: true };
        ImmutableArray<SweepEntry> entries = table is not null && !blank ? manifest.Rows(table) : [];
        return new SweepList
        {
            Entries = entries,
            Properties = manifest._properties.All,
            Faults = manifest._faults.All,
            Unread = manifest._missing.All,
            Inputs = table is null ? [] : [new InputFile(CampaignFolder.ManifestName, table.Sha256)],
        };
    }

    private ImmutableArray<SweepEntry> Rows(CsvTable table)
    {
        var columns = new ManifestColumns(table, _own, _faults);
        // A header alone, as the template has it, lists no sweeps, and that is said instead.
        _faults.AddRange(table.Rows.IsEmpty ? [] : columns.Lacking(_own));
        if (_faults.Any)
        {
            return [];
        }

        var entries = ImmutableArray.CreateBuilder<SweepEntry>();
        foreach ((int line, ImmutableArray<string> fields) in table.Rows)
        {
            if (Entry(line, name => columns.Cell(fields, name)) is { } entry)
            {
                entries.Add(entry);
            }
        }

        _properties.RefuseGaps();
        Dictionary<string, int> whole =
            entries.Where(e => e.Column is null).GroupBy(e => e.File).ToDictionary(g => g.Key, g => g.Count());
        foreach (string file in entries.Where(e => e.Column is not null && whole.ContainsKey(e.File))
            .Select(e => e.File).Distinct())
        {
            _faults.Add(null, $"{file} is listed both as a whole and by column", "name the column in each of its rows");
        }

        return [.. entries.OrderBy(e => e.File, NaturalOrder.Instance)];
    }

    private SweepEntry? Entry(int line, Func<string, string> cell)
    {
        string? file = _paths.Inside(cell("file"), line);
        if (RoleOf(cell("role"), line) is not { } role)
        {
            return null;
        }

        SweepEntry entry = Of(file ?? "", role, new ManifestCells(line, cell, _faults));
        _properties.Take(line, entry, cell);
        if (file is not null && !_seen.Add((file, entry.Column?.ToLowerInvariant())))
        {
            _faults.Add(line, $"{file} is listed twice", "remove one of the rows, or name different columns");
        }

        return file is not null && IsThere(entry, line) ? entry : null;
    }

    private SweepRole? RoleOf(string word, int line)
    {
        if (Roles.Parse(word) is { } role)
        {
            return role;
        }

        string problem = word.Length == 0 ? "the role is not filled in"
            : $"'{word}' is not a role{Spelling.Hint(word, Roles.Names)}";
        _faults.Add(line, problem, $"use {string.Join(", ", Roles.Names)}");
        return null;
    }

    private static SweepEntry Of(string file, SweepRole role, ManifestCells cells)
    {
        bool covered = role == SweepRole.Covered;
        string? lot = cells.Name("lot"), specimen = cells.Name("specimen");
        if (covered)
        {
            cells.RequireSpecimen(specimen);
        }
        else
        {
            cells.RefuseSpecimen(role, lot ?? specimen ?? cells.Text("placement"));
        }

        return new SweepEntry(file, role)
        {
            Lot = covered ? lot ?? "1" : null,
            Specimen = covered ? specimen : null,
            Placement = cells.Name("placement"),
            Column = cells.Text("column"),
            TakenAt = cells.Time("taken_at"),
            SourceDbm = cells.Level("source_dbm"),
            Exclude = cells.Name("exclude"),
        };
    }

    private bool IsThere(SweepEntry entry, int line)
    {
        if (File.Exists(Path.Combine(_root, entry.File)))
        {
            return true;
        }

        _missing.Add(new ReadFault(_missing.File, line, $"{entry.File} is not there",
            "correct its path, put the file into the campaign, or remove the row")
        {
            Role = entry.Exclude is null ? entry.Role : null,
        });
        return false;
    }
}
