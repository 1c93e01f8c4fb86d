using System.Globalization;
using System.Text.RegularExpressions;
using SweepStats.Acceptance;
using Xunit;

namespace SweepStats.Browser;

/// <summary>What the script of the page adds: values at a frequency, a part of the band, sorted tables.</summary>
public sealed partial class ScriptTests(OpenBrowser browser) : IClassFixture<OpenBrowser>
{
    private const string Slider = "figure.read input";
    private const string Said = "document.querySelector('figure.read output').textContent";
    private const string Broad = "figure.read svg.broad";
    private const string Drawn = "document.querySelectorAll('figure.read .view').length";

    private static string Folder { get; } = Path.Combine(Repository.Root, "reports/receiver-cabin-curtain");

    private static string Demo { get; } = Path.Combine(Folder, "index.html");

    [BrowserTheory]
    [InlineData(1000)]
    [InlineData(360)]
    public async Task ArrowKeysReadTheValuesOfTheTable(int width)
    {
        await using ShownPage page = await browser.Show(Demo, width);
        await page.Press(Slider, "Home", "ArrowRight", "ArrowRight", "ArrowRight");
        string said = await page.Read<string>(Said);
        Match read = Reading().Match(said);
        Assert.True(read.Success, said);
        string[][] table = [.. File.ReadLines(Path.Combine(Folder, "shielding.csv")).Select(line => line.Split(','))];
        int Column(string name) => Array.IndexOf(table[0], name);
        string[] names = read.Groups["name"].Value.Split('/');
        string[] row = table.Where(r => r[Column("lot")] == names[0] && r[Column("specimen")] == names[1]).ElementAt(3);
        Assert.Equal(Number(row[Column("frequency_hz")]) / 1e6, Number(read.Groups["mhz"].Value), 0.001);
        Assert.Equal(Number(row[Column("se_db")]), Number(read.Groups["value"].Value), 0.0501);
        Assert.Equal(said, await page.Read<string>($"document.querySelector('{Slider}').getAttribute('aria-valuetext')"));
        Assert.Empty(page.Complaints);
    }

    [BrowserTheory]
    [InlineData(0.5)]
    [InlineData(0.9)]
    public async Task ThePointerReadsWhereItStands(double share)
    {
        await using ShownPage page = await browser.Show(Demo, 1000);
        await page.Drag(Broad, share, share);
        double mhz = Number(Frequency().Match(await page.Read<string>(Said)).Groups[1].Value);
        // 36 of 720 units lie left of the axis and 10 right of it; the grid is logarithmic.
        double at = ((share * 720) - 36) / (720 - 36 - 10);
        Assert.InRange(mhz, 30 * Math.Pow(1000 / 30.0, at - 0.02), 30 * Math.Pow(1000 / 30.0, at + 0.02));
    }

