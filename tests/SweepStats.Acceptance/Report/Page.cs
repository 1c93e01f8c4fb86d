using System.Runtime.CompilerServices;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SweepStats.Report;

namespace SweepStats.Acceptance.Report;

/// <summary>A built report as a test reads it.</summary>
internal sealed class Page
{
    private static readonly Regex Doctype = new("<!DOCTYPE[^>]*>|<meta[^>]*>", RegexOptions.None, TimeSpan.FromSeconds(5));

    // The usual report of a result is built once, however many tests read it.
    private static readonly ConditionalWeakTable<AnalysisResult, Lazy<IReadOnlyList<ReportFile>>> Usual = [];

    public Page(AnalysisResult result, ReportOptions? options = null)
    {
        Files = options is null ? Usual.GetValue(result, r => new(() => ReportBuilder.Build(r, new ReportOptions()))).Value
            : ReportBuilder.Build(result, options);
        Html = Text("index.html");
        // The page is written so that it is also well-formed XML, but for the void meta elements; that finds every unclosed or
        // unescaped part.
        Tree = XDocument.Parse(Doctype.Replace(Html, string.Empty));
    }

    public IReadOnlyList<ReportFile> Files { get; }

    public string Html { get; }

    public XDocument Tree { get; }

    public IEnumerable<ReportFile> Charts => Files.Where(f => f.Path.EndsWith(".svg", StringComparison.Ordinal));

    /// <summary>What a reader sees of the page, without style sheet.</summary>
    public string Words => string.Join(' ',
        Tree.Descendants().Where(e => e.Name.LocalName is not ("style" or "script") && !e.HasElements).Select(e => e.Value));

    public string Text(string path) => Encoding.UTF8.GetString(Files.Single(f => f.Path == path).Content);

    /// <summary>A chart by its name.</summary>
    public XDocument Chart(string name) => XDocument.Parse(Text($"charts/{name}.svg"));

    /// <summary>Texts drawn in a chart; the library breaks none of ours into parts.</summary>
    public IReadOnlyList<string> Labels(string name) =>
        [.. Chart(name).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];
}
