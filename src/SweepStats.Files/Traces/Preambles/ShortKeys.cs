namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// Keys of a letter or two, as formulas have them: "f0 = 100 MHz", "N = 61". They count only where what stands beside them leaves
/// one meaning.
/// </summary>
internal static class ShortKeys
{
    private static readonly HashSet<string> First =
        ["f", "x", "freq", "frequency", "frequenz", "fréquence", "frecuencia", "frequenza"];

    private static readonly HashSet<string> Count = ["n", "count", "number", "anzahl", "nombre", "número", "numero", "nf", "nx"];

    /// <summary>What a statement may be of; null where its key is none of these, or no number follows.</summary>
    public static Setting? Find(Statement statement)
    {
        Setting? setting = First.Contains(statement.Key) && statement.Written.EndsWith('0') ? Setting.First
            : Count.Contains(statement.Key) && statement.Number is null ? Setting.Count
            : null;
        return setting is not null && StatedNumber.Parse(statement.Values[0]) is not null ? setting : null;
    }
}
