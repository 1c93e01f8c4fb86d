using Xunit;

namespace SweepStats.Browser;

/// <summary>What looks for faults in pages finds them: each is planted here once.</summary>
public sealed class CheckerTests(OpenBrowser browser) : IClassFixture<OpenBrowser>
{
    private const string Faulty = """
        <!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>Faulty</title></head><body><main>
        <p style="font-size:8px">small</p>
        <p style="color:#bbb;background:#fff">pale</p>
        <svg width="200" height="20" viewBox="0 0 400 40"><text y="20" font-size="12">half its size</text></svg>
        <div style="width:3000px">wide</div>
        <div style="overflow-x:auto"><div style="width:3000px">in a frame of its own</div></div>
        <img src="https://elsewhere.invalid/picture.png" alt="">
        <script>console.error("a complaint");</script>
        </main></body></html>
        """;

    [BrowserTheory]
    [InlineData(800)]
    public async Task EachPlantedFaultIsFound(int width)
    {
        string file = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.html");
        await File.WriteAllTextAsync(file, Faulty);
        try
        {
            await using ShownPage page = await browser.Show(file, width);
            Assert.Equal(["p \"small\" 8.0 px", "text \"half its size\" 6.0 px"], await page.Smaller(9));
            Assert.Contains("div \"wide\"", await page.Beyond());
            Assert.DoesNotContain("div \"in a frame of its own\"", await page.Beyond());
            Assert.Contains("https://elsewhere.invalid/picture.png", page.Requests);
            Assert.Contains("a complaint", page.Complaints);
            Assert.StartsWith("color-contrast: ", Assert.Single(await page.SeriousFaults()), StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
