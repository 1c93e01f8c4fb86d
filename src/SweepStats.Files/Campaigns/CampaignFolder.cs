using System.Collections.Immutable;
using SweepStats.Files.Places;
using SweepStats.Storage;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// Reads a campaign folder: campaign.toml, sweeps.csv or the folders' names, and every trace file they lead to.
/// </summary>
public static class CampaignFolder
{
    /// <summary>Name of the settings file.</summary>
    public const string SettingsName = "campaign.toml";

    /// <summary>Name of the manifest.</summary>
    public const string ManifestName = "sweeps.csv";

    /// <summary>Name of the file that tells what is true of a rehearsed campaign; it is passed over.</summary>
    public const string TruthName = "truth.csv";

    /// <summary>
    /// Reads a campaign. Everything wrong with it is in the faults of the answer; nothing is thrown for bad content.
    /// </summary>
    /// <param name="folder">The campaign's folder.</param>
    /// <param name="options">How to read it.</param>
    /// <param name="progress">Told the share of files read, 0 to 1.</param>
    public static CampaignReading Read(string folder, CampaignReadOptions options, IProgress<double>? progress)
    {
        ArgumentNullException.ThrowIfNull(options);
        if (!Directory.Exists(folder))
        {
            string problem = LostLink.Problem(folder)
                ?? (File.Exists(folder) ? "this is a file, not a folder" : "there is no such folder");
            var missing =
                new ReadFault(folder, null, problem, "name the folder that holds campaign.toml, floor, reference and covered");
            return new CampaignReading
            {
                Campaign = null,
                Plan = new AnalysisPlan(),
                Faults = [missing],
                Inputs = [],
                Assumptions = [],
                LeftOut = [],
            };
        }

        string root = Path.GetFullPath(folder);
        CampaignSettings settings = SettingsReader.Read(root);
        SweepList list = SweepList.Find(root, settings);
        var store = new RowStore(options.Room);
        SweepBatch batch = SweepBatch.Read(root, list.Entries, new SweepMaker(settings, store), new(options.Threads, progress));
        ImmutableArray<ReadFault> unread = [.. list.Unread, .. batch.Faults];
        var stated = new StatedSpecimens(settings, batch.Sweeps);
        ImmutableArray<ReadFault> fatal =
        [
            .. settings.Faults, .. list.Faults, .. NoSweeps(root, list, options),
            .. BudgetSection.Outside(settings, batch.Sweeps), .. RequirementSection.Outside(settings, batch.Sweeps),
            .. NamedBandSection.Empty(settings, batch.Sweeps),
            // A file that cannot be read may be that of a specimen named.
            .. list.Faults.IsEmpty && (options.KeepGoing || unread.IsEmpty) ? stated.Faults : [],
        ];
        bool usable = fatal.IsEmpty && (options.KeepGoing || unread.IsEmpty);
        return new CampaignReading
        {
            Campaign = usable ? Of(settings, root, batch.Sweeps) with
            {
                Properties = list.Properties,
                Store = store,
                Unread = [.. UnreadSweeps.Of(list, batch)],
            } : null,
            Plan = settings.Plan with
            {
                Threads = Math.Max(1, options.Threads),
                Choice = settings.Plan.Choice with { Yardstick = stated.Yardstick },
                ShieldNothing = stated.ShieldNothing,
            },
            Faults = usable ? [] : [.. fatal, .. unread],
            Inputs = [.. settings.Inputs.Concat(list.Inputs).Concat(batch.Inputs).OrderBy(i => i.Path, NaturalOrder.Instance)],
            Assumptions =
                [.. settings.Assumptions, .. list.Assumptions, .. batch.Assumptions, .. UnusedInput.Of(settings, list, batch)],
            LeftOut = usable ? [.. unread.Select(f => f.ToString())] : [],
            LeftOutInBrief = usable ? [.. FaultDigest.Of(unread)] : [],
        };
    }

    private static Campaign Of(CampaignSettings settings, string root, ImmutableArray<Sweep> sweeps) =>
        new(settings.Title ?? new DirectoryInfo(root).Name, sweeps)
        {
            Rehearsed = settings.Rehearsed,
            Identity = settings.Identity,
        };

    private static IEnumerable<ReadFault> NoSweeps(string root, SweepList list, CampaignReadOptions options) =>
        list.Entries.IsEmpty && list.Faults.IsEmpty && (options.KeepGoing || list.Unread.IsEmpty)
            ? [new ReadFault(new DirectoryInfo(root).Name, null, "the campaign holds no sweeps",
                "put trace files into floor, reference and covered/<lot>/<specimen>, or list them in sweeps.csv")]
            : [];
}
