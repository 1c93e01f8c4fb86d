using SweepStats.Verdicts;

namespace SweepStats.Report;

/// <summary>The word of a headline that says whether the measurement can be trusted.</summary>
/// <param name="Text">The word.</param>
/// <param name="Trust">What it says.</param>
public sealed record VerdictWord(string Text, Trust Trust)
{
    /// <summary>The word in a line; null where the line is no headline.</summary>
    public static VerdictWord? In(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        string verdict = line.StartsWith(Wording.RehearsedMark, StringComparison.Ordinal) ? line[Wording.RehearsedMark.Length..] : line;
        return verdict.StartsWith(Wording.Untrusted, StringComparison.Ordinal) ? new VerdictWord("rely", Trust.Untrustworthy)
            : !verdict.StartsWith(Wording.Trusted, StringComparison.Ordinal) ? null
            : verdict[Wording.Trusted.Length..].StartsWith(" within", StringComparison.Ordinal)
                || verdict[Wording.Trusted.Length..].StartsWith(" only", StringComparison.Ordinal) ? new VerdictWord("trusted", Trust.Limited)
            : new VerdictWord("trusted", Trust.Trustworthy);
    }
}
