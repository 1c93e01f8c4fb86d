namespace SweepStats.Studies.Fuzzing;

/// <summary>Mutations that know nothing of text.</summary>
internal static class ByteMutations
{
    private static readonly byte[] Telling = [0x00, 0xFF, 0xFE, 0xEF, 0x80, 0xC2, 0xE2, 0x0A, 0x0D, 0x09, 0x20, 0x22, 0x21, 0x23,
        0x2C, 0x3B, 0x5B, 0x5D, 0x28, 0x2E, 0x2D, 0x65, 0x7F, 0x85];

    public static IReadOnlyList<Action<FuzzDraft, FuzzDice>> All { get; } =
        [FlipBits, Insert, Delete, Overwrite, CutStart, CutEnd, Join, RepeatBlock];

    private static void FlipBits(FuzzDraft draft, FuzzDice dice)
    {
        byte[] content = [.. draft.Content];
        for (int i = dice.Below(8); i >= 0 && content.Length > 0; i--)
        {
            content[dice.Below(content.Length)] ^= (byte)(1 << dice.Below(8));
        }

        draft.Content = content;
    }

    private static void Insert(FuzzDraft draft, FuzzDice dice)
    {
        byte[] added = new byte[1 + dice.Below(dice.OneIn(10) ? 400 : 6)];
        byte same = dice.Of(Telling);
        bool repeat = dice.OneIn(3);
        for (int i = 0; i < added.Length; i++)
        {
            added[i] = repeat ? same : dice.OneIn(2) ? dice.Of(Telling) : (byte)dice.Below(256);
        }

        draft.Replace(dice.Below(draft.Content.Length + 1), 0, added);
    }

    private static void Delete(FuzzDraft draft, FuzzDice dice)
    {
        int start = dice.Below(draft.Content.Length);
        draft.Replace(start, Math.Min(draft.Content.Length - start, 1 + dice.Below(dice.OneIn(4) ? 200 : 4)), []);
    }

    private static void Overwrite(FuzzDraft draft, FuzzDice dice)
    {
        byte[] content = [.. draft.Content];
        for (int i = dice.Below(5); i >= 0 && content.Length > 0; i--)
        {
            content[dice.Below(content.Length)] = dice.Of(Telling);
        }

        draft.Content = content;
    }

    private static void CutStart(FuzzDraft draft, FuzzDice dice) => draft.Replace(0, dice.Below(draft.Content.Length + 1), []);

    private static void CutEnd(FuzzDraft draft, FuzzDice dice)
    {
        int kept = dice.OneIn(3) ? draft.Content.Length - dice.Below(Math.Min(8, draft.Content.Length) + 1)
            : dice.Below(draft.Content.Length + 1);
        draft.Replace(kept, draft.Content.Length - kept, []);
    }

    private static void Join(FuzzDraft draft, FuzzDice dice)
    {
        FuzzSeed other = dice.Of(draft.Seeds);
        int from = dice.OneIn(2) ? 0 : dice.Below(other.Content.Length);
        int at = dice.OneIn(2) ? draft.Content.Length : dice.Below(draft.Content.Length + 1);
        draft.Replace(at, 0, other.Content.AsSpan(from));
        draft.Name = dice.OneIn(4) ? other.Name : draft.Name;
    }

    private static void RepeatBlock(FuzzDraft draft, FuzzDice dice)
    {
        int start = dice.Below(draft.Content.Length);
        byte[] block = [.. draft.Content.AsSpan(start, Math.Min(draft.Content.Length - start, 1 + dice.Below(2000)))];
        int times = Math.Min(1 + dice.Below(dice.OneIn(10) ? 200 : 4), (FuzzDraft.Longest / block.Length.AtLeastOne()) + 1);
        draft.Replace(start, 0, [.. Enumerable.Repeat(block, times).SelectMany(b => b)]);
    }

    private static int AtLeastOne(this int count) => Math.Max(1, count);
}
