using System.Text;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>Words of several languages without blanks, case and accents, so that "Dämpfung", "DAMPFUNG" and "res. BW" are found in one table.</summary>
internal static class PlainLetters
{
    private const string Accented = "äáàâãåéèêëíìîïöóòôõøúùûüçñß";
    private const string Plain = "aaaaaaeeeeiiiioooooouuuucns";

    /// <summary>The letters alone, in lower case; "ae", "oe" and "ue" stay as they are written.</summary>
    public static string Of(string text)
    {
        var letters = new StringBuilder(text.Length);
        foreach (char c in text)
        {
            if (char.IsLetter(c))
            {
                char lower = char.ToLowerInvariant(c);
                int at = lower < 128 ? -1 : Accented.IndexOf(lower, StringComparison.Ordinal);
                letters.Append(at < 0 ? lower : Plain[at]);
            }
        }

        return letters.ToString();
    }
}
