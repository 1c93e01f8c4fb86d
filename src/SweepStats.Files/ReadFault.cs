using System.Text;
using SweepStats.Files.Traces;
using SweepStats.Sweeps;

namespace SweepStats.Files;

/// <summary>Something wrong with an input file: where, what, and what to do about it. Immutable.</summary>
/// <param name="File">The file, relative to the campaign where there is one, with '/' between folders.</param>
/// <param name="Line">Line in the file, from 1; null where the fault concerns the whole file.</param>
/// <param name="Problem">What is wrong.</param>
/// <param name="Remedy">What to do.</param>
public sealed record ReadFault(string File, int? Line, string Problem, string Remedy)
{
    private const int LongestText = 500;

    /// <summary>What is wrong; shortened where a name out of the file makes it overlong.</summary>
    public string Problem { get; init; } = Shortened(Problem);

    /// <summary>What to do.</summary>
    public string Remedy { get; init; } = Shortened(Remedy);

    /// <summary>What the sweeps of the file were taken for; null where that is not known.</summary>
    public SweepRole? Role { get; init; }

    /// <summary>What a person may state in campaign.toml to settle it.</summary>
    public StatableKeys Asks
    {
        get => field
            | (Unstated.HasFlag(UnstatedUnits.Frequency) ? StatableKeys.FrequencyUnit : StatableKeys.None)
            | (Unstated.HasFlag(UnstatedUnits.Level) ? StatableKeys.LevelUnit : StatableKeys.None);
        init;
    }

    /// <summary>The columns among which there is to choose, for a person; empty where that is not what is asked.</summary>
    public string Candidates { get; init; } = "";

    /// <summary>The units that the file does not say, where that is what is wrong.</summary>
    internal UnstatedUnits Unstated { get; init; }

    /// <summary>File and line, as a message names them.</summary>
    internal string Place => Line is { } line ? FormattableString.Invariant($"{File}:{line}") : File;

    /// <summary>The fault on one line: <c>file:line: problem; remedy</c>.</summary>
    public override string ToString() => OneLine($"{Place}: {Problem}; {Remedy}");

    /// <summary>A text that was not written here, cut where it is longer than anybody reads.</summary>
    internal static string Shortened(string text) => text.Length <= LongestText ? text : text[..LongestText] + "…";

    // A file name may hold a line feed or an escape sequence; neither may reach a terminal or start a second line.
    private static string OneLine(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (char c in text)
        {
            clean.Append(char.IsControl(c) || c is '\u2028' or '\u2029' ? ' ' : c);
        }

        return clean.ToString();
    }
}
