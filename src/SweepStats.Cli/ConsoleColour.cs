using SweepStats.Report.Answer;
using SweepStats.Verdicts;

namespace SweepStats.Cli;

/// <summary>Colour on a console: of the word of the verdict, and of nothing else. The words say the same without it.</summary>
internal static class ConsoleColour
{
    /// <summary>Whether a person's console shows colours and the person has not said no (NO_COLOR).</summary>
    /// <param name="environment">Reads a variable; null where it is not set.</param>
    public static bool IsWanted(Func<string, string?> environment) =>
        string.IsNullOrEmpty(environment("NO_COLOR")) && environment("TERM") != "dumb"
            && (!OperatingSystem.IsWindows() || environment("WT_SESSION") is not null);

    /// <summary>The pieces of a broken line with the word of the verdict coloured.</summary>
    public static IReadOnlyList<string> Of(string line, IReadOnlyList<string> pieces)
    {
        if (VerdictWord.In(line) is not { } word)
        {
            return pieces;
        }

        int place = pieces.TakeWhile(piece => !piece.Contains(word.Text, StringComparison.Ordinal)).Count();
        return [.. pieces.Select((piece, i) => i == place ? Coloured(piece, word) : piece)];
    }

    private static string Coloured(string piece, VerdictWord word)
    {
        int at = piece.IndexOf(word.Text, StringComparison.Ordinal);
        return $"{piece[..at]}\e[1;{Code(word.Trust)}m{word.Text}\e[0m{piece[(at + word.Text.Length)..]}";
    }

    private static int Code(Trust trust) => trust switch { Trust.Trustworthy => 32, Trust.Limited => 33, _ => 31 };
}
