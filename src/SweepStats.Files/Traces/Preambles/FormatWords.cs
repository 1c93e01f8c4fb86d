using SweepStats.Files.Traces.Tables;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>Words for what a trace of a network analyser shows.</summary>
internal static class FormatWords
{
    private static readonly string[] NoLevels = ["phase", "fase", "delay", "swr", "smith", "polar", "laufzeit", "retardo",
        "retard", "ritardo", "real", "imag", "impedance"];

    /// <summary>
    /// Whether the words name something that is no level: a phase, a delay, a standing wave ratio, a Smith chart.
    /// </summary>
    public static bool IsNoLevel(string words) =>
        UnitOf(words) is null && Array.Exists(NoLevels, w => words.Contains(w, StringComparison.OrdinalIgnoreCase))
        && !words.Contains('/', StringComparison.Ordinal) && !words.Contains('+', StringComparison.Ordinal);

    /// <summary>
    /// The unit of level that the words tell: dB of a log magnitude, none of a linear one; null where they tell none.
    /// </summary>
    public static LevelUnit? UnitOf(string words)
    {
        var name = ColumnName.Of(words);
        return name.IsLogMagnitude || string.Equals(words, "logm", StringComparison.OrdinalIgnoreCase)
            || string.Equals(words, "mlog", StringComparison.OrdinalIgnoreCase) ? LevelUnit.Decibels
            : name.IsMagnitude && name.IsLinear ? LevelUnit.LinearMagnitude
            : null;
    }
}
