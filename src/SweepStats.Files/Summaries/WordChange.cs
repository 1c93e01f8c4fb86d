namespace SweepStats.Files.Summaries;

/// <summary>Something that has a name and is told in a word.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Word">The word; null for none.</param>
internal readonly record struct NamedWord(string Name, string? Word);

/// <summary>A word that differs.</summary>
/// <param name="Name">What it is of.</param>
/// <param name="Earlier">Word of the earlier result; null where there is none.</param>
/// <param name="Later">Word of the later result; null where there is none.</param>
public sealed record WordChange(string Name, string? Earlier, string? Later)
{
    /// <summary>Those that differ, in the order of the later result; those that it does not have come last.</summary>
    internal static ImmutableArray<WordChange> Between(IEnumerable<NamedWord> earlier, IEnumerable<NamedWord> later)
    {
        Dictionary<string, string?> before = ByName(earlier), after = ByName(later);
        return
        [
            .. after.Keys.Concat(before.Keys.Where(name => !after.ContainsKey(name)))
                .Select(name => new WordChange(name, before.GetValueOrDefault(name), after.GetValueOrDefault(name)))
                .Where(change => change.Earlier != change.Later),
        ];
    }

    private static Dictionary<string, string?> ByName(IEnumerable<NamedWord> words)
    {
        var named = new Dictionary<string, string?>(StringComparer.Ordinal);
        foreach (NamedWord word in words)
        {
            named[word.Name] = word.Word;
        }

        return named;
    }
}
