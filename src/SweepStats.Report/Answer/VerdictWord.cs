using SweepStats.Verdicts;

namespace SweepStats.Report.Answer;

/// <summary>The word of a headline that says whether the measurement can be trusted.</summary>
/// <param name="Text">The word.</param>
/// <param name="Trust">What it says.</param>
public sealed record VerdictWord(string Text, Trust Trust)
{
    /// <summary>The word in a line; null where the line is no headline.</summary>
    public static VerdictWord? In(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        string verdict = After(VerdictWords.RehearsedMark, line) ?? line;
        return After(VerdictWords.Untrusted, verdict) is not null ? new VerdictWord("rely", Trust.Untrustworthy)
            : After(VerdictWords.Trusted, verdict) is not { } limit ? null
            : new VerdictWord("trusted", IsLimited(limit) ? Trust.Limited : Trust.Trustworthy);
    }

    private static bool IsLimited(string rest) => After(" within", rest) is not null || After(" only", rest) is not null;

    private static string? After(string beginning, string text) =>
        text.StartsWith(beginning, StringComparison.Ordinal) ? text[beginning.Length..] : null;
}
