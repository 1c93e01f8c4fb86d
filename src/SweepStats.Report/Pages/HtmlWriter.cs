using System.Buffers;
using System.Text;
using SweepStats.Report.Text;

namespace SweepStats.Report.Pages;

/// <summary>Writes HTML in UTF-8 with everything escaped. Only drawings that we made ourselves go in as they are.</summary>
internal sealed class HtmlWriter
{
    // A figure with its unit stays in one line.
    private const int Unbroken = 14;

    private const string Special = "&<>\"'";

    private readonly ArrayBufferWriter<byte> _page = new();
    private readonly Stack<string> _open = new();
    private readonly List<FoldedSection> _folded = [];

    /// <summary>The sections that were folded, in order.</summary>
    public IReadOnlyList<FoldedSection> Folded => _folded;

    /// <summary>Opens an element; close it with <see cref="Close"/>.</summary>
    public HtmlWriter Open(string name, params ReadOnlySpan<Attr> attributes)
    {
        Put("<");
        Put(name);
        foreach ((string attribute, string value) in attributes)
        {
            Put(" ");
            Put(attribute);
            Put("=\"");
            Put(Escaped(value));
            Put("\"");
        }

        Put(">");
        _open.Push(name);
        return this;
    }

    /// <summary>Closes the element opened last.</summary>
    public HtmlWriter Close()
    {
        Put("</");
        Put(_open.Pop());
        Put(">\n");
        return this;
    }

    /// <summary>An element that holds only text.</summary>
    public HtmlWriter Element(string name, string text, params ReadOnlySpan<Attr> attributes) =>
        Open(name, attributes).Text(text).Close();

    /// <summary>Text, escaped and made harmless.</summary>
    public HtmlWriter Text(string text)
    {
        Put(Escaped(text));
        return this;
    }

    /// <summary>Markup of our own making.</summary>
    public HtmlWriter Drawing(string markup)
    {
        Put(markup);
        return this;
    }

    /// <summary>The same, in UTF-8.</summary>
    public HtmlWriter Drawing(ReadOnlySpan<byte> markup)
    {
        _page.Write(markup);
        return this;
    }

    /// <summary>A paragraph.</summary>
    public HtmlWriter Paragraph(string text) => Element("p", text);

    /// <summary>A section with its heading; close it with <see cref="Close"/>.</summary>
    public HtmlWriter Section(string id, string heading) =>
        Open("section", new Attr("aria-labelledby", id)).Element("h2", heading, new Attr("id", id));

    /// <summary>A section that is folded on screen and open in print; close it with one <see cref="Close"/>.</summary>
    public HtmlWriter Fold(string id, string heading)
    {
        Open("section", new Attr("aria-labelledby", id)).Open("details").Open("summary")
            .Element("h2", heading, new Attr("id", id)).Close();
        _folded.Add(new FoldedSection(id, heading));
        // Both end together, so that whoever writes the section need not know that it is folded.
        string inner = _open.Pop();
        _open.Push($"{inner}></{_open.Pop()}");
        return this;
    }

    /// <summary>A list of sentences.</summary>
    public HtmlWriter List(IEnumerable<string> items)
    {
        Open("ul");
        foreach (string item in items)
        {
            Element("li", item);
        }

        return Close();
    }

    /// <summary>A table whose columns and rows have headers that a screen reader can name.</summary>
    /// <param name="caption">What it lists.</param>
    /// <param name="columns">Column headers.</param>
    /// <param name="rows">Cells; the first of a row is its header.</param>
    /// <param name="printed">So many rows are printed; the others are for the screen alone, in a frame that scrolls.</param>
    public HtmlWriter Table(string caption, IEnumerable<string> columns, IEnumerable<IReadOnlyList<string>> rows,
        int printed = int.MaxValue)
    {
        TableFrame(caption).Open("table").Element("caption", caption);
        TableHead(columns).Open("tbody");
        foreach ((int place, IReadOnlyList<string> row) in rows.Index())
        {
            (place < printed ? Open("tr") : Open("tr", new Attr("class", "more")))
                .Element("th", row[0], new Attr("scope", "row"));
            foreach (string cell in row.Skip(1))
            {
                if (cell.Length <= Unbroken)
                {
                    Element("td", cell, new Attr("class", "short"));
                }
                else
                {
                    Element("td", cell);
                }
            }

            Close();
        }

        return Close().Close().Close();
    }

    /// <summary>
    /// Starts a picture of ours with what a person who cannot see it should know; close it with <see cref="Close"/>.
    /// </summary>
    /// <param name="kind">Class in the style sheet.</param>
    /// <param name="width">Width.</param>
    /// <param name="height">Height.</param>
    /// <param name="shows">What it shows.</param>
    /// <param name="scales">Where values lie in it, for the script of the page; null where that reads none.</param>
    public HtmlWriter Picture(string kind, double width, double height, string shows, string? scales = null)
    {
        string box = FormattableString.Invariant($"0 0 {width:0.#} {height:0.#}");
        Attr[] always = [new("class", kind), new("viewBox", box), new("role", "img"), new("aria-label", shows)];
        return Open("svg", scales is null ? always : [.. always, new Attr("data-plot", scales)]);
    }

    /// <summary>A frame in which a wide table scrolls by itself; close it with <see cref="Close"/>.</summary>
    public HtmlWriter TableFrame(string caption) =>
        Open("div", new Attr("class", "table"), new Attr("role", "region"),
            new Attr("tabindex", "0"), new Attr("aria-label", caption));

    /// <summary>The head of a table.</summary>
    public HtmlWriter TableHead(IEnumerable<string> columns)
    {
        Open("thead").Open("tr");
        foreach (string column in columns)
        {
            Element("th", column, new Attr("scope", "col"));
        }

        return Close().Close();
    }

    /// <summary>What was written, UTF-8.</summary>
    public byte[] ToArray() => _page.WrittenSpan.ToArray();

    private static string Escaped(string text)
    {
        string plain = PlainText.Of(text);
        return plain.AsSpan().IndexOfAny(Special) < 0 ? plain : plain
            .Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal)
            .Replace("\"", "&quot;", StringComparison.Ordinal).Replace("'", "&#39;", StringComparison.Ordinal);
    }

    private void Put(string text) => Encoding.UTF8.GetBytes(text, _page);
}
