using SweepStats.Acceptance;
using Xunit;

namespace SweepStats.Browser;

/// <summary>The report as a browser shows it: on a phone, beside a bench and on a wide screen.</summary>
public sealed class ReportPageTests(OpenBrowser browser) : IClassFixture<OpenBrowser>
{
    private static string Demo { get; } = Path.Combine(Repository.Root, "reports/receiver-cabin-curtain/index.html");

    [BrowserTheory]
    [InlineData(360)]
    [InlineData(800)]
    [InlineData(1600)]
    public async Task ThePageFitsTheWindowAndCanBeRead(int width)
    {
        await using ShownPage page = await browser.Show(Demo, width);
        await page.Unfold();
        Assert.Empty(await page.Beyond());
        Assert.Empty(await page.Smaller(9));
    }

    [BrowserTheory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task ItPrintsToTwoSheetsAndAnAnnexOfAtMostFifteenPages(bool dark)
    {
        await using ShownPage page = await browser.Show(Demo, 1000, dark);
        Assert.InRange(await page.PrintedPages(), 2 + 3, 2 + 15);
    }

    [BrowserTheory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task NothingIsFetchedAndNothingComplained(bool dark)
    {
        await using ShownPage page = await browser.Show(Demo, 1000, dark);
        await page.Unfold();
        Assert.Equal([new Uri(Demo).AbsoluteUri], page.Requests);
        Assert.Empty(page.Complaints);
    }

    [BrowserTheory]
    [InlineData(360, false)]
    [InlineData(1000, false)]
    [InlineData(1000, true)]
    public async Task AnAccessibilityCheckerFindsNoSeriousFault(int width, bool dark)
    {
        await using ShownPage page = await browser.Show(Demo, width, dark);
        await page.Unfold();
        Assert.Empty(await page.SeriousFaults());
    }
}
