using System.Globalization;

namespace SweepStats.Report.Text;

/// <summary>Names cut to the room there is, in such a way that they stay different.</summary>
internal static class ShortNames
{
    /// <summary>
    /// Harmless names of at most so many characters, in the same order: their beginnings, else both ends, else from where they
    /// differ on.
    /// </summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<string> names, int longest)
    {
        string[] fronts = [.. names.Select(n => PlainText.Short(n, longest))];
        if (AreTold(fronts, names))
        {
            return fronts;
        }

        string[] ends = [.. names.Select(n => Ends(n, longest))];
        return AreTold(ends, names) ? ends : Numbered(Differing(names, longest), names, longest);
    }

    /// <summary>Beginning and end of a long name: names that begin alike mostly differ in the number at their end.</summary>
    public static string Ends(string name, int longest)
    {
        string[] letters = Letters(name);
        int tail = longest / 2;
        return letters.Length <= longest ? string.Concat(letters)
            : string.Concat(letters[..(longest - tail - 1)]) + "…" + string.Concat(letters[^tail..]);
    }

    private static bool AreTold(string[] cut, IReadOnlyList<string> names) =>
        cut.Distinct(StringComparer.Ordinal).Count() == names.Distinct(StringComparer.Ordinal).Count();

    // What a reader counts as a letter stays whole.
    private static string[] Letters(string name)
    {
        List<string> letters = [];
        TextElementEnumerator each = StringInfo.GetTextElementEnumerator(PlainText.Of(name).Trim());
        while (each.MoveNext())
        {
            letters.Add(each.GetTextElement());
        }

        return [.. letters];
    }

    private static string[] Differing(IReadOnlyList<string> names, int longest)
    {
        // Who shares most with a name stands beside it in this order.
        string[][] letters = [.. names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(Letters)];
        int[] shared = [.. letters.Zip(letters.Skip(1), Shared)];
        var cut = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach ((int k, string name) in names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Index())
        {
            int most = Math.Max(k > 0 ? shared[k - 1] : 0, k < shared.Length ? shared[k] : 0);
            cut[name] = From(letters[k], most, longest);
        }

        return [.. names.Select(name => cut[name])];
    }

    private static int Shared(string[] one, string[] other) =>
        one.Zip(other).TakeWhile(both => both.First == both.Second).Count();

    // Its beginning, and what follows the place where it differs.
    private static string From(string[] letters, int place, int longest)
    {
        if (letters.Length <= longest)
        {
            return string.Concat(letters);
        }

        int head = longest / 3;
        int room = longest - head - 2;
        int from = Math.Clamp(place - 1, head, letters.Length - room);
        string end = from + room < letters.Length ? "…" : string.Empty;
        return string.Concat(letters[..head]) + "…" + string.Concat(letters[from..(from + room)]) + end;
    }

    private static string[] Numbered(string[] cut, IReadOnlyList<string> names, int longest) =>
        AreTold(cut, names) ? cut : [.. cut.Select((name, i) => $"{PlainText.Short(name, longest - 4)} {Printed.Plain(i + 1)}")];
}
