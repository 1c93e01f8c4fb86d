namespace SweepStats.Files.Traces;

/// <summary>
/// Units of level in words: "decibel-milliwatts", "decibels (dBm)", "decibels above one microvolt". What the decibels are of
/// decides, so that only the whole is read.
/// </summary>
internal static class SpelledDecibels
{
    private const int Longest = 60;

    private static readonly string[] Decibels = ["decibel", "dezibel", "décibel"];

    private static readonly HashSet<string> Between =
        ["relative", "referred", "re", "to", "above", "over", "a", "one", "1", "the", "über", "bezogen", "auf", "ein", "eine",
            "par", "rapport", "à", "un"];

    /// <summary>Whether a word begins with that for decibels.</summary>
    public static bool Begins(string word)
    {
        ReadOnlySpan<char> bare = word.AsSpan().TrimStart(" ([");
        return bare.Length > 0 && bare[0] is 'd' or 'D' && StartsWithDecibels(bare);
    }

    /// <summary>Where in a name the word for decibels begins; null where it does not.</summary>
    public static int? In(string name)
    {
        for (int at = 0; at + 7 <= name.Length; at++)
        {
            if (name[at] is 'd' or 'D' && (at == 0 || !char.IsLetter(name[at - 1])) && StartsWithDecibels(name.AsSpan(at)))
            {
                return at;
            }
        }

        return null;
    }

    /// <summary>
    /// The unit; null where the words behind the decibels are none that is known, or a unit in brackets is another.
    /// </summary>
    public static LevelUnit? Parse(string text)
    {
        string bare = text.Trim();
        if (bare.Length > Longest)
        {
            return null;
        }

        int bracket = bare.IndexOfAny(['(', '['], 1);
        string inner = bracket > 0 ? bare[bracket..].Trim('(', ')', '[', ']', ' ') : "";
        LevelUnit? spelled = Spelled(bracket > 0 ? bare[..bracket] : bare);
        return inner.Length == 0 ? spelled
            : spelled is { } unit && (Spelled("decibel " + inner) ?? LevelUnits.Parse(inner)) is { } own
                && Agree(unit, own) ? own : null;
    }

    // "decibels (dBm)": the short form says of what.
    private static bool Agree(LevelUnit spelled, LevelUnit own) =>
        spelled == own || (spelled == LevelUnit.Decibels && own <= LevelUnit.DecibelsPerMeter);

    private static LevelUnit? Spelled(string text)
    {
        IEnumerable<string> words = text.Trim('(', ')', '[', ']', ' ', '.').ToLowerInvariant()
            .Split([' ', '-', '_', '/'], StringSplitOptions.RemoveEmptyEntries).Where(w => !Between.Contains(w));
        return string.Join(' ', words.Skip(1).Select(w => w == "metre" ? "meter" : w.TrimEnd('s'))) switch
        {
            "" => LevelUnit.Decibels,
            "milliwatt" or "mw" or "m" => LevelUnit.DecibelMilliwatts,
            "microvolt" or "mikrovolt" or "µv" or "uv" => LevelUnit.DecibelMicrovolts,
            "millivolt" or "mv" => LevelUnit.DecibelMillivolts,
            "microvolt per meter" or "mikrovolt pro meter" or "mikrovolt meter" or "microvolt meter" =>
                LevelUnit.DecibelMicrovoltsPerMeter,
            "per meter" or "pro meter" => LevelUnit.DecibelsPerMeter,
            _ => null,
        };
    }

    private static bool StartsWithDecibels(ReadOnlySpan<char> text)
    {
        foreach (string word in Decibels)
        {
            if (text.StartsWith(word, StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }
}
