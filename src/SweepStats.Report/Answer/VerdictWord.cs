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
            : After(VerdictWords.TrustedAsTested, verdict) is not null ? new VerdictWord("Trust", Trust.Limited)
            : After(VerdictWords.Trusted, verdict) is not { } rest ? null
            : new VerdictWord("trusted", EndsHere(rest) ? Trust.Trustworthy : Trust.Limited);
    }

    // A word more limits what was said, and a colour must not promise more; behind a comma the requirement follows.
    private static bool EndsHere(string rest) => rest.Length == 0 || char.IsPunctuation(rest[0]);

    private static string? After(string beginning, string text) =>
        text.StartsWith(beginning, StringComparison.Ordinal) ? text[beginning.Length..] : null;
}
