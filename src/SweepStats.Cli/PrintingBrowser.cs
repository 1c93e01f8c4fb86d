using System.ComponentModel;
using System.Diagnostics;
using System.Text.RegularExpressions;
using SweepStats.Files.Places;

namespace SweepStats.Cli;

/// <summary>Prints a page to PDF with the Chromium of this machine: what a reader would see who prints it.</summary>
internal sealed class PrintingBrowser
{
    /// <summary>Said where none is found.</summary>
    public const string Missing =
        "--pdf: no Chromium was found on the PATH; install it (on Debian: apt-get install chromium), or leave --pdf out, open "
            + "index.html in a browser and print it to PDF";

    // A page of a hundred specimens takes three seconds.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);
    private static readonly TimeSpan Lingering = TimeSpan.FromSeconds(5);

    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "chrome", "chrome.exe"];

    private Process? _running;

    private PrintingBrowser(string program) => Program = program;

    /// <summary>The browser's program.</summary>
    public string Program { get; }

    /// <summary>The first in folders that are searched for programs; null where they hold none.</summary>
    /// <param name="path">The folders, as the environment's PATH lists them.</param>
    public static PrintingBrowser? On(string? path)
    {
        string? program = (path ?? "").Split(Path.PathSeparator)
            .Where(Path.IsPathRooted)
            .SelectMany(folder => Names.Select(name => Path.Combine(folder, name)))
            .FirstOrDefault(CanBeStarted);
        return program is null ? null : new PrintingBrowser(program);
    }

    /// <summary>Prints a page.</summary>
    /// <param name="page">The page on the disk.</param>
    /// <returns>The PDF.</returns>
    /// <exception cref="IOException">The browser did not print it.</exception>
    public byte[] Print(string page)
    {
        DirectoryInfo scratch = Directory.CreateTempSubdirectory("sweepstats-print-");
        using var interruption = new Interruption(() => GiveUp(scratch));
        try
        {
            string copy = Path.Combine(scratch.FullName, "page.html"), pdf = Path.Combine(scratch.FullName, "page.pdf");
            // A PDF is handed on alone: what leads to a file beside the page leads nowhere from it.
            File.WriteAllText(copy, Regex.Replace(File.ReadAllText(page), " href=\"[^#\"][^\"]*\"", string.Empty));
            string said = Run(copy, pdf, interruption);
            return File.Exists(pdf) ? File.ReadAllBytes(pdf) : throw Unprinted($"printed nothing ({LastLine(said)})");
        }
        finally
        {
            interruption.Step(() => Remove(scratch));
        }
    }

    /// <summary>What a signal does: ends the browser, and removes what it wrote.</summary>
    internal void GiveUp(DirectoryInfo scratch)
    {
        _running?.Kill(entireProcessTree: true);
        Remove(scratch);
    }

    private static bool CanBeStarted(string file) => File.Exists(file)
        && (OperatingSystem.IsWindows()
            || (File.GetUnixFileMode(file) & (UnixFileMode.UserExecute | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute))
            != 0);

    private string Run(string page, string pdf, Interruption interruption)
    {
        // A signal finds it either not yet started or known, and never disposed of.
        interruption.Step(() => _running = Started(Words(page, pdf)));
        try
        {
            return Awaited(_running!, pdf);
        }
        finally
        {
            interruption.Step(Forget);
        }
    }

    // A profile of its own: one that is in use is locked. The sandbox does not start for root.
    private static string[] Words(string page, string pdf) =>
    [
        "--headless", "--disable-gpu", "--no-pdf-header-footer",
        $"--user-data-dir={Path.Combine(Path.GetDirectoryName(pdf)!, "profile")}",
        .. Environment.IsPrivilegedProcess && OperatingSystem.IsLinux() ? ["--no-sandbox"] : Array.Empty<string>(),
        $"--print-to-pdf={pdf}", new Uri(page).AbsoluteUri,
    ];

    private string Awaited(Process browser, string pdf)
    {
        Task<string[]> said = Task.WhenAll(browser.StandardOutput.ReadToEndAsync(), browser.StandardError.ReadToEndAsync());
        // What it started may keep its output open after it has ended.
        if (browser.WaitForExit(Longest) && said.Wait(Lingering))
        {
            return string.Concat(said.Result);
        }

        browser.Kill(entireProcessTree: true);
        browser.WaitForExit();
        return File.Exists(pdf) ? string.Empty
            : throw Unprinted($"had not printed the page after {Longest.TotalMinutes:0} minutes");
    }

    private void Forget()
    {
        _running?.Dispose();
        _running = null;
    }

    private Process Started(string[] words)
    {
        try
        {
            return Process.Start(
                new ProcessStartInfo(Program, words) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        }
        catch (Win32Exception e)
        {
            throw Unprinted($"cannot be started ({e.Message})");
        }
    }

    private IOException Unprinted(string why) =>
        new($"--pdf: '{Program}' {why}; leave --pdf out and print index.html from a browser");

    // What is left in the folder for scratch is no reason to give no report.
    private static void Remove(DirectoryInfo scratch)
    {
        try
        {
            scratch.Delete(recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return;
        }
    }

    private static string LastLine(string text) => text.Split('\n',
        StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).LastOrDefault() ?? "it said nothing";
}
