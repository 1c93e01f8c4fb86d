using System.Collections.Immutable;
using SweepStats.Files.Results;
using SweepStats.Files.Traces;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>Tells from a file's folder what its sweeps were taken for.</summary>
internal static class FolderRoles
{
    private const string OnlyLot = "1";

    // Every report has this file; its name is part of the contract.
    private const string ReportMark = "/summary.json";

    /// <summary>Sorts the files of a campaign without manifest.</summary>
    /// <param name="root">The campaign's folder.</param>
    /// <param name="walk">Its files.</param>
    public static SweepList Of(string root, FolderWalk walk)
    {
        var entries = ImmutableArray.CreateBuilder<SweepEntry>();
        var faults = ImmutableArray.CreateBuilder<ReadFault>();
        var unread = ImmutableArray.CreateBuilder<ReadFault>();
        var assumptions = ImmutableArray.CreateBuilder<string>();
        faults.AddRange(walk.Faults);
        string[] reports = ReportsAmong(root, walk);
        assumptions.AddRange(reports.Select(r => $"{r} is an earlier report and was not read"));
        foreach (string file in walk.Files.Where(f => !reports.Any(r => f.StartsWith(r, StringComparison.Ordinal))))
        {
            string name = file[(file.LastIndexOf('/') + 1)..];
            if (IsNotes(name))
            {
                assumptions.Add($"{file} was taken as notes and not read");
            }
            else if (file == CampaignFolder.TruthName)
            {
                assumptions.Add($"{file} was taken as the truth of a rehearsal and not read");
            }
            else if (file == name)
            {
                TopFile(file, faults);
            }
            else if (!TraceFile.HasTraceExtension(file))
            {
                unread.Add(new ReadFault(file, null, "the extension is not that of a trace file",
                    $"use {string.Join(' ', TraceFile.Extensions)}, or move the file out of the campaign")
                {
                    Role = Roles.Parse(file.Split('/')[0]),
                });
            }
            else if (Entry(file, faults) is { } entry)
            {
                entries.Add(entry);
            }
        }

        faults.AddRange(LooseSweeps.Among(entries.ToImmutable()));
        return new SweepList
        {
            Entries = entries.ToImmutable(),
            Faults = faults.ToImmutable(),
            Unread = unread.ToImmutable(),
            Assumptions = assumptions.ToImmutable(),
        };
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
    private static void TopFile(string file, ImmutableArray<ReadFault>.Builder faults)
    {
        string lower = file.ToLowerInvariant();
        if (lower == CampaignFolder.SettingsName && file != lower)
        {
            faults.Add(new ReadFault(file, null, "the name must be in small letters",
                $"rename it to {CampaignFolder.SettingsName}"));
        }
        else if (lower == CampaignFolder.ManifestName && file != lower)
        {
            faults.Add(new ReadFault(file, null, "the name must be in small letters",
                $"rename it to {CampaignFolder.ManifestName}"));
        }
        else if (lower.Contains("limit", StringComparison.Ordinal) || lower.Contains("requirement", StringComparison.Ordinal))
        {
            faults.Add(new ReadFault(
                file, null, "the file is called a limit and campaign.toml does not name it",
                $"write file = \"{file}\" under [requirement] in campaign.toml, or remove the file"));
        }
        else
        {
            faults.Add(new ReadFault(file, null, "the file lies in no folder that says what it was taken for",
                "move it into floor, reference, linearity, plate or covered/<lot>/<specimen>, write sweeps.csv, or remove it"));
        }
    }

    private static SweepEntry? Entry(string file, ImmutableArray<ReadFault>.Builder faults)
    {
        string[] parts = file.Split('/');
        if (Roles.Parse(parts[0]) is not { } role)
        {
            faults.Add(new ReadFault(file, null, $"the folder '{parts[0]}' is not the name of a "
                + $"role{Spelling.Hint(parts[0], Roles.Names)}", $"use {string.Join(", ", Roles.Names)}"));
            return null;
        }

        if (role != SweepRole.Covered)
        {
            return parts.Length == 2 ? new SweepEntry(file, role)
                : Misplaced(file, $"put the file into {parts[0]} itself", faults);
        }

        string[] names = [.. parts[1..^1].Select(p => p.Trim())];
        foreach (string name in names)
        {
            if (NameRule.Problem(name) is { } problem)
            {
                faults.Add(new ReadFault(file, null, $"the folder name '{name}' {problem}", "rename the folder"));
                return null;
            }
        }

        return names.Length switch
        {
            1 => new SweepEntry(file, role) { Lot = OnlyLot, Specimen = names[0] },
            2 => new SweepEntry(file, role) { Lot = names[0], Specimen = names[1] },
            3 => new SweepEntry(file, role) { Lot = names[0], Specimen = names[1], Placement = names[2] },
            _ => Misplaced(file,
                "use covered/<specimen>, covered/<lot>/<specimen> or covered/<lot>/<specimen>/<placement>", faults),
        };
    }

    private static SweepEntry? Misplaced(string file, string remedy, ImmutableArray<ReadFault>.Builder faults)
    {
        faults.Add(new ReadFault(file, null, "the file lies at the wrong depth of folders", remedy));
        return null;
    }
}
