namespace SweepStats.Studies.Benches;

/// <summary>A table of a page.</summary>
internal sealed class PageTable
{
    private readonly List<string> _lines;

    public PageTable(params string[] titles) => _lines = [Line(titles), Line([.. titles.Select(_ => "---")])];

    public string Text => string.Join('\n', _lines);

    public void Add(string[] cells) => _lines.Add(Line(cells));

    private static string Line(string[] cells) => $"| {string.Join(" | ", cells)} |";
}
