namespace SweepStats.Files.Traces.Preambles;

/// <summary>Names of months in English, German, French, Spanish and Italian, by their first letters.</summary>
internal static class MonthName
{
    /// <summary>The beginnings, for a pattern that knows no case.</summary>
    public const string Pattern = "jan|feb|f[ée]v|m[aä]r|mrz|apr|avr|abr|ma[iyg]|jun|juin|jui?l|aug|ao[uû]|ago|sep|set|o[ckt]t|"
        + "nov|d[eéi][cz]|ene|gen|giu|lug";

    private static readonly string[] Beginnings =
    [
        "jan ene gen", "feb fev", "mar mrz", "apr avr abr", "mai may mag", "jun juin giu", "jul juil lug", "aug aou ago",
        "sep set", "oct okt ott", "nov", "dec dez dic dec",
    ];

    /// <summary>The month that begins so, from 1.</summary>
    public static int Number(string beginning)
    {
        string plain = PlainLetters.Of(beginning);
        return Array.FindIndex(Beginnings, b => b.Split(' ').Contains(plain, StringComparer.Ordinal)) + 1;
    }
}
