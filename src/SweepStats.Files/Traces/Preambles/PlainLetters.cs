namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// Words of several languages without blanks, case and accents, so that "Dämpfung", "DAMPFUNG" and "res. BW" are found in one
/// table.
/// </summary>
internal static class PlainLetters
{
    private const string Accented = "äáàâãåéèêëíìîïöóòôõøúùûüçñß";
    private const string Plain = "aaaaaaeeeeiiiioooooouuuucns";

    /// <summary>The letters alone, in lower case; "ae", "oe" and "ue" stay as they are written.</summary>
    public static string Of(string text)
    {
        Span<char> letters = text.Length <= 128 ? stackalloc char[text.Length] : new char[text.Length];
        return letters[..Write(text, letters)].ToString();
    }

    /// <summary>Writes the letters.</summary>
    /// <param name="text">The text.</param>
    /// <param name="to">Room for as many as the text has.</param>
    /// <returns>How many there are.</returns>
    public static int Write(ReadOnlySpan<char> text, Span<char> to)
    {
        int count = 0;
        foreach (char c in text)
        {
            if (char.IsLetter(c))
            {
                char lower = char.ToLowerInvariant(c);
                int at = lower < 128 ? -1 : Accented.IndexOf(lower, StringComparison.Ordinal);
                to[count++] = at < 0 ? lower : Plain[at];
            }
        }

        return count;
    }
}
