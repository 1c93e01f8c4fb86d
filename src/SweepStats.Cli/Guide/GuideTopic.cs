using System.Text.RegularExpressions;

namespace SweepStats.Cli.Guide;

/// <summary>A page of the guide, as the program carries it.</summary>
/// <param name="Name">What it is asked for by.</param>
/// <param name="Title">The question that it answers.</param>
/// <param name="Lines">What it says, for a terminal.</param>
internal sealed partial record GuideTopic(string Name, string Title, IReadOnlyList<string> Lines)
{
    // In the order in which a newcomer asks.
    private static readonly string[] Names =
        ["campaign", "report", "numbers", "benches", "files", "lots", "washes", "pulse", "plan", "receiver"];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<GuideTopic> All { get; } = [.. Names.Select(Read)];

    private static GuideTopic Read(string name)
    {
        using Stream page = typeof(GuideTopic).Assembly.GetManifestResourceStream($"guide/{name}.md")
            ?? throw new InvalidOperationException($"The guide has no page {name}.");
        using var reader = new StreamReader(page);
        string[] lines = reader.ReadToEnd().TrimEnd().Split('\n');
        return new GuideTopic(name, Plain(lines[0]),
            [.. lines[1..].Where((line, i) => !IsForPagesOnly(line, lines.ElementAtOrDefault(i + 2))).Select(Plain)]);
    }

    // Pictures, and of a table its head and the rule below that.
    private static bool IsForPagesOnly(string line, string? next) =>
        line.StartsWith("![", StringComparison.Ordinal) || IsRule(line) || (next is not null && IsRule(next));

    private static bool IsRule(string line) => Rule().IsMatch(line);

    // Marks of headings, links, stress and tables are for pages; nobody reads them in a terminal. Code keeps its own.
    private static string Plain(string line) =>
        line.StartsWith("    ", StringComparison.Ordinal) ? line
        : Row().Match(line) is { Success: true } row ? $"  {Unmarked(row.Groups[1].Value)}: {Unmarked(row.Groups[2].Value)}"
        : Unmarked(line);

    private static string Unmarked(string line) => Marks()
        .Replace(Link().Replace(line, "$1"),
        mark => mark.Value is ['`', ..] ? mark.Value.Replace("\\|", "|", StringComparison.Ordinal) : string.Empty);

    [GeneratedRegex(@"^\|( ?-+ ?\|)+$")]
    private static partial Regex Rule();

    [GeneratedRegex(@"^\| (.*?) \| (.*) \|$")]
    private static partial Regex Row();

    [GeneratedRegex(@"\[([^\]]*)\]\([^)]*\)")]
    private static partial Regex Link();

    [GeneratedRegex(@"`[^`]*`|^#+ |\*\*|\*")]
    private static partial Regex Marks();
}
