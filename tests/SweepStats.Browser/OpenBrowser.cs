using PuppeteerSharp;
using Xunit;

namespace SweepStats.Browser;

/// <summary>A headless browser that all tests of a class share.</summary>
public sealed class OpenBrowser : IAsyncLifetime
{
    private IBrowser? _browser;

    public async Task InitializeAsync()
    {
        if (Programs.Browser is { } program)
        {
            // The sandbox of the browser does not start for root, as which tests of a fresh clone run.
            _browser = await Puppeteer.LaunchAsync(
                new LaunchOptions { ExecutablePath = program, Headless = true, Args = ["--no-sandbox", "--disable-gpu"] });
        }
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.CloseAsync();
        }
    }

    /// <summary>Opens a page from the disk.</summary>
    /// <param name="file">Its path.</param>
    /// <param name="width">Width of the window in CSS pixels.</param>
    /// <param name="dark">Whether the reader asked for a dark page.</param>
    /// <param name="script">Whether scripts of the page run.</param>
    internal async Task<ShownPage> Show(string file, int width, bool dark = false, bool script = true)
    {
        IPage page = await _browser!.NewPageAsync();
        await page.SetJavaScriptEnabledAsync(script);
        var shown = new ShownPage(page);
        await page.SetViewportAsync(new ViewPortOptions { Width = width, Height = 900 });
        await page.EmulateMediaFeaturesAsync(
            [new MediaFeatureValue { MediaFeature = MediaFeature.PrefersColorScheme, Value = dark ? "dark" : "light" }]);
        await page.GoToAsync(new Uri(file).AbsoluteUri);
        return shown;
    }
}
