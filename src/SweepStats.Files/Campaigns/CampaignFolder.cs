using SweepStats.Files.Places;
using SweepStats.Storage;

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
            return Missing(folder);
        }

        string root = Path.GetFullPath(folder);
        CampaignSettings settings = SettingsReader.Read(root);
        SweepList list = SweepList.Find(root, settings);
        var store = new RowStore(options.Room);
        SweepBatch batch = SweepBatch.Read(root, list.Entries, new SweepMaker(settings, store), new(options.Threads, progress));
        var parts = new CampaignParts(root, settings, list, batch);
        ImmutableArray<ReadFault> fatal = [.. parts.Fatal(options.KeepGoing)], unread = parts.Unread;
        bool usable = fatal.IsEmpty && (options.KeepGoing || unread.IsEmpty);
        return new CampaignReading
        {
            Campaign = usable ? parts.Campaign(store) : null,
            Plan = parts.Plan(options.Threads),
            Faults = usable ? [] : [.. fatal, .. unread],
            Inputs = parts.Inputs,
            Assumptions = parts.Assumptions,
            LeftOut = usable ? [.. unread.Select(f => f.ToString())] : [],
            LeftOutInBrief = usable ? [.. FaultDigest.Of(unread)] : [],
            Unlisted = list.Unlisted,
        };
    }

    private static CampaignReading Missing(string folder)
    {
        string problem = LostLink.Problem(folder)
            ?? (File.Exists(folder) ? "this is a file, not a folder" : "there is no such folder");
        return new CampaignReading
        {
            Campaign = null,
            Plan = new AnalysisPlan(),
            Faults =
            [new ReadFault(folder, null, problem, "name the folder that holds campaign.toml, floor, reference and covered")],
            Inputs = [],
            Assumptions = [],
            LeftOut = [],
        };
    }
}
