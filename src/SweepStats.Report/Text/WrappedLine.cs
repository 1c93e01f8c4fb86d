using System.Globalization;

namespace SweepStats.Report.Text;

/// <summary>Breaks a line of a console between words, where it is wider than the console.</summary>
public static class WrappedLine
{
    /// <summary>The narrowest console that lines are broken for; in a narrower one the console breaks them once more.</summary>
    public const int Narrowest = 40;

    /// <summary>The width taken where nobody knows it.</summary>
    public const int Usual = 80;

    private const int MoreIndent = 2;

    /// <summary>The line in pieces no wider than the console; those after the first stand further in.</summary>
    /// <param name="line">A line without line ends.</param>
    /// <param name="columns">Width of the console; at least <see cref="Narrowest"/> is taken.</param>
    public static IReadOnlyList<string> Of(string line, int columns)
    {
        ArgumentNullException.ThrowIfNull(line);
        int width = Math.Max(columns, Narrowest);
        if (Width(line) <= width)
        {
            return [line];
        }

        string indent = new(' ', line.Length - line.TrimStart(' ').Length);
        List<string> pieces = [];
        string piece = indent;
        bool empty = true;
        // Blanks beside each other stay: they stand between columns, or in a name.
        foreach (string word in line.Trim(' ').Split(' '))
        {
            if (!empty && Width(piece) + 1 + Width(word) > width)
            {
                pieces.Add(piece);
                (piece, empty) = (indent + new string(' ', MoreIndent), true);
            }

            (piece, empty) = (empty ? piece + word : $"{piece} {word}", false);
        }

        return [.. pieces, piece];
    }

    // As a reader counts characters; a word wider than the console is left whole, since a path or a name is copied from it.
    private static int Width(string text) => new StringInfo(text).LengthInTextElements;
}
