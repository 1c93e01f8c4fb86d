using SweepStats.Storage;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>What was read of a campaign: settings, list and files, each with its own faults.</summary>
/// <param name="Root">Full path of the folder.</param>
/// <param name="Settings">What campaign.toml says.</param>
/// <param name="List">The sweeps as listed.</param>
/// <param name="Batch">The sweeps as read.</param>
internal sealed record CampaignParts(string Root, CampaignSettings Settings, SweepList List, SweepBatch Batch)
{
    private readonly StatedSpecimens _stated = new(Settings, Batch.Sweeps);

    /// <summary>Files that are left out where the rest is analysed.</summary>
    public ImmutableArray<ReadFault> Unread => [.. List.Unread, .. Batch.Faults];

    /// <summary>Every file that was read.</summary>
    public ImmutableArray<InputFile> Inputs =>
        [.. Settings.Inputs.Concat(List.Inputs).Concat(Batch.Inputs).OrderBy(i => i.Path, NaturalOrder.Instance)];

    /// <summary>What was taken for granted.</summary>
    public ImmutableArray<string> Assumptions =>
        [.. Settings.Assumptions, .. List.Assumptions, .. Batch.Assumptions, .. UnusedInput.Of(Settings, List, Batch)];

    /// <summary>The campaign, if nothing is wrong with it.</summary>
    /// <param name="store">Where its levels are kept.</param>
    public Campaign Campaign(RowStore store) => new(Settings.Title ?? new DirectoryInfo(Root).Name, Batch.Sweeps)
    {
        Rehearsed = Settings.Rehearsed,
        Identity = Settings.Identity,
        Properties = List.Properties,
        Store = store,
        Unread = [.. UnreadSweeps.Of(List, Batch)],
    };

    /// <summary>The plan, with the specimens that it names.</summary>
    public AnalysisPlan Plan(int threads) => Settings.Plan with
    {
        Threads = Math.Max(1, threads),
        Choice = Settings.Plan.Choice with { Yardstick = _stated.Yardstick },
        ShieldNothing = _stated.ShieldNothing,
    };

    /// <summary>Faults under which nothing is analysed.</summary>
    /// <param name="keepGoing">Whether files that cannot be read are left out.</param>
    public IEnumerable<ReadFault> Fatal(bool keepGoing) =>
    [
        .. Settings.Faults, .. List.Faults, .. NoSweeps(keepGoing),
        .. BudgetSection.Outside(Settings, Batch.Sweeps), .. RequirementSection.Outside(Settings, Batch.Sweeps),
        .. NamedBandSection.Empty(Settings, Batch.Sweeps),
        // A file that cannot be read may be that of a specimen named.
        .. List.Faults.IsEmpty && (keepGoing || Unread.IsEmpty) ? _stated.Faults : [],
    ];

    private ReadFault[] NoSweeps(bool keepGoing) =>
        List.Entries.IsEmpty && List.Faults.IsEmpty && (keepGoing || List.Unread.IsEmpty)
            ? [new ReadFault(new DirectoryInfo(Root).Name, null, "the campaign holds no sweeps",
                "put trace files into floor, reference and covered/<lot>/<specimen>, or list them in sweeps.csv")]
            : [];
}
