using System.Collections.Immutable;
using SweepStats.Files.Traces;

namespace SweepStats.Files.Campaigns;

/// <summary>Which files hold sweeps, from sweeps.csv where there is one, else from the folders.</summary>
internal sealed record SweepList
{
    public ImmutableArray<SweepEntry> Entries { get; init; } = [];

    public ImmutableArray<ReadFault> Faults { get; init; } = [];

    public ImmutableArray<InputFile> Inputs { get; init; } = [];

    public ImmutableArray<string> Assumptions { get; init; } = [];

    public bool ManifestFound { get; init; }

    public static SweepList Find(string root, ImmutableArray<string> settingsFiles)
    {
        FolderWalk walk = FolderWalk.Through(root);
        return File.Exists(Path.Combine(root, CampaignFolder.ManifestName)) ? Listed(root, walk) : FolderRoles.Of(walk with { Files = [.. walk.Files.Except(settingsFiles)] });
    }

    private static SweepList Listed(string root, FolderWalk walk)
    {
        SweepList list = Manifest.Read(root);
        HashSet<string> named = [.. list.Entries.Select(e => e.File)];
        IEnumerable<string> others = walk.Files.Where(f => TraceFile.HasTraceExtension(f) && f.Contains('/') && !named.Contains(f));
        return list with { Assumptions = [.. others.Select(f => $"{f} is not listed in {CampaignFolder.ManifestName} and was not read")] };
    }
}
