using SweepStats.Cli;

namespace SweepStats.Browser;

/// <summary>Programs of this machine that tests open results with.</summary>
internal static class Programs
{
    /// <summary>The browser that the program prints with; null where there is none.</summary>
    public static string? Browser { get; } = PrintingBrowser.On(Environment.GetEnvironmentVariable("PATH"))?.Program;

    /// <summary>Why a test is left out; null where all it needs is there.</summary>
    /// <param name="program">What it needs beside the browser; null where that is all.</param>
    /// <param name="package">Where Debian has that from.</param>
    public static string? Missing(string? program = null, string? package = null) =>
        Browser is null ? "No Chromium was found on the PATH (on Debian: apt-get install chromium)."
        : program is not null && Named(program) is null
        ? $"No {program} was found on the PATH (on Debian: apt-get install {package})."
        : null;

    private static string? Named(string program) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Select(folder => Path.Combine(folder, program))
        .FirstOrDefault(File.Exists);
}
