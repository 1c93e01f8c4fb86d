using System.Text.RegularExpressions;

namespace SweepStats.Cli.Guide;

/// <summary>A page of the guide, as the program carries it.</summary>
/// <param name="Name">What it is asked for by.</param>
/// <param name="Title">The question that it answers.</param>
/// <param name="Lines">What it says, for a terminal.</param>
internal sealed partial record GuideTopic(string Name, string Title, IReadOnlyList<string> Lines)
{
    // In the order in which a newcomer asks.
    private static readonly string[] Names = ["campaign", "report", "numbers", "benches", "files", "lots", "washes", "pulse", "plan", "receiver"];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<GuideTopic> All { get; } = [.. Names.Select(Read)];

    private static GuideTopic Read(string name)
    {
        using Stream page = typeof(GuideTopic).Assembly.GetManifestResourceStream($"guide/{name}.md")
            ?? throw new InvalidOperationException($"The guide has no page {name}.");
        using var reader = new StreamReader(page);
        string[] lines = [.. reader.ReadToEnd().TrimEnd().Split('\n').Where(line => !line.StartsWith("![", StringComparison.Ordinal)).Select(Plain)];
        return new GuideTopic(name, lines[0], lines[1..]);
    }

    // Marks of headings, links and stress are for pages; nobody reads them in a terminal.
    private static string Plain(string line) => line.StartsWith("    ", StringComparison.Ordinal) ? line : Marks().Replace(Link().Replace(line, "$1"), string.Empty);

    [GeneratedRegex(@"\[([^\]]*)\]\([^)]*\)")]
    private static partial Regex Link();

    [GeneratedRegex(@"^#+ |\*\*|(?<!\*)\*(?!\*)")]
    private static partial Regex Marks();
}
