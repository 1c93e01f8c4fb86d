using System.Text;

namespace SweepStats.Studies.Fuzzing;

/// <summary>Mutations of numbers, separators and words.</summary>
internal static class FieldMutations
{
    private static readonly string[] Odd =
    [
        "NaN", "nan", "Inf", "-Inf", "Infinity", "∞", "0", "-0", "-1", "1e308", "-1e308", "1e309", "1e999", "-1e999", "1e-999",
        "1e9999999999", "1e+", "e5", ".", "-", "+", "--1", "1.2.3", "1,5", "1.234,5", "1'000", "0x10", "1_0", "4.9e-324",
        "9007199254740993", "18446744073709551616", "99999999999999999999999999", "-2147.48", "-893.01029995664", "-200", "1e15",
        "1d5", "1E5", "½", "٣", "１２", "1 2", "", "\"1\"", "\"", "1dBm", "2GHz", "2,5 MHz", "-70.5dBm", "1e6Hz", "true", "n/a",
        "#DIV/0!", "--", "*",
    ];

    private static readonly string[] Words =
    [
        "Frequency", "frequency_hz", "Freq", "Frequenz", "Stimulus", "Level", "level_dbm", "Pegel", "Trace", "Trace 1", "Phase",
        "(Hz)", "(kHz)", "(MHz)", "[GHz]", "(dBm)", "(dBuV)", "(dBµV)", "dBuVPerMeter", "(dB)", "(dB/m)", "(V)", "(W)", "(deg)",
        "(REAL)", "(IMAG)", "re", "im", "S11", "S21", "S43", "RBW", "VBW", "Detector", "Sweep Time", "Attenuation", "Ref Level",
        "Points", "Values", "NumberPoints", "XStart", "XStop", "Start", "Stop", "Span", "Unit", "DATA", "BEGIN", "END",
        "[Header]", "[Traces]", "[Trace]", "[Markers]", "[Version]", "[Version] 2.0", "[Version] 2.1", "[Number of Ports]",
        "[Number of Ports] 0", "[Number of Ports] 99999999", "[Two-Port Data Order]", "21_12", "12_21", "[Number of Frequencies]",
        "[Number of Frequencies] 2000000000", "[Reference]", "[Matrix Format]", "Full", "Lower", "Upper", "[Mixed-Mode Order]",
        "[Network Data]", "[Noise Data]", "[Begin Information]", "[End Information]", "[End]", "# MHz S MA R 50",
        "# Hz S RI R 50", "# S DB", "# Y", "MA", "DB", "RI", "R 50", "R (50+j5)", "Sweep", "Date", "Time", "2024-03-05",
        "05/03/2024", "10:11:12", "Max Hold", "Sample", "RMS", "sep=;", "mV", "mW", "Hz", "dBm",
    ];

    private static readonly byte[] Marks = [(byte)',', (byte)';', (byte)'\t', (byte)' '];

    public static IReadOnlyList<Action<FuzzDraft, FuzzDice>> All { get; } =
        [ReplaceNumbers, ReplaceNumbers, SwapSeparators, SwapDecimalMarks, HugeField, SwapWords, InsertWord, Nest, AddColumn];

    private static void ReplaceNumbers(FuzzDraft draft, FuzzDice dice)
    {
        int times = dice.OneIn(4) ? 20 : 1;
        for (int i = 0; i < times; i++)
        {
            List<(int Start, int Length)> numbers = draft.Numbers();
            if (numbers.Count > 0)
            {
                (int start, int length) = dice.Of(numbers);
                draft.Replace(start, length, Encoding.UTF8.GetBytes(dice.Of(Odd)));
            }
        }
    }

    private static void SwapSeparators(FuzzDraft draft, FuzzDice dice) =>
        Swap(draft, dice, dice.Of(Marks), dice.Of(Marks), both: dice.OneIn(2));

    private static void SwapDecimalMarks(FuzzDraft draft, FuzzDice dice) =>
        Swap(draft, dice, (byte)'.', (byte)',', both: dice.OneIn(2));

    // In the whole file or in one stretch of it.
    private static void Swap(FuzzDraft draft, FuzzDice dice, byte one, byte other, bool both)
    {
        byte[] content = [.. draft.Content];
        int start = dice.OneIn(2) ? 0 : dice.Below(content.Length);
        int end = start == 0 ? content.Length : Math.Min(content.Length, start + dice.Below(200));
        for (int i = start; i < end; i++)
        {
            content[i] = content[i] == one ? other : both && content[i] == other ? one : content[i];
        }

        draft.Content = content;
    }

    private static void HugeField(FuzzDraft draft, FuzzDice dice)
    {
        List<(int Start, int Length)> numbers = draft.Numbers();
        int size = dice.Of([30, 210, 1000, 10_000]);
        string huge = dice.Below(5) switch
        {
            0 => new string('9', size),
            1 => "0." + new string('0', size) + "1",
            2 => "1e" + new string('9', size),
            3 => new string('A', size),
            _ => "1e-" + new string('0', size) + "7",
        };
        (int start, int length) = numbers.Count > 0 ? dice.Of(numbers) : (dice.Below(draft.Content.Length + 1), 0);
        draft.Replace(start, dice.OneIn(2) ? length : 0, Encoding.ASCII.GetBytes(huge));
    }

    private static void SwapWords(FuzzDraft draft, FuzzDice dice)
    {
        for (int tries = 0; tries < 40; tries++)
        {
            byte[] word = Encoding.UTF8.GetBytes(dice.Of(Words));
            int at = draft.Content.AsSpan().IndexOf(word);
            if (at >= 0)
            {
                draft.Replace(at, word.Length, Encoding.UTF8.GetBytes(dice.Of(Words)));
                return;
            }
        }
    }

    private static void InsertWord(FuzzDraft draft, FuzzDice dice) =>
        draft.Replace(dice.Below(draft.Content.Length + 1), 0, Encoding.UTF8.GetBytes(dice.Of(Words)));

    private static void Nest(FuzzDraft draft, FuzzDice dice)
    {
        string opened = dice.Of(["(", "[", "\"", "((", "[[", "\"(", "\"\"", "([", "{", "<", "!", "#", "(1", "\"1\",", "[End]"]);
        int times = dice.Of([3, 30, 300, 3000]);
        string closed = dice.OneIn(3) ? new string(dice.Of([')', ']', '"']), times) : "";
        draft.Replace(dice.Below(draft.Content.Length + 1), 0,
            Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(opened, times)) + closed));
    }

    private static void AddColumn(FuzzDraft draft, FuzzDice dice)
    {
        byte[] field = Encoding.UTF8.GetBytes((char)dice.Of(Marks) + (dice.OneIn(2) ? dice.Of(Odd) : ""));
        List<byte> content = [];
        foreach ((int start, int length) in draft.Lines())
        {
            ReadOnlySpan<byte> line = draft.Content.AsSpan(start, length);
            int end = line.TrimEnd("\r\n"u8).Length;
            content.AddRange(line[..end]);
            content.AddRange(dice.OneIn(30) ? [] : field);
            content.AddRange(line[end..]);
        }

        draft.Content = [.. content];
    }
}
