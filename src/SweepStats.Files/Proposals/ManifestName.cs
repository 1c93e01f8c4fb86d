namespace SweepStats.Files.Proposals;

/// <summary>Names of files as sweeps.csv can hold them.</summary>
internal static class ManifestName
{
    /// <summary>Why sweeps.csv cannot name a file; null where it can.</summary>
    public static string? Problem(string file) =>
        file.Any(c => char.IsControl(c) || c is '\u2028' or '\u2029') ? "its name holds a line end or another control character"
        : file.Contains('\\') ? "its name holds a backslash, which parts folders on other systems"
        : file.Contains('\uFFFD') || file.Any(char.IsSurrogate) && !file.IsNormalized()
            ? "its name holds characters that are no text"
        : null;

    /// <summary>
    /// The path as a cell. What a spreadsheet would take for a formula, and blanks at the start, which are trimmed away, are
    /// kept by beginning at the folder itself.
    /// </summary>
    public static string Cell(string file) => "=+-@#\t ".Contains(file[0]) ? "./" + file : file;
}
