using System.Globalization;
using System.Text;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>Writes sweeps as a campaign folder that <see cref="CampaignFolder"/> reads back.</summary>
public static class CampaignWriter
{
    /// <summary>Writes a campaign. Each sweep's name is its path within the folder, such as <c>covered/A/A1/p1/s01.csv</c>.</summary>
    /// <param name="campaign">The sweeps.</param>
    /// <param name="folder">Where to write; made where missing. Files of the same names are replaced.</param>
    /// <param name="settings">Text of campaign.toml.</param>
    /// <param name="digits">Digits of the levels; frequencies are always exact.</param>
    /// <exception cref="ArgumentException">A sweep's name is no path within the folder, or is there twice.</exception>
    public static void Write(Campaign campaign, string folder, string settings, LevelDigits digits = LevelDigits.ThreeDecimals)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        string root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        string[] paths = [.. campaign.Sweeps.Select(s => PathOf(root, s.Name))];
        if (paths.Distinct(StringComparer.Ordinal).Count() != paths.Length)
        {
            throw new ArgumentException("Two sweeps have the same name.", nameof(campaign));
        }

        Directory.CreateDirectory(root);
        for (int i = 0; i < paths.Length; i++)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(paths[i])!);
            using FileStream file = File.Create(paths[i]);
            Write(campaign.Sweeps[i], file, digits);
        }

        File.WriteAllText(Path.Combine(root, CampaignFolder.SettingsName), settings, new UTF8Encoding(false));
    }

    private static string PathOf(string root, string name)
    {
        string full = Path.GetFullPath(Path.Combine(root, name));
        return full.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal) && full.EndsWith(".csv", StringComparison.Ordinal)
            ? full
            : throw new ArgumentException($"'{name}' is not the path of a .csv file within the campaign.", nameof(name));
    }

    private static void Write(Sweep sweep, Stream to, LevelDigits digits)
    {
        using var text = new StreamWriter(to, new UTF8Encoding(false), 1 << 15) { NewLine = "\n" };
        text.WriteLine(sweep.Scale == LevelScale.DecibelMilliwatts ? "frequency_hz,level_dbm" : "frequency_hz,level_db");
        string format = digits == LevelDigits.All ? "R" : "F3";
        for (int i = 0; i < sweep.Levels.Length; i++)
        {
            text.Write(sweep.Grid[i].Value.ToString("R", CultureInfo.InvariantCulture));
            text.Write(',');
            text.WriteLine(sweep.Levels[i].ToString(format, CultureInfo.InvariantCulture));
        }
    }
}
