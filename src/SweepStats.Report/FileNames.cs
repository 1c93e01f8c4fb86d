using System.Globalization;
using System.Text;

namespace SweepStats.Report;

/// <summary>Hands out file names that every file system takes and that are distinct even where case is ignored.</summary>
internal sealed class FileNames
{
    /// <summary>Long enough to tell names apart, short enough for old archive tools.</summary>
    private const int LongestPart = 40;

    private readonly HashSet<string> _taken = new(StringComparer.Ordinal);

    /// <summary>
    /// A name from parts, without extension: <c>levels-spring-3</c>. A number is added where the name is taken.
    /// </summary>
    public string Next(params ReadOnlySpan<string> parts)
    {
        List<string> slugs = [];
        foreach (string part in parts)
        {
            slugs.Add(Slug(part));
        }

        string wanted = string.Join('-', slugs);
        string name = wanted;
        for (int i = 2; !_taken.Add(name); i++)
        {
            name = string.Create(CultureInfo.InvariantCulture, $"{wanted}-{i}");
        }

        return name;
    }

    /// <summary>
    /// Lower-case ASCII letters and digits, everything else one dash; never empty. Letters are not stripped of their accents:
    /// that needs tables which not every machine has, and the same input is to give the same names everywhere.
    /// </summary>
    private static string Slug(string text)
    {
        var slug = new StringBuilder();
        foreach (char c in text)
        {
            if (char.IsAsciiLetterOrDigit(c))
            {
                slug.Append(char.IsAsciiLetterUpper(c) ? (char)(c + ('a' - 'A')) : c);
            }
            else if (slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }

            if (slug.Length >= LongestPart)
            {
                break;
            }
        }

        string trimmed = slug.ToString().Trim('-');
        return trimmed.Length == 0 ? "x" : trimmed;
    }
}
