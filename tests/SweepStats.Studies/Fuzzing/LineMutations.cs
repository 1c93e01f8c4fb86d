using System.Text;

namespace SweepStats.Studies.Fuzzing;

/// <summary>Mutations of whole lines.</summary>
internal static class LineMutations
{
    private static readonly string[] Ends =
        ["\n", "\r\n", "\r", "\n\n", "\n\r", "\r\r\n", "", " \n", ",,\n", "\u2028", "\v", "\f"];

    private static readonly string[] Whole =
    [
        "", " ", ",,", ";;", "\t", "DATA", "BEGIN", "END", "[Traces]", "[Trace]", "[Network Data]", "[End]", "# MHz S DB R 50",
        "#", "!", "! remark", "sep=;", "sep=,", "Trace B", "1,2", "1;2", "1 2", "1,2,3", "100", "1e6,-70", "1000000,-70.5",
        "Frequency (Hz),Level (dBm)", "Frequency (MHz);Pegel (dBµV)", "f,x", "Hz,dBm", "RBW,9 kHz", "RBW,-1",
        "Points,99999999999", "Values;1001;", "Start,1e999", "\"", "\"open,1",
    ];

    private static readonly string[] Strains =
    [
        " ", "\t", "a ", "a", "a  ", "-", "1", "1.", "1,", ".111", ",111", "'111", "a=", "a: ", "R ", "(", "( ", "\"", "/", "_",
        ": ", ", ", "a(b)", "10:11:12 ", "2024-", "1-2-", "Hz ", "[a] ", "é",
    ];

    public static IReadOnlyList<Action<FuzzDraft, FuzzDice>> All { get; } =
        [Duplicate, Remove, Move, Shuffle, Reverse, InsertWhole, ChangeEnds, RepeatLines, Strain];

    private static void Duplicate(FuzzDraft draft, FuzzDice dice) => Repeat(draft, dice, 1, 1);

    private static void RepeatLines(FuzzDraft draft, FuzzDice dice) =>
        Repeat(draft, dice, 1 + dice.Below(30), 1 + dice.Below(dice.OneIn(8) ? 60 : 4));

    private static void Repeat(FuzzDraft draft, FuzzDice dice, int lines, int times)
    {
        List<(int Start, int Length)> all = draft.Lines();
        if (all.Count == 0)
        {
            return;
        }

        int first = dice.Below(all.Count);
        int last = Math.Min(all.Count, first + lines) - 1;
        byte[] block = draft.Content[all[first].Start..(all[last].Start + all[last].Length)];
        int place = dice.OneIn(2) ? all[first].Start : all[dice.Below(all.Count)].Start;
        draft.Replace(place, 0, [.. Enumerable.Repeat(block, times).SelectMany(b => b)]);
    }

    private static void Remove(FuzzDraft draft, FuzzDice dice)
    {
        List<(int Start, int Length)> all = draft.Lines();
        if (all.Count == 0)
        {
            return;
        }

        int first = dice.Below(all.Count);
        int last = Math.Min(all.Count - 1, first + dice.Below(dice.OneIn(3) ? 20 : 2));
        draft.Replace(all[first].Start, all[last].Start + all[last].Length - all[first].Start, []);
    }

    private static void Move(FuzzDraft draft, FuzzDice dice) => Rearrange(draft, lines =>
    {
        int from = dice.Below(lines.Count);
        byte[] line = lines[from];
        lines.RemoveAt(from);
        lines.Insert(dice.Below(lines.Count + 1), line);
    });

    private static void Shuffle(FuzzDraft draft, FuzzDice dice) => Rearrange(draft, lines =>
    {
        for (int i = 0; i < lines.Count; i++)
        {
            int other = dice.Below(lines.Count);
            (lines[i], lines[other]) = (lines[other], lines[i]);
        }
    });

    private static void Reverse(FuzzDraft draft, FuzzDice dice) => Rearrange(draft, lines =>
    {
        int first = dice.Below(lines.Count);
        lines.Reverse(first, lines.Count - first);
    });

    private static void InsertWhole(FuzzDraft draft, FuzzDice dice)
    {
        List<(int Start, int Length)> all = draft.Lines();
        byte[] line = Encoding.UTF8.GetBytes(dice.Of(Whole) + dice.Of(Ends));
        int times = dice.OneIn(10) ? 100 : 1;
        draft.Replace(all.Count == 0 ? 0 : all[dice.Below(all.Count)].Start, 0,
            [.. Enumerable.Repeat(line, times).SelectMany(b => b)]);
    }

    // A line of one thing over and over, near the lengths at which readers stop looking: what patterns go back and forth in.
    private static void Strain(FuzzDraft draft, FuzzDice dice)
    {
        int length = dice.Of([60, 200, 399, 400, 401, 999, 1000, 1001, 5000]);
        string start =
            dice.Of(["", "a", "a:", "a:x", "RBW", "RBW,", "1,", "! ", "# ", "Frequency (Hz", "\"", "[Reference] ", "Date,"]);
        string end = dice.Of(["", "", "!", "1", "x", ",1", "\"", ")", ":", "Hz"]);
        int body = length - start.Length - end.Length;
        int first = dice.OneIn(2) ? body : dice.Below(body);
        string line = start + Repeated(dice.Of(Strains), first) + Repeated(dice.Of(Strains), body - first) + end + "\n";
        List<(int Start, int Length)> all = draft.Lines();
        int at = all.Count == 0 || dice.OneIn(2) ? 0 : all[dice.Below(all.Count)].Start;
        draft.Replace(at, 0,
            Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(line, 1 + dice.Below(dice.OneIn(6) ? 60 : 3)))));
    }

    private static string Repeated(string unit, int length) =>
        string.Concat(Enumerable.Repeat(unit, (length / unit.Length) + 1))[..length];

    private static void ChangeEnds(FuzzDraft draft, FuzzDice dice)
    {
        byte[] one = Encoding.UTF8.GetBytes(dice.Of(Ends));
        byte[] other = dice.OneIn(3) ? Encoding.UTF8.GetBytes(dice.Of(Ends)) : one;
        Rearrange(draft, lines =>
        {
            for (int i = 0; i < lines.Count; i++)
            {
                lines[i] = [.. lines[i].AsSpan().TrimEnd("\r\n"u8), .. dice.OneIn(2) ? one : other];
            }
        });
    }

    private static void Rearrange(FuzzDraft draft, Action<List<byte[]>> change)
    {
        List<byte[]> lines = [.. draft.Lines().Select(l => draft.Content[l.Start..(l.Start + l.Length)])];
        if (lines.Count > 0)
        {
            change(lines);
            draft.Content = [.. lines.SelectMany(l => l)];
        }
    }
}
