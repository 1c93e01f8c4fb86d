namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Finds real and imaginary parts that stand beside each other and whose magnitude is a level nobody else in the file gives.
/// </summary>
internal static class ComplexPairs
{
    /// <summary>The pairs; their level is 20·log10 of the magnitude.</summary>
    /// <param name="names">All columns.</param>
    /// <param name="levels">Columns that are levels already.</param>
    public static ImmutableArray<LevelColumn> Find(ImmutableArray<ColumnName> names, IReadOnlyList<int> levels)
    {
        var pairs = ImmutableArray.CreateBuilder<LevelColumn>();
        HashSet<PairKey> given = [.. levels.Select(l => Key(names[l]))];
        HashSet<string?> parameters = [.. levels.Select(l => names[l].Parameter)];
        Dictionary<PairKey, int> imaginaries = Imaginaries(names);
        for (int i = 0; i < names.Length; i++)
        {
            ColumnName real = names[i];
            if (real.Part != ComplexPart.Real || Partner(names, i, imaginaries) is not { } partner)
            {
                continue;
            }

            // A log magnitude beside the pair says the same.
            if (!(real.Base.Length == 0 ? parameters.Contains(real.Parameter) : given.Contains(Key(real))))
            {
                pairs.Add(new LevelColumn(i, real.Base.Length > 0 ? real.Base : real.Parameter ?? "", LevelUnit.Decibels)
                { Imaginary = partner, Quantity = real.Parameter ?? "level" });
            }
        }

        return pairs.ToImmutable();
    }

    // Beside it, or the only one of its name elsewhere: all real parts may stand before all imaginary ones.
    private static int? Partner(ImmutableArray<ColumnName> names, int real, Dictionary<PairKey, int> imaginaries)
    {
        bool beside =
            real + 1 < names.Length && names[real + 1].Part == ComplexPart.Imaginary && Key(names[real + 1]) == Key(names[real]);
        return beside ? real + 1 : imaginaries.TryGetValue(Key(names[real]), out int only) && only >= 0 ? only : null;
    }

    // Those of a name that two share are none.
    private static Dictionary<PairKey, int> Imaginaries(ImmutableArray<ColumnName> names)
    {
        var found = new Dictionary<PairKey, int>();
        for (int i = 0; i < names.Length; i++)
        {
            if (names[i].Part == ComplexPart.Imaginary && !found.TryAdd(Key(names[i]), i))
            {
                found[Key(names[i])] = -1;
            }
        }

        return found;
    }

    private static PairKey Key(ColumnName name) => new(name.Parameter, name.Base);

    /// <summary>What the two parts of a pair share.</summary>
    private readonly record struct PairKey(string? Parameter, string Base);
}
