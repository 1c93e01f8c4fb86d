using System.Globalization;
using System.Text;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Places;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Files.Results;

/// <summary>
/// Writes sweeps as a campaign folder that <see cref="CampaignFolder"/> reads back, with sweeps.csv where times, source levels or
/// exclusions are known.
/// </summary>
public static class CampaignWriter
{
    private const string NewFolder = "name a new folder";

    /// <summary>Writes a rehearsed campaign with levels to three decimals, as receivers export them.</summary>
    /// <param name="folder">Where to write; made where missing; all of it stands there at the end, or nothing.</param>
    /// <param name="campaign">
    /// The sweeps. Each one's name is its path within the folder, such as <c>covered/A/A1/p1/s01.csv</c>.
    /// </param>
    /// <param name="settings">Text of campaign.toml.</param>
    /// <param name="truth">Text of truth.csv; null for none.</param>
    /// <param name="waits">Told in a sentence where another run has to end its exchange first.</param>
    /// <returns>Why nothing was written; empty where all was.</returns>
    /// <exception cref="ArgumentException">A sweep's name is no path within the folder, or is there twice.</exception>
    public static ImmutableArray<ReadFault> Write(string folder, Campaign campaign, string settings, string? truth,
        Action<string>? waits = null) => Write(folder, campaign, new Texts(settings, truth), LevelDigits.ThreeDecimals, waits);

    /// <summary>
    /// Writes a campaign with a choice of digits for levels and phases; frequencies are always exact. Levels from the other end
    /// are not written.
    /// </summary>
    /// <inheritdoc cref="Write(string, Campaign, string, string?, Action{string}?)"/>
    public static ImmutableArray<ReadFault> Write(string folder, Campaign campaign, string settings, LevelDigits digits) =>
        Write(folder, campaign, new Texts(settings, null), digits, waits: null);

    private static ImmutableArray<ReadFault> Write(string folder, Campaign campaign, Texts texts, LevelDigits digits,
        Action<string>? waits)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        if (Refusal(folder) is { } refusal)
        {
            return [refusal];
        }

        using var gathered = new GatheredFolder(folder, new Predecessor
        {
            What = "the campaign",
            Elsewhere = NewFolder,
            Objection = existing => Objection(existing, folder),
            Own = _ => [],
            Remove = (old, _) => RemoveEmpty(old),
        });
        string[] paths = [.. campaign.Sweeps.Select(s => PathOf(gathered.Stage, s.Name))];
        if (paths.Distinct(StringComparer.Ordinal).Count() != paths.Length)
        {
            throw new ArgumentException("Two sweeps have the same name.", nameof(campaign));
        }

        try
        {
            Write(gathered, campaign, texts, digits);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw gathered.Told(e);
        }

        gathered.Commit(waits);
        return [];
    }

    // Made-up sweeps among measured ones could not be told apart later.
    private static ReadFault? Refusal(string folder) =>
        LostLink.Of(folder, NewFolder) is { } lost ? lost
        : File.Exists(folder) ? new ReadFault(folder, null, "this is a file, not a folder", NewFolder)
        : Path.GetDirectoryName(Path.GetFullPath(folder)) is null ? NotEmpty(folder)
        : Directory.Exists(folder) ? Objection(folder, folder)
        : null;

    private static void Write(GatheredFolder to, Campaign campaign, Texts texts, LevelDigits digits)
    {
        foreach (Sweep sweep in campaign.Sweeps)
        {
            to.StopIfEnding();
            string path = PathOf(to.Stage, sweep.Name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            using FileStream file = File.Create(path);
            Write(sweep, file, digits);
        }

        File.WriteAllText(Path.Combine(to.Stage, CampaignFolder.SettingsName), texts.Settings, new UTF8Encoding(false));
        if (ManifestCsv.IsNeeded(campaign))
        {
            using FileStream manifest = File.Create(Path.Combine(to.Stage, CampaignFolder.ManifestName));
            ManifestCsv.Write(campaign, manifest);
        }

        if (texts.Truth is not null)
        {
            File.WriteAllText(Path.Combine(to.Stage, CampaignFolder.TruthName), texts.Truth, new UTF8Encoding(false));
        }
    }

    private static ReadFault? Objection(string existing, string shown) =>
        Directory.EnumerateFileSystemEntries(existing).All(entry => HiddenName.IsOurs(Path.GetFileName(entry))) ? null
            : NotEmpty(shown);

    private static ReadFault NotEmpty(string folder) => new(folder, null, "the folder is not empty", NewFolder);

    private static bool RemoveEmpty(string folder)
    {
        bool empty = !Directory.EnumerateFileSystemEntries(folder).Any();
        if (empty)
        {
            Directory.Delete(folder);
        }

        return empty;
    }

    private static string PathOf(string root, string name)
    {
        string full = Path.GetFullPath(Path.Combine(root, name));
        return full.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal)
            && full.EndsWith(".csv", StringComparison.Ordinal)
            ? full
            : throw new ArgumentException($"'{name}' is not the path of a .csv file within the campaign.", nameof(name));
    }

    private static void Write(Sweep sweep, Stream to, LevelDigits digits)
    {
        using var text = new StreamWriter(to, new UTF8Encoding(false), 1 << 15) { NewLine = "\n" };
        text.Write(sweep.Scale switch
        {
            LevelScale.DecibelMilliwatts => "frequency_hz,level_dbm",
            LevelScale.DecibelRatio => "frequency_hz,level_db",
            _ => "frequency_hz,Level (dBµV/m)",
        });
        text.WriteLine(sweep.Phases.IsEmpty ? "" : ",phase_deg");
        string format = digits == LevelDigits.All ? "R" : "F3";
        for (int i = 0; i < sweep.Levels.Length; i++)
        {
            text.Write(sweep.Grid[i].Value.ToString("R", CultureInfo.InvariantCulture));
            text.Write(',');
            text.Write(sweep.Levels[i].ToString(format, CultureInfo.InvariantCulture));
            text.WriteLine(sweep.Phases.IsEmpty ? "" : "," + sweep.Phases[i].ToString(format, CultureInfo.InvariantCulture));
        }
    }

    /// <summary>What stands beside the sweeps: campaign.toml, and truth.csv where it is known.</summary>
    private sealed record Texts(string Settings, string? Truth);
}