    [BrowserTheory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task APartOfTheBandIsDrawnByItselfAndTheWholeComesBack(bool dark)
    {
        await using ShownPage page = await browser.Show(Demo, 1000, dark);
        string whole = await page.Read<string>($"document.querySelector('{Broad}').innerHTML");
        await page.Drag(Broad, 0.4, 0.6);
        Assert.Equal(2, await page.Read<int>(Drawn));
        string[] ends =
            await page.Read<string[]>($"[...document.querySelectorAll('{Broad} .view text')].map(t => t.textContent)");
        Assert.InRange(Number(ends[0].Split(' ')[0]), 108, 115);
        Assert.InRange(Number(ends[2].Split(' ')[0]), 228, 243);
        int[] places = await page.Read<int[]>($"(s => [+s.min, +s.value, +s.max])(document.querySelector('{Slider}'))");
        Assert.InRange(places[1], places[0], places[2]);
        Assert.Empty(await page.SeriousFaults());
        await page.Click(".reader", "Whole band");
        Assert.Equal(0, await page.Read<int>(Drawn));
        Assert.Equal(Visible(whole), Visible(await page.Read<string>($"document.querySelector('{Broad}').innerHTML")));
        Assert.Empty(page.Complaints);
    }

    [BrowserTheory]
    [InlineData("Everywhere at least")]
    [InlineData("Specimen")]
    public async Task ATableIsSortedByTheHeadOfAColumn(string column)
    {
        await using ShownPage page = await browser.Show(Demo, 1000);
        string index = $"[...document.querySelectorAll('.cards thead th')].findIndex(th => th.textContent === '{column}')";
        string cells = $"(i => [...document.querySelectorAll('.cards tbody tr')].map(r => r.cells[i].textContent))({index})";
        string sorted = $"document.querySelectorAll('.cards thead th')[{index}].getAttribute('aria-sort')";
        string[] before = await page.Read<string[]>(cells);
        await page.Click(".cards", column);
        Assert.Equal("ascending", await page.Read<string>(sorted));
        string[] up = await page.Read<string[]>(cells);
        await page.Click(".cards", column);
        Assert.Equal("descending", await page.Read<string>(sorted));
        string[] down = await page.Read<string[]>(cells);
        Assert.Equal(before.Order(StringComparer.Ordinal), up);
        Assert.Equal(before.OrderDescending(StringComparer.Ordinal), down);
        Assert.Equal(0,
            await page.Read<int>("[...document.querySelectorAll('.cards thead th')].filter(t => t.textContent === 'Over "
                + "frequency' && t.querySelector('button')).length"));
    }

    [BrowserTheory]
    [InlineData(1000)]
    public async Task WithoutScriptNothingIsMissing(int width)
    {
        await using ShownPage with = await browser.Show(Demo, width);
        await using ShownPage without = await browser.Show(Demo, width, script: false);
        const string Words =
            "[...document.querySelectorAll('p, th, td, li, dd, figcaption, svg text')].map(e => e.textContent.trim()).join('|')";
        Assert.Equal(0, await without.Read<int>("document.querySelectorAll('.reader, .sort').length"));
        Assert.NotEqual(0, await with.Read<int>("document.querySelectorAll('.reader').length"));
        Assert.Equal(await with.Read<string>(Words), await without.Read<string>(Words));
    }

    [BrowserTheory]
    [InlineData(360)]
    public async Task OnATelephoneNothingOfTheSheetsIsPushedSideways(int width)
    {
        await using ShownPage page = await browser.Show(Demo, width);
        Assert.Empty(await page.Read<string[]>(
            "[...document.querySelectorAll('.sheet figure, .sheet .table')].filter(e => e.scrollWidth > e.clientWidth + "
                + "1).map(e => e.className + ' ' + e.scrollWidth)"));
        Assert.Equal("Requirement",
            await page.Read<string>(
                "getComputedStyle(document.querySelector('.cards td:nth-child(3)'), '::before').content.replaceAll('\"', '')"));
    }

    [BrowserTheory]
    [InlineData(1000)]
    public async Task PaperShowsTheWholeWhateverWasLookedAt(int width)
    {
        await using ShownPage page = await browser.Show(Demo, width);
        await page.Unfold();
        const string Captions = "[...document.querySelectorAll('.multiples figcaption')].map(c => c.textContent)";
        string[] names = await page.Read<string[]>(Captions);
        await page.Click(".reader", "Zoom in");
        await page.Click("details .reader", "Zoom in");
        Assert.NotEqual(names, await page.Read<string[]>(Captions));
        Assert.NotEqual(0, await page.Read<int>("document.querySelectorAll('.multiples .view').length"));
        await page.PrintedPages();
        Assert.Equal(0, await page.Read<int>("document.querySelectorAll('.view').length"));
        Assert.Equal(names, await page.Read<string[]>(Captions));
    }

    // Marks of the pointer and emptied style attributes are no part of the picture.
    private static string Visible(string drawing) => Leftovers().Replace(drawing, string.Empty);

    private static double Number(string text) => double.Parse(text.Replace('−', '-'), CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<mhz>[\d.]+) MHz\. (?<name>[^:]+): (?<value>[\d.]+)"
        + @" dB \([\d.]+ to [\d.]+ dB\); 12 specimens: [\d.]+ to [\d.]+ dB; required: 35 dB$")]
    private static partial Regex Reading();

    [GeneratedRegex(@"^([\d.]+) MHz")]
    private static partial Regex Frequency();

    [GeneratedRegex("<path class=\"cursor\"[^>]*></path>| style=\"\"")]
    private static partial Regex Leftovers();
}
