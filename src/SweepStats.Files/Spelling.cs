namespace SweepStats.Files;

/// <summary>Finds the known word that a mistyped one was probably meant to be.</summary>
public static class Spelling
{
    /// <summary>" (did you mean 'x'?)" or an empty text.</summary>
    /// <param name="word">What was written.</param>
    /// <param name="known">What may be written.</param>
    public static string Hint(string word, IEnumerable<string> known) =>
        Nearest(word, known) is { } best ? $" (did you mean '{best}'?)" : "";

    /// <summary>The known word with the fewest letters to change; null where none is near.</summary>
    /// <param name="word">What was written.</param>
    /// <param name="known">What may be written.</param>
    public static string? Nearest(string word, IEnumerable<string> known)
    {
        ArgumentNullException.ThrowIfNull(word);
        ArgumentNullException.ThrowIfNull(known);
        string? best = null;
        int least = Math.Max(2, word.Length / 3) + 1;
        foreach (string candidate in known)
        {
            int distance = Distance(word.ToLowerInvariant(), candidate.ToLowerInvariant());
            if (distance < least)
            {
                (best, least) = (candidate, distance);
            }
        }

        return best;
    }

    // Levenshtein's edit distance over two rows.
    private static int Distance(string a, string b)
    {
        int[] previous = [.. Enumerable.Range(0, b.Length + 1)];
        for (int i = 1; i <= a.Length; i++)
        {
            var current = new int[b.Length + 1];
            current[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int change = previous[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                current[j] = Math.Min(change, Math.Min(previous[j], current[j - 1]) + 1);
            }

            previous = current;
        }

        return previous[b.Length];
    }
}
