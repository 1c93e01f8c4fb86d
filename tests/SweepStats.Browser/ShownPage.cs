using System.Collections.Concurrent;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using PuppeteerSharp;

namespace SweepStats.Browser;

/// <summary>A page in a window, with what it asked for and complained of.</summary>
internal sealed class ShownPage : IAsyncDisposable
{
    private static readonly Lazy<string> Measure = new(() =>
    {
        using var reader = new StreamReader(typeof(ShownPage).Assembly.GetManifestResourceStream("measure.js")!);
        return reader.ReadToEnd();
    });

    private readonly IPage _page;

    public ShownPage(IPage page)
    {
        _page = page;
        page.Request += (_, asked) => Requests.Enqueue(asked.Request.Url);
        page.Console += (_, said) => Complaints.Enqueue(said.Message.Text);
        page.PageError += (_, error) => Complaints.Enqueue(error.Message);
    }

    /// <summary>Addresses it asked for, its own first.</summary>
    public ConcurrentQueue<string> Requests { get; } = [];

    /// <summary>What it wrote to the console, errors among it.</summary>
    public ConcurrentQueue<string> Complaints { get; } = [];

    /// <summary>What an expression comes to in the page.</summary>
    public Task<T> Read<T>(string expression) => _page.EvaluateExpressionAsync<T>(expression);

    /// <summary>Keys, one after the other, where the focus is.</summary>
    public async Task Press(string selector, params string[] keys)
    {
        await _page.FocusAsync(selector);
        foreach (string key in keys)
        {
            await _page.Keyboard.PressAsync(key);
        }
    }

    /// <summary>
    /// Moves the pointer over a part of an element, from one share of its width to another with the button held; the same share
    /// twice holds none.
    /// </summary>
    public async Task Drag(string selector, double from, double to)
    {
        double[] box =
            await Read<double[]>("(b => [b.left, b.top, b.width, "
                + $"b.height])(document.querySelector({JsonSerializer.Serialize(selector)}).getBoundingClientRect())");
        decimal At(double share) => (decimal)(box[0] + (box[2] * share));
        decimal y = (decimal)(box[1] + (box[3] / 2));
        await _page.Mouse.MoveAsync(At(from), y);
        if (from != to)
        {
            await _page.Mouse.DownAsync();
            await _page.Mouse.MoveAsync(At(to), y);
            await _page.Mouse.UpAsync();
        }
    }

    /// <summary>Clicks on the button of an element that has a name.</summary>
    public Task Click(string within, string name) => _page.EvaluateExpressionAsync(
        $"[...document.querySelectorAll({JsonSerializer.Serialize(within + " button")})].find(b => b.textContent === "
            + $"{JsonSerializer.Serialize(name)}).click()");

    /// <summary>Opens every part that is folded.</summary>
    public Task Unfold() => _page.EvaluateExpressionAsync("document.querySelectorAll('details').forEach(d => d.open = true)");

    /// <summary>Elements that reach beyond the right edge of the window, where the page can be pushed sideways.</summary>
    public Task<string[]> Beyond() => Measured("beyond");

    /// <summary>Texts smaller than so many pixels on the screen, those in pictures as they are drawn.</summary>
    public Task<string[]> Smaller(double pixels) =>
        Measured($"smaller({pixels.ToString(System.Globalization.CultureInfo.InvariantCulture)})");

    /// <summary>Serious and critical faults that an accessibility checker finds.</summary>
    public async Task<string[]> SeriousFaults()
    {
        await _page.EvaluateExpressionAsync(new BundledAxeScriptProvider().GetScript());
        string found = await _page.EvaluateExpressionAsync<string>(
            "axe.run(document, { resultTypes: ['violations'] }).then(r => JSON.stringify(r.violations"
            + ".filter(v => v.impact === 'serious' || v.impact === 'critical').map(v => v.id + ': ' + v.nodes.slice(0, 3).map(n "
            + "=> n.html.slice(0, 160)).join(' | '))))");
        return JsonSerializer.Deserialize<string[]>(found)!;
    }

    /// <summary>Number of A4 pages that it prints to.</summary>
    public async Task<int> PrintedPages()
    {
        byte[] pdf = await _page.PdfDataAsync(new PdfOptions { PreferCSSPageSize = true, PrintBackground = true });
        return Regex.Count(Encoding.Latin1.GetString(pdf), "/Type\\s*/Page[^s]");
    }

    public async ValueTask DisposeAsync() => await _page.CloseAsync();

    private async Task<string[]> Measured(string what) =>
        JsonSerializer.Deserialize<string[]>(
            await _page.EvaluateExpressionAsync<string>($"{Measure.Value} JSON.stringify({what})"))!;
}
