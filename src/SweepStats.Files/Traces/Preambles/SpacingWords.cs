namespace SweepStats.Files.Traces.Preambles;

/// <summary>Words for how the frequencies of a sweep are spaced.</summary>
internal static class SpacingWords
{
    /// <summary>Whether neighbouring frequencies have equal ratios.</summary>
    public static bool IsLogarithmic(string words) =>
        words.StartsWith("log", StringComparison.OrdinalIgnoreCase) || words.Contains(" log", StringComparison.OrdinalIgnoreCase)
        || words.Contains("decade", StringComparison.OrdinalIgnoreCase)
        || words.Contains("dekade", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a line speaks of frequencies that do not lie at equal steps from the lowest on.</summary>
    public static bool IsOther(string line) => Array.Exists(Others, w => line.Contains(w, StringComparison.OrdinalIgnoreCase));

    private static readonly string[] Others =
        ["logarithm", "log sweep", "log,", "log;", ": log", "sweep,log", "log freq", "per decade", "per octave", "octave",
            "oktave", "segments", "frequency list", "direction", "sweep,down", "frequency offset", " log,", "x log",
            "abscissa,log"];

    /// <summary>
    /// Whether the frequencies follow a list or are those of one frequency only, so that start and stop do not tell them.
    /// </summary>
    public static bool IsUneven(string words) =>
        Array.Exists(["segment", "list", "zero", "power", "cw", "time"],
            w => words.Contains(w, StringComparison.OrdinalIgnoreCase));
}
