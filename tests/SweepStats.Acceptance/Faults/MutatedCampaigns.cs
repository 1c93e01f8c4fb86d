using System.Text;
using System.Text.RegularExpressions;
using SweepStats.Acceptance.Commands;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>
/// campaign.toml and sweeps.csv as init writes them, filled in and spoilt: refused in a line or two or read, never a defect.
/// </summary>
public sealed partial class MutatedCampaigns
{
    private const string Manifest =
        """
        file,role,lot,specimen,placement,column,taken_at,source_dbm,exclude,price_eur,washes,supplier
        floor/f1.csv,floor,,,,,2026-03-05T09:00:00,,,,,
        floor/f2.csv,floor,,,,,2026-03-05T10:00:00,,"door, open",,,
        reference/r1.csv,reference,,,,,2026-03-05T09:10:00,10,,,,
        reference/r2.csv,reference,,,,,2026-03-05T09:50:00,10,,,,
        covered/A/A1/c1.csv,covered,autumn,A1,p1,,2026-03-05T09:20:00,10,,5.5,0,north
        covered/A/A1/c2.csv,covered,autumn,A1,p2,,2026-03-05T09:30:00,10,,5.5,0,north
        covered/B/B1/c1.csv,covered,spring,B1,p1,,2026-03-05T09:40:00,10,,7,10,south
        covered/C/C1/c1.csv,covered,spring,C1,p1,,2026-03-05T09:45:00,10,,7,20,south

        """;

    private static readonly string[] Traces = ["floor/f1.csv", "floor/f2.csv", "reference/r1.csv", "reference/r2.csv",
        "covered/A/A1/c1.csv", "covered/A/A1/c2.csv", "covered/B/B1/c1.csv", "covered/C/C1/c1.csv"];

    [Theory]
    [InlineData("campaign.toml", 10_000, 5)]
    [InlineData("sweeps.csv", 10_000, 6)]
    public void TheyAreReadOrRefused(string spoilt, int all, int seed)
    {
        using ScratchFolder campaign = Filled(out string settings);
        var dice = new Random(seed);
        var mutated = new MutatedText(dice);
        var attacks = new Attacks();
        string[] commands = ["check", "check", "lots", "choose", "field", "plan"];
        for (int i = 0; i < Attacks.Of(all); i++)
        {
            string[] words = [commands[dice.Next(commands.Length)], campaign.Path,
                .. dice.Next(4) == 0 ? ["--keep-going"] : Array.Empty<string>()];
            byte[] text = mutated.Of(spoilt == "sweeps.csv" ? Manifest : settings);
            campaign.With(spoilt, text);
            attacks.Try(Encoding.UTF8.GetString(text), words);
        }

        attacks.Hold(spoilt);
    }

    private static ScratchFolder Filled(out string settings)
    {
        var campaign = new ScratchFolder();
        Shell.Run("init", Path.Combine(campaign.Path, "new"));
        settings = Uncommented().Replace(File.ReadAllText(Path.Combine(campaign.Path, "new/campaign.toml")), "")
            .Replace("file = \"limits.csv\"", "", StringComparison.Ordinal)
            .Replace("declared_dbm", "# declared_dbm", StringComparison.Ordinal)
            .Replace("frequency_unit = \"MHz\"\n", "frequency_unit = \"Hz\"\n", StringComparison.Ordinal)
            .Replace("433.9e6", "400e6", StringComparison.Ordinal)
            .Replace("\"covered/**/*.txt\"", "\"covered/**/*.csv\"", StringComparison.Ordinal)
            .Replace("level_columns = [\"3\"]\nphase_column", "level_columns = [\"2\"]\n# phase_column",
            StringComparison.Ordinal);
        Directory.Delete(Path.Combine(campaign.Path, "new"), recursive: true);
        foreach ((string file, int i) in Traces.Select((file, i) => (file, i)))
        {
            double level = file.StartsWith("floor", StringComparison.Ordinal) ? -100
                : file.StartsWith("covered", StringComparison.Ordinal) ? -70 : -30;
            campaign.With(file, "frequency_hz,level_dbm\n"
                + string.Concat(Enumerable.Range(1, 12)
                    .Select(k => FormattableString.Invariant($"{k * 50}000000,{level + (0.1 * ((i * k) % 7))}\n"))));
        }

        campaign.With("campaign.toml", settings).With("sweeps.csv", Manifest);
        (int code, _, string error) = Shell.Run("check", campaign.Path);
        Assert.True(code is 0 or 1, "Before it is spoilt the campaign is refused: " + error);
        return campaign;
    }

    // Lines that start with one '#' are settings, as the template says.
    [GeneratedRegex("^# (?!#)", RegexOptions.Multiline)]
    private static partial Regex Uncommented();
}
