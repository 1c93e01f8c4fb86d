namespace SweepStats.Report.Sheets;

/// <summary>Names cut to the room there is, in such a way that they stay different.</summary>
internal static class ShortNames
{
    /// <summary>Harmless names of at most so many characters, in the same order.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<string> names, int longest)
    {
        string[] fronts = [.. names.Select(n => PlainText.Short(n, longest))];
        bool differ = fronts.Distinct(StringComparer.Ordinal).Count() == names.Distinct(StringComparer.Ordinal).Count();
        return differ ? fronts : [.. names.Select(n => Ends(n, longest))];
    }

    /// <summary>Beginning and end of a long name: names that begin alike mostly differ in the number at their end.</summary>
    public static string Ends(string name, int longest)
    {
        string plain = PlainText.Of(name).Trim();
        int[] starts = System.Globalization.StringInfo.ParseCombiningCharacters(plain);
        int tail = longest / 2;
        return starts.Length <= longest ? plain : plain[..starts[longest - tail - 1]] + "…" + plain[starts[^tail]..];
    }
}
