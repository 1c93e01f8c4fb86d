using SweepStats.Files.Campaigns;
using SweepStats.Files.Campaigns.Settings;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>What the table of settings states holds of the reader, of the file that init writes and of the guide.</summary>
public sealed class SettingsTableTests : IDisposable
{
    private const string Page = "src/SweepStats.Cli/Guide/campaign.md";
    private const string Head = "| section | states |\n| --- | --- |\n";

    private readonly ScratchFolder _folder = new();

    public static IEnumerable<object[]> Keys =>
        from section in SettingsTable.Sections from row in section.Settings select new object[] { section.Name, row.Key };

    public void Dispose() => _folder.Dispose();

    // No setting takes a bare date, so whoever reads the key refuses it.
    [Theory]
    [MemberData(nameof(Keys))]
    public void EveryKeyOfTheTableIsRead(string section, string key)
    {
        bool isRepeated = SettingsTable.Sections.Single(s => s.Name == section).IsRepeated;
        string heading = section.Length == 0 ? "" : isRepeated ? $"[[{section}]]" : $"[{section}]";
        _folder.With("campaign.toml", $"{heading}\n{key} = 1979-05-27\n");
        Assert.Contains(SettingsReader.Read(_folder.Path).Faults, f => f.Line == 2
            && f.Problem.Contains(key, StringComparison.Ordinal)
            && !f.Problem.StartsWith("there is no key", StringComparison.Ordinal));
    }

    // level_column is read for campaigns of earlier versions; level_columns is what people are told of.
    [Fact]
    public void EveryKeyIsToldOfInTheFileThatInitWrites() => Assert.Equal(["level_column"],
        from section in SettingsTable.Sections
        from row in section.Settings
        where !System.Text.RegularExpressions.Regex.IsMatch(section.Template(), $@"\b{row.Key}\b")
        select row.Key);

    [Fact]
    public void TheGuideSaysWhatTheTableSays()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, Page));
        int start = page.IndexOf(Head, StringComparison.Ordinal) + Head.Length;
        int end = page.IndexOf("\n\n", start, StringComparison.Ordinal);
        string[] named = [.. page[start..end].Split('\n').Select(Named)];
        IEnumerable<string> rows = SettingsTable.Sections.Select(s => s.Guide).OfType<string>()
            .OrderBy(row => Array.IndexOf(named, Named(row)) is >= 0 and int place ? place : named.Length);
        string renewed = page[..start] + string.Join('\n', rows) + page[end..];
        string beside = Path.Combine(AppContext.BaseDirectory, "campaign.md");
        File.WriteAllText(beside, renewed);
        Assert.True(renewed == page, $"Read what changed in {beside}, then copy it to {Page}.");
    }

    private static string Named(string row) => row.Split('|')[1];
}
