using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>Reads sweeps.csv: one row a sweep.</summary>
internal sealed class Manifest
{
    private readonly FaultList _faults;
    private readonly FaultList _missing = new(CampaignFolder.ManifestName);
    private readonly HashSet<(string, string?)> _seen = [];
    private readonly Dictionary<string, bool> _out = new(StringComparer.Ordinal);
    private readonly string _root;

    private readonly ImmutableArray<PropertyColumn> _own;
    private readonly PropertyCells _properties;

    private Manifest(string root, CampaignSettings settings, FaultList faults)
    {
        (_root, _own, _faults) = (root, settings.OwnColumns, faults);
        _properties = new PropertyCells(settings, _faults);
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
        string? file = SafePath(cell("file"), line);
        if (Roles.Parse(cell("role")) is not { } role)
        {
            string problem = cell("role").Length == 0 ? "the role is not filled in"
                : $"'{cell("role")}' is not a role{Spelling.Hint(cell("role"), Roles.Names)}";
            _faults.Add(line, problem, $"use {string.Join(", ", Roles.Names)}");
            return null;
        }

        string? lot = Name("lot", cell("lot"), line);
        string? specimen = Name("specimen", cell("specimen"), line);
        if (role == SweepRole.Covered && specimen is null)
        {
            _faults.Add(line, "a covered sweep needs its specimen", "fill in the column 'specimen'");
        }

        var entry = new SweepEntry(file ?? "", role)
        {
            Lot = role == SweepRole.Covered ? lot ?? "1" : null,
            Specimen = role == SweepRole.Covered ? specimen : null,
            Placement = Name("placement", cell("placement"), line),
            Column = cell("column") is { Length: > 0 } column ? column : null,
            TakenAt = Time(cell("taken_at"), line),
            SourceDbm = Level(cell("source_dbm"), line),
            Exclude = Name("exclude", cell("exclude"), line),
        };
        _properties.Take(line, entry, cell);
        if (file is not null && !_seen.Add((file, entry.Column?.ToLowerInvariant())))
        {
            _faults.Add(line, $"{file} is listed twice", "remove one of the rows, or name different columns");
        }

        if (file is null || File.Exists(Path.Combine(_root, file)))
        {
            return file is null ? null : entry;
        }

        _missing.Add(new ReadFault(_missing.File, line, $"{file} is not there",
            "correct its path, put the file into the campaign, or remove the row")
        {
            Role = entry.Exclude is null ? role : null,
        });
        return null;
    }

    private string? SafePath(string text, int line)
    {
        string path = text.Replace('\\', '/');
        if (path.Length == 0 || path.Any(char.IsControl))
        {
            _faults.Add(line, "the path of the file is empty or holds control characters",
                "write it relative to the campaign, such as floor/f01.csv");
            return null;
        }

        string full = Path.GetFullPath(Path.Combine(_root, path));
        if (CampaignPath.Absolute(_root, path) is { } inside)
        {
            _faults.Add(line, $"'{text}' is an absolute path", $"write the path relative to campaign.toml: {inside}");
            return null;
        }

        if (CampaignPath.IsRooted(path)
            || !full.StartsWith(_root.TrimEnd('/', '\\') + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            _faults.Add(line, $"'{text}' leads out of the campaign",
                "put the file into the campaign and write its path relative to it");
            return null;
        }

        string relative = Path.GetRelativePath(_root, full).Replace('\\', '/');
        if (!Traces.TraceFile.HasTraceExtension(relative))
        {
            _faults.Add(line, $"the extension of '{text}' is not that of a trace file",
                $"use {string.Join(' ', Traces.TraceFile.Extensions)}");
            return null;
        }

        if (LeadsOut(relative))
        {
            _faults.Add(line, $"'{text}' leads out of the campaign: a folder on its way is a link",
                "put the folder itself into the campaign");
            return null;
        }

        return relative;
    }

    // Asked once for each folder; a file that is a link itself is turned away where it is read.
    private bool LeadsOut(string relative)
    {
        string folder = Path.GetDirectoryName(relative)!;
        if (folder.Length == 0)
        {
            return false;
        }

        if (!_out.TryGetValue(folder, out bool leads))
        {
            leads = !FolderWalk.LiesWithin(_root, Path.Combine(_root, folder));
            _out.Add(folder, leads);
        }

        return leads;
    }

    private string? Name(string column, string text, int line)
    {
        if (text.Length > 0 && NameRule.Problem(text) is { } problem)
        {
            _faults.Add(line, $"the {column} {problem}", "shorten or correct it");
        }

        return text.Length == 0 ? null : text;
    }

    private DateTimeOffset? Time(string text, int line)
    {
        string[] iso = ["yyyy-MM-dd", "yyyy-MM-ddTHH:mm", "yyyy-MM-ddTHH:mm:ss", "yyyy-MM-ddTHH:mm:ss.FFFFFFF",
            "yyyy-MM-ddTHH:mmK", "yyyy-MM-ddTHH:mm:ssK", "yyyy-MM-ddTHH:mm:ss.FFFFFFFK"];
        if (text.Length == 0)
        {
            return null;
        }

        // Spreadsheets part date and time by a blank.
        string[] formats = [.. iso, .. iso.Select(f => f.Replace('T', ' '))];
        if (DateTimeOffset.TryParseExact(text, formats, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal,
            out DateTimeOffset time))
        {
            return time;
        }

        _faults.Add(line, $"'{text}' is not a time", "write ISO 8601, such as 2026-03-05T14:30:00 or 2026-03-05T14:30:00+01:00");
        return null;
    }

    private double? Level(string text, int line)
    {
        if (text.Length == 0)
        {
            return null;
        }

        if (Traces.Text.StrictNumber.TryParse(System.Text.Encoding.UTF8.GetBytes(text), (byte)'.', 0, out double level))
        {
            return level;
        }

        _faults.Add(line, $"'{text}' is not a level in dBm", "write a number with a decimal point");
        return null;
    }
}
