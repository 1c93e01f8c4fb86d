using System.Text;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Campaigns.Settings;
using SweepStats.Files.Places;
using SweepStats.Files.Proposals;

namespace SweepStats.Files.Results;

/// <summary>Writes a campaign folder to fill in.</summary>
public static class CampaignTemplate
{
    private const string Manifest =
        """
        file,role,lot,specimen,placement,column,taken_at,source_dbm,exclude
        # One row a sweep; rows that start with '#' are remarks. As long as no row is filled in, the folders say the role:
        # floor/, reference/, covered/<lot>/<specimen>/<placement>/, linearity/, plate/.
        # Columns of your own, such as price_eur, go behind these once [choice] or [lots] in campaign.toml names them;
        # one row of each specimen is enough.
        # floor/f01.csv,floor,,,,,2026-03-05T09:00:00,,
        # reference/r01.csv,reference,,,,,2026-03-05T09:10:00,10,
        # covered/autumn/a1-p1.csv,covered,autumn,A1,p1,,2026-03-05T09:20:00,10,
        # covered/autumn/a1-p2.csv,covered,autumn,A1,p2,Trace 2,2026-03-05T09:30:00,10,
        # covered/autumn/a1-p3.csv,covered,autumn,A1,p3,,2026-03-05T09:40:00,10,door stood open
        # reference/r02.csv,reference,,,,,2026-03-05T09:50:00,10,
        # floor/f02.csv,floor,,,,,2026-03-05T10:00:00,,

        """;

    private static readonly string[] Folders = ["floor", "reference", "covered"];

    /// <summary>Writes campaign.toml and sweeps.csv, and makes the folders floor, reference and covered.</summary>
    /// <param name="folder">Where; made where missing.</param>
    /// <exception cref="IOException">One of the files is already there; nothing is written then.</exception>
    public static void Write(string folder)
    {
        RefuseOverwriting(folder);
        var made = new MadeFolders();
        try
        {
            MakeFolders(made, folder);
            Write(folder, SettingsTable.Template(), Manifest);
        }
        catch
        {
            made.Undo();
            throw;
        }
    }

    private static void MakeFolders(MadeFolders made, string folder)
    {
        try
        {
            made.Make(folder);
            foreach (string name in Folders)
            {
                made.Make(Path.Combine(folder, name));
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw WriteFault.Of(e, folder, "the campaign", "name another folder");
        }
    }

    /// <summary>
    /// Writes campaign.toml and sweeps.csv for the trace files that a folder holds. None of them is moved or changed.
    /// </summary>
    /// <param name="folder">The folder.</param>
    /// <param name="proposal">What it may be.</param>
    /// <returns>sweeps.csv as it was written.</returns>
    /// <exception cref="IOException">One of the files is already there; nothing is written then.</exception>
    public static ProposedManifest Write(string folder, FolderProposal proposal)
    {
        RefuseOverwriting(folder);
        var manifest = new ProposedManifest(proposal);
        Write(folder, ProposedSettings.Of(SettingsTable.Template(), proposal), manifest.Text);
        return manifest;
    }

    /// <summary>Refuses a folder that is a campaign already.</summary>
    /// <param name="folder">The folder.</param>
    /// <exception cref="IOException">campaign.toml or sweeps.csv is already there.</exception>
    public static void RefuseOverwriting(string folder)
    {
        if (LostLink.Of(folder, "name another folder") is { } lost)
        {
            throw new IOException(lost.ToString());
        }

        if (File.Exists(folder))
        {
            throw new IOException($"'{folder}' is a file, not a folder. Name a folder.");
        }

        if (IsLeftAlone(folder))
        {
            throw new IOException($"'{Path.Combine(folder, CampaignFolder.ManifestName)}' was left by an earlier init that was "
                + "killed before it had written campaign.toml too. Remove it and start again.");
        }

        foreach (string path in new[] { CampaignFolder.SettingsName,
            CampaignFolder.ManifestName }.Select(n => Path.Combine(folder, n)).Where(Path.Exists))
        {
            throw new IOException($"'{path}' is already there. Name a new folder; this one is a campaign.");
        }
    }

    // A run killed between its last two acts leaves the manifest alone, and beside it the settings as it had gathered them.
    private static bool IsLeftAlone(string folder) => File.Exists(Path.Combine(folder, CampaignFolder.ManifestName))
        && !Path.Exists(Path.Combine(folder, CampaignFolder.SettingsName))
        && new Leftovers(folder, new HiddenName(CampaignFolder.SettingsName)).AreThere();

    private static void Write(string folder, string settings, string manifest)
    {
        try
        {
            using GatheredFile settingsFile = Gathered(folder, CampaignFolder.SettingsName, settings),
                manifestFile = Gathered(folder, CampaignFolder.ManifestName, manifest);
            GatheredFile.CommitBoth(manifestFile, settingsFile);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw WriteFault.Of(e, folder, "the campaign", "name another folder");
        }
    }

    private static GatheredFile Gathered(string folder, string name, string text)
    {
        var file = new GatheredFile(Path.Combine(folder, name));
        try
        {
            file.Content.Write(new UTF8Encoding(false).GetBytes(text));
            file.Finish();
            return file;
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }
}
