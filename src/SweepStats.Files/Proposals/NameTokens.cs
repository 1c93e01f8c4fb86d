using System.Text;

namespace SweepStats.Files.Proposals;

/// <summary>Cuts a name into runs of letters and of digits: at every other character, between letters and digits, and before a
/// capital behind a small letter.</summary>
internal static class NameTokens
{
    /// <summary>The runs in their order.</summary>
    /// <param name="name">A name of a file, a folder or a column.</param>
    public static ImmutableArray<NameToken> Of(string name)
    {
        var tokens = ImmutableArray.CreateBuilder<NameToken>();
        // Disks differ in how they keep an umlaut: as one letter, or as a letter and its dots.
        string text = Composed(name);
        int chunk = 0;
        int start = 0;
        for (int i = 0; i <= text.Length; i++)
        {
            bool ends = i == text.Length || !char.IsLetterOrDigit(text[i]);
            if ((ends || (i > start && Changes(text[i - 1], text[i]))) && i > start)
            {
                tokens.Add(new NameToken(text[start..i], char.IsAsciiDigit(text[start]), chunk));
                start = i;
            }

            if (ends)
            {
                chunk += i > 0 && i < text.Length && char.IsLetterOrDigit(text[i - 1]) ? 1 : 0;
                start = i + 1;
            }
        }

        return tokens.ToImmutable();
    }

    private static bool Changes(char before, char here) =>
        char.IsAsciiDigit(before) != char.IsAsciiDigit(here) || (char.IsLower(before) && char.IsUpper(here));

    private static string Composed(string name)
    {
        try
        {
            return name.Normalize(NormalizationForm.FormC);
        }
        catch (ArgumentException)
        {
            // Names of disks may hold what is no text.
            return name;
        }
    }
}
