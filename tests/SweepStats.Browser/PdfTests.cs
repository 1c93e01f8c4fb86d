using System.Diagnostics;
using SweepStats.Acceptance;
using SweepStats.Cli;
using Xunit;

namespace SweepStats.Browser;

/// <summary>report.pdf, read by another program than the one that printed it (pdftotext of poppler-utils).</summary>
public sealed class PdfTests
{
    private static string Demo { get; } = Path.Combine(Repository.Root, "fixtures/campaigns/receiver-cabin-curtain");

    [Fact]
    public void WithoutABrowserOnThePathThereIsNonePrinting() => Assert.Null(PrintingBrowser.On(Path.GetTempPath()));

    [BrowserFact("pdftotext", "poppler-utils")]
    public void ThePrintedPageHoldsTheFiguresOfTheTables()
    {
        DirectoryInfo scratch = Directory.CreateTempSubdirectory("sweepstats-pdf-");
        try
        {
            string report = Path.Combine(scratch.FullName, "report");
            var terminal = new Terminal(TextWriter.Null, TextWriter.Null, Interactive: false);
            Assert.Equal(0, CommandLine.Run(["run", Demo, "--out", report, "--pdf", "--quiet"], terminal));
            string text = Text(Path.Combine(report, "report.pdf"));
            string[][] bands = [.. File.ReadLines(Path.Combine(report, "bands.csv")).Skip(1).Select(line => line.Split(','))];
            Assert.NotEmpty(bands);
            Assert.All(bands, row =>
            {
                Assert.Contains(row[1], text, StringComparison.Ordinal);
                // A claim is rounded away from what it claims.
                double least = Math.Floor(double.Parse(row[4], System.Globalization.CultureInfo.InvariantCulture) * 10) / 10;
                Assert.Contains(least.ToString("F1", System.Globalization.CultureInfo.InvariantCulture), text,
                    StringComparison.Ordinal);
            });
            Assert.Contains("\"report.pdf\"", File.ReadAllText(Path.Combine(report, "summary.json")), StringComparison.Ordinal);
        }
        finally
        {
            scratch.Delete(recursive: true);
        }
    }

    private static string Text(string pdf)
    {
        using Process reader =
            Process.Start(new ProcessStartInfo("pdftotext", ["-layout", pdf, "-"]) { RedirectStandardOutput = true })!;
        string text = reader.StandardOutput.ReadToEnd();
        reader.WaitForExit();
        Assert.Equal(0, reader.ExitCode);
        return text;
    }
}
