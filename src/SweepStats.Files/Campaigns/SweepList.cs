using SweepStats.Files.Traces;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>Which files hold sweeps, from sweeps.csv where there is one, else from the folders.</summary>
internal sealed record SweepList
{
    public ImmutableArray<SweepEntry> Entries { get; init; } = [];

    /// <summary>What the user's own columns say of specimens.</summary>
    public ImmutableArray<SpecimenProperty> Properties { get; init; } = [];

    public ImmutableArray<ReadFault> Faults { get; init; } = [];

    /// <summary>Files that are no sweeps or are not there: left out where the reader is told to keep going.</summary>
    public ImmutableArray<ReadFault> Unread { get; init; } = [];

    public ImmutableArray<InputFile> Inputs { get; init; } = [];

    public ImmutableArray<string> Assumptions { get; init; } = [];

    /// <summary>Trace files in folders that the list does not name, and that are not read.</summary>
    public ImmutableArray<string> Unlisted { get; init; } = [];

    public static SweepList Find(string root, CampaignSettings settings)
    {
        FolderWalk walk = FolderWalk.Through(root);
        if (walk.TooMany is { } tooMany)
        {
            return new SweepList { Faults = [tooMany] };
        }

        SweepList list = Found(root, walk, settings);
        return list with
        {
            Faults =
            [.. list.Faults, .. StatedFiles.Unmet(settings, walk), .. StatedFiles.NamedTwice(list.Entries, settings)],
        };
    }

    private static SweepList Found(string root, FolderWalk walk, CampaignSettings settings)
    {
        SweepList? manifest = Path.Exists(Path.Combine(root, CampaignFolder.ManifestName)) ? Manifest.Read(root, settings) : null;
        if (manifest is { IsBlank: false })
        {
            return Listed(manifest, walk, settings);
        }

        IEnumerable<string> known =
            [CampaignFolder.SettingsName, CampaignFolder.ManifestName, .. settings.Inputs.Select(i => i.Path)];
        SweepList folders = FolderRoles.Of(root, walk with { Files = [.. walk.Files.Except(known)] });
        folders = folders with
        {
            Faults =
            [.. folders.Faults, .. ManifestColumns.WithoutRows(settings.OwnColumns, manifest is not null)],
        };
        return manifest is null ? folders : folders with
        {
            Inputs = manifest.Inputs,
            Assumptions =
                [$"{CampaignFolder.ManifestName} lists no sweeps; the folders' names were used", .. folders.Assumptions],
        };
    }

    // A manifest that was never filled in says nothing; one with faults does.
    private bool IsBlank => Entries.IsEmpty && Faults.IsEmpty && Unread.IsEmpty;

    private static SweepList Listed(SweepList list, FolderWalk walk, CampaignSettings settings)
    {
        HashSet<string> named = [.. list.Entries.Select(e => e.File), .. settings.Inputs.Select(i => i.Path)];
        ImmutableArray<string> others =
            [.. walk.Files.Where(f => TraceFile.HasTraceExtension(f) && f.Contains('/') && !named.Contains(f))];
        return list with
        {
            Unlisted = others,
            Assumptions = [.. list.Assumptions,
            .. others.Select(f => $"{f} is not listed in {CampaignFolder.ManifestName} and was not read")],
        };
    }
}
