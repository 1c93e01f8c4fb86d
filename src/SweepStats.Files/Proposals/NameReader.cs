using System.Text.RegularExpressions;

namespace SweepStats.Files.Proposals;

/// <summary>Reads the name of a folder, a file or a column: role, date, lot, specimen, placement, and what is left.</summary>
internal static partial class NameReader
{
    /// <summary>What a name tells.</summary>
    /// <param name="text">The name, without the extension.</param>
    public static NamePart Read(string text)
    {
        NameDate? date = NameDate.Find(text, out string rest);
        ImmutableArray<NameToken> tokens = NameTokens.Of(Settings().Replace(rest, " "));
        ImmutableArray<RoleWord> roles = RoleWords.In(tokens);
        bool[] used = new bool[tokens.Length];
        foreach (RoleWord role in roles)
        {
            used.AsSpan(role.At, role.Length).Fill(true);
        }

        ImmutableDictionary<PlaceKind, string> said = Said(tokens, roles, used);
        return new NamePart { Text = text, Roles = roles, Said = said, Date = date, Left = Left(tokens, used) };
    }

    private static ImmutableDictionary<PlaceKind, string> Said(ImmutableArray<NameToken> tokens,
        ImmutableArray<RoleWord> roles, bool[] used)
    {
        var said = ImmutableDictionary.CreateBuilder<PlaceKind, string>();
        for (int i = 0; i < tokens.Length; i++)
        {
            if (PlaceWords.IsSide(tokens[i].Word))
            {
                said.TryAdd(PlaceKind.Placement, tokens[i].Text);
                used[i] = true;
            }
            else if (PlaceWords.Kind(tokens[i].Word) is { } kind
                && !(kind == PlaceKind.Specimen && IsCountOfCovered(tokens, roles, i)))
            {
                used[i] = true;
                if (Value(tokens, used, i) is { Length: > 0 } value)
                {
                    said.TryAdd(kind, value);
                }
            }
        }

        return said.ToImmutable();
    }

    // "mit Probe 2" may be the second sweep with the specimen as well as specimen 2.
    private static bool IsCountOfCovered(ImmutableArray<NameToken> tokens, ImmutableArray<RoleWord> roles, int at) =>
        at > 0 && roles.Any(r => r.At == at - 1 && tokens[at - 1].Word is "mit" or "with") && at + 1 < tokens.Length
            && tokens[at + 1].IsNumber;

    // The rest of its own chunk, else the next one: lot3, LotB, lot_3, sample A1.
    private static string? Value(ImmutableArray<NameToken> tokens, bool[] used, int key)
    {
        if (key + 1 >= tokens.Length || used[key + 1] || PlaceWords.Kind(tokens[key + 1].Word) is not null
            || PlaceWords.IsEmpty(tokens[key + 1].Word))
        {
            return null;
        }

        int chunk = tokens[key + 1].Chunk;
        string value = "";
        for (int i =
            key + 1; i < tokens.Length && tokens[i].Chunk == chunk && !used[i] && PlaceWords.Kind(tokens[i].Word) is null; i++)
        {
            value += tokens[i].Text;
            used[i] = true;
        }

        return value;
    }

    private static ImmutableArray<NameChunk> Left(ImmutableArray<NameToken> tokens, bool[] used)
    {
        var left = ImmutableArray.CreateBuilder<NameChunk>();
        foreach (var chunk in tokens.Select((t, i) => (Token: t, Index: i)).Where(t => !used[t.Index])
            .GroupBy(t => t.Token.Chunk))
        {
            NameToken[] rest = [.. chunk.Select(t => t.Token)];
            if (PlaceWords.IsEmpty(rest[0].Word) || PlaceWords.IsEmpty(string.Concat(rest.Select(t => t.Word))))
            {
                continue;
            }

            left.Add(new NameChunk(string.Concat(rest.Select(t => t.Text))));
        }

        return left.ToImmutable();
    }

    // A span or a level in a name tells how was measured, not what.
    [GeneratedRegex(
        @"(?<![\p{L}\d])[-+]?\d+(?:[.,]\d+)?\s?(?:[kMG]?Hz|dBm?|dBu?V|ohm)(?![\p{L}\d])|(?<![\p{L}])(?:rbw|vbw|ifbw|att|avg)"
            + @"[\s_-]?\d+\s?[kM]?(?![\p{L}\d])",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Settings();
}
