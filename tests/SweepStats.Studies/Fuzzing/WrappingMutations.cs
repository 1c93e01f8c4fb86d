using System.Text;

namespace SweepStats.Studies.Fuzzing;

/// <summary>Mutations of what a file is wrapped in: its encoding and its name.</summary>
internal static class WrappingMutations
{
    private static readonly string[] Extensions =
        [".csv", ".txt", ".dat", ".tsv", ".s1p", ".s2p", ".s3p", ".s4p", ".S2P", ".s5p", ".s0p", ".ts", ""];

    private static readonly byte[][] Marks =
        [[0xEF, 0xBB, 0xBF], [0xFF, 0xFE], [0xFE, 0xFF], [0xFF, 0xFE, 0, 0], [0, 0, 0xFE, 0xFF], [0xEF, 0xBB],
            [0xEF, 0xBB, 0xBF, 0xEF, 0xBB, 0xBF], [0x2B, 0x2F, 0x76, 0x38]];

    public static IReadOnlyList<Action<FuzzDraft, FuzzDice>> All { get; } = [Encode, Mark, PadWithNul, Rename, Rename];

    private static void Encode(FuzzDraft draft, FuzzDice dice)
    {
        string text = Encoding.UTF8.GetString(draft.Content);
        Encoding encoding =
            dice.Of([Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.Latin1, Encoding.UTF32, Encoding.UTF8]);
        draft.Content = [.. dice.OneIn(3) ? [] : encoding.GetPreamble(), .. encoding.GetBytes(text)];
    }

    private static void Mark(FuzzDraft draft, FuzzDice dice) => draft.Replace(0, 0, dice.Of(Marks));

    private static void PadWithNul(FuzzDraft draft, FuzzDice dice)
    {
        byte after = dice.Of([(byte)',', (byte)'\n', (byte)';', (byte)' ', (byte)'1']);
        draft.Content = [.. draft.Content.SelectMany(b => b == after ? [b, (byte)0] : new[] { b })];
    }

    private static void Rename(FuzzDraft draft, FuzzDice dice) =>
        draft.Name = Path.GetFileNameWithoutExtension(draft.Name) + dice.Of(Extensions);
}
