using SweepStats.Files.Results;
using SweepStats.Files.Traces;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>Tells from a file's folder what its sweeps were taken for.</summary>
internal sealed class FolderRoles
{
    private const string OnlyLot = "1";

    // Every report has this file; its name is part of the contract.
    private const string ReportMark = "/summary.json";

    private readonly List<SweepEntry> _entries = [];
    private readonly List<ReadFault> _faults = [];
    private readonly List<ReadFault> _unread = [];
    private readonly List<string> _assumptions = [];

    private FolderRoles()
    {
    }

    /// <summary>Sorts the files of a campaign without manifest.</summary>
    /// <param name="root">The campaign's folder.</param>
    /// <param name="walk">Its files.</param>
    public static SweepList Of(string root, FolderWalk walk)
    {
        var sorted = new FolderRoles();
        string[] reports = ReportsAmong(root, walk);
        foreach (string file in walk.Files.Where(f => !reports.Any(r => f.StartsWith(r, StringComparison.Ordinal))))
        {
            sorted.Sort(file);
        }

        return new SweepList
        {
            Entries = [.. sorted._entries],
            Faults = [.. walk.Faults, .. sorted._faults, .. LooseSweeps.Among([.. sorted._entries])],
            Unread = [.. sorted._unread],
            Assumptions =
                [.. reports.Select(r => $"{r} is an earlier report and was not read"), .. sorted._assumptions],
        };
    }

    private void Sort(string file)
    {
        string name = file[(file.LastIndexOf('/') + 1)..];
        if (IsNotes(name))
        {
            _assumptions.Add($"{file} was taken as notes and not read");
        }
        else if (file == CampaignFolder.TruthName)
        {
            _assumptions.Add($"{file} was taken as the truth of a rehearsal and not read");
        }
        else if (file == name)
        {
            _faults.Add(TopFile(file));
        }
        else if (!TraceFile.HasTraceExtension(file))
        {
            _unread.Add(new ReadFault(file, null, "the extension is not that of a trace file",
                $"use {string.Join(' ', TraceFile.Extensions)}, or move the file out of the campaign")
            {
                Role = Roles.Parse(file.Split('/')[0]),
            });
        }
        else if (Entry(file) is { } entry)
        {
            _entries.Add(entry);
        }
    }

    /// <summary>Folders of earlier reports, each with '/' at its end.</summary>
    public static string[] ReportsAmong(string root, FolderWalk walk) =>
        [.. walk.Files.Where(f => IsReport(root, f)).Select(f => f[..(f.LastIndexOf('/') + 1)])];

    // Other programs write a summary.json too, and their folder may hold sweeps.
    private static bool IsReport(string root, string file) =>
        file.EndsWith(ReportMark, StringComparison.Ordinal) && Roles.Parse(file.Split('/')[0]) is null
            && EarlierReport.IsSummary(Path.Combine(root, file));

    /// <summary>Whether a file of this name holds notes.</summary>
    public static bool IsNotes(string name) =>
        name.StartsWith("README", StringComparison.OrdinalIgnoreCase) || name.EndsWith(".md", StringComparison.OrdinalIgnoreCase);

    // A trace at the top has no role; campaign.toml and the limits it names were taken out before.
    private static ReadFault TopFile(string file)
    {
        string lower = file.ToLowerInvariant();
        if (lower is CampaignFolder.SettingsName or CampaignFolder.ManifestName && file != lower)
        {
            return new ReadFault(file, null, "the name must be in small letters", $"rename it to {lower}");
        }

        return lower.Contains("limit", StringComparison.Ordinal) || lower.Contains("requirement", StringComparison.Ordinal)
            ? new ReadFault(file, null, "the file is called a limit and campaign.toml does not name it",
                $"write file = \"{file}\" under [requirement] in campaign.toml, or remove the file")
            : new ReadFault(file, null, "the file lies in no folder that says what it was taken for",
                "run 'sweepstats init' on the folder, which guesses a sweeps.csv; or move the file into floor, reference, "
                    + "linearity, plate or covered/<lot>/<specimen>; or remove it");
    }

    private SweepEntry? Entry(string file)
    {
        string[] parts = file.Split('/');
        if (Roles.Parse(parts[0]) is not { } role)
        {
            return Refused(file, $"the folder '{parts[0]}' is not the name of a role{Spelling.Hint(parts[0], Roles.Names)}",
                $"use {string.Join(", ", Roles.Names)}");
        }

        return role == SweepRole.Covered ? Covered(file, [.. parts[1..^1].Select(p => p.Trim())])
            : parts.Length == 2 ? new SweepEntry(file, role)
            : Misplaced(file, $"put the file into {parts[0]} itself");
    }

    private SweepEntry? Covered(string file, string[] names)
    {
        foreach (string name in names)
        {
            if (NameRule.Problem(name) is { } problem)
            {
                return Refused(file, $"the folder name '{name}' {problem}", "rename the folder");
            }
        }

        var entry = new SweepEntry(file, SweepRole.Covered);
        return names.Length switch
        {
            1 => entry with { Lot = OnlyLot, Specimen = names[0] },
            2 => entry with { Lot = names[0], Specimen = names[1] },
            3 => entry with { Lot = names[0], Specimen = names[1], Placement = names[2] },
            _ => Misplaced(file, "use covered/<specimen>, covered/<lot>/<specimen> or covered/<lot>/<specimen>/<placement>"),
        };
    }

    private SweepEntry? Misplaced(string file, string remedy) =>
        Refused(file, "the file lies at the wrong depth of folders", remedy);

    private SweepEntry? Refused(string file, string problem, string remedy)
    {
        _faults.Add(new ReadFault(file, null, problem, remedy));
        return null;
    }
}
