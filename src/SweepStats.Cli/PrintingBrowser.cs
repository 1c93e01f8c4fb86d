using System.Diagnostics;

namespace SweepStats.Cli;

/// <summary>Prints a page to PDF with the Chromium of this machine: what a reader would see who prints it.</summary>
internal sealed class PrintingBrowser
{
    /// <summary>Said where none is found.</summary>
    public const string Missing =
        "--pdf: no Chromium was found on the PATH; install it (on Debian: apt-get install chromium), or leave --pdf out, open index.html in a browser and print it to PDF";

    // A page of a hundred specimens takes three seconds.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);

    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "chrome", "chrome.exe"];

    private readonly string _program;

    private PrintingBrowser(string program) => _program = program;

    /// <summary>The first in folders that are searched for programs; null where they hold none.</summary>
    /// <param name="path">The folders, as the environment's PATH lists them.</param>
    public static PrintingBrowser? On(string? path)
    {
        string? program = (path ?? "").Split(Path.PathSeparator)
            .SelectMany(folder => Names.Select(name => Path.Combine(folder, name)))
            .FirstOrDefault(File.Exists);
        return program is null ? null : new PrintingBrowser(program);
    }

    /// <summary>Prints a page.</summary>
    /// <param name="page">The page on the disk.</param>
    /// <returns>The PDF.</returns>
    /// <exception cref="IOException">The browser did not print it.</exception>
    public byte[] Print(string page)
    {
        DirectoryInfo scratch = Directory.CreateTempSubdirectory("sweepstats-print-");
        try
        {
            string pdf = Path.Combine(scratch.FullName, "page.pdf");
            string said = Run(page, pdf, scratch.FullName);
            return File.Exists(pdf) ? File.ReadAllBytes(pdf)
                : throw new IOException($"--pdf: '{_program}' printed nothing ({LastLine(said)}); leave --pdf out and print index.html from a browser");
        }
        finally
        {
            scratch.Delete(recursive: true);
        }
    }

    private string Run(string page, string pdf, string scratch)
    {
        // A profile of its own: one that is in use is locked. The sandbox does not start for root.
        string[] words =
        [
            "--headless", "--disable-gpu", "--no-pdf-header-footer", $"--user-data-dir={Path.Combine(scratch, "profile")}",
            .. Environment.IsPrivilegedProcess && OperatingSystem.IsLinux() ? ["--no-sandbox"] : Array.Empty<string>(),
            $"--print-to-pdf={pdf}", new Uri(page).AbsoluteUri,
        ];
        using Process browser = Process.Start(new ProcessStartInfo(_program, words) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        Task<string> told = browser.StandardOutput.ReadToEndAsync();
        Task<string> complained = browser.StandardError.ReadToEndAsync();
        if (!browser.WaitForExit(Longest))
        {
            browser.Kill(entireProcessTree: true);
            throw new IOException($"--pdf: '{_program}' had not printed the page after two minutes; leave --pdf out and print index.html from a browser");
        }

        return told.Result + complained.Result;
    }

    private static string LastLine(string text) => text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).LastOrDefault() ?? "it said nothing";
}
