namespace SweepStats.Files.Campaigns;

/// <summary>
/// Holds what campaign.toml says of files against the files that there are: a statement that nothing obeys is a mistake.
/// </summary>
internal static class StatedFiles
{
    /// <summary>Blocks that hold for no file.</summary>
    /// <param name="settings">The settings.</param>
    /// <param name="walk">The files of the campaign.</param>
    public static IEnumerable<ReadFault> Unmet(CampaignSettings settings, FolderWalk walk)
    {
        ImmutableArray<string> files = settings.Files.IsEmpty ? [] : [.. walk.Files.Where(Traces.TraceFile.HasTraceExtension)];
        HashSet<string> taken = [];
        foreach (FileStatement statement in settings.Files)
        {
            string[] matched = [.. files.Where(statement.Matches)];
            if (!matched.Any(taken.Add))
            {
                yield return Fault(statement, matched.Length > 0);
            }

            taken.UnionWith(matched);
        }
    }

    /// <summary>A file whose columns are named in both places.</summary>
    /// <param name="entries">Rows of sweeps.csv.</param>
    /// <param name="settings">The settings.</param>
    public static IEnumerable<ReadFault> NamedTwice(ImmutableArray<SweepEntry> entries, CampaignSettings settings) =>
        settings.Files.IsEmpty ? [] : entries.Where(e => e.Column is not null).Select(e => e.File).Distinct()
            .Where(f => settings.Known(f).RealColumn is not null)
            .Select(f => new ReadFault(
                f, null, "sweeps.csv names a column of levels of this file, and campaign.toml a real and an imaginary one",
                "take the column away in sweeps.csv, or real_column and imaginary_column in campaign.toml"));

    private static ReadFault Fault(FileStatement statement, bool late) => new(CampaignFolder.SettingsName, statement.Line,
        late ? $"every file that '{statement.Match}' matches is matched by a block before, which holds"
            : $"'{statement.Match}' matches no trace file of the campaign",
        late ? "put the narrower pattern first, or remove the block"
            : "correct match: * stands for characters within a name, ** for folders, such as \"covered/**/*.txt\"");
}
