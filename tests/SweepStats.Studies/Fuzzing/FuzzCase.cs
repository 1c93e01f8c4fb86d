using SweepStats.Files.Traces;

namespace SweepStats.Studies.Fuzzing;

/// <summary>One mutated file, and what is known beside its content.</summary>
internal sealed record FuzzCase(long File, string Name, byte[] Content, TraceReadOptions Options)
{
    private const int MostMutations = 6;

    private static readonly Action<FuzzDraft, FuzzDice>[][] Kinds =
        [[.. ByteMutations.All], [.. LineMutations.All], [.. FieldMutations.All], [.. FieldMutations.All],
            [.. WrappingMutations.All]];

    private static readonly string[] Columns = ["2", "1", "S11", "S21", "S12", "level_dbm", "7", "Trace 1"];

    /// <summary>The file of a number in a run: the same for the same seed and the same seed files.</summary>
    public static FuzzCase Of(long file, long seed, IReadOnlyList<FuzzSeed> seeds)
    {
        var dice = new FuzzDice(seed, file);
        var draft = new FuzzDraft(dice.Of(seeds), seeds);
        for (int i = dice.OneIn(3) ? 1 + dice.Below(MostMutations) : 1; i > 0; i--)
        {
            dice.Of(dice.Of(Kinds))(draft, dice);
            if (draft.Content.Length > FuzzDraft.Longest)
            {
                draft.Content = draft.Content[..FuzzDraft.Longest];
            }
        }

        return new FuzzCase(file, draft.Name, draft.Content, Known(file, dice));
    }

    /// <summary>What a campaign states, for every other file.</summary>
    private static TraceReadOptions Known(long file, FuzzDice dice) => file % 2 == 0
        ? new TraceReadOptions()
        : new TraceReadOptions
        {
            FrequencyUnit = FrequencyUnit.Hertz,
            LevelUnit = LevelUnit.DecibelMilliwatts,
            Columns = dice.OneIn(6) ? [dice.Of(Columns)] : [],
        };
}
