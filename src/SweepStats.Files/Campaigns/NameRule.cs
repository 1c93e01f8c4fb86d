namespace SweepStats.Files.Campaigns;

/// <summary>What names of lots, specimens and placements may look like.</summary>
internal static class NameRule
{
    /// <summary>Longest name that still fits a chart's legend.</summary>
    public const int LongestName = 100;

    /// <summary>What is wrong with a trimmed name; null for a good one.</summary>
    public static string? Problem(string name) =>
        name.Length == 0 ? "is empty"
        : name.Length > LongestName ? FormattableString.Invariant($"is longer than {LongestName} characters")
        : name.Any(c => char.IsControl(c) || c is '\u2028' or '\u2029' || char.IsSurrogate(c) && !IsPaired(name))
            ? "holds control characters"
        : null;

    private static bool IsPaired(string name) => name.EnumerateRunes().All(rune => rune.Value != 0xFFFD);
}
