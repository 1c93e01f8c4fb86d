using System.Globalization;

namespace SweepStats.Report.Findings;

/// <summary>
/// Tells in one sentence what several sentences say that differ only in their numbers: "At 32 of 201 …", "At 52 of 201 …" is "At
/// 32 to 52 of 201 …".
/// </summary>
internal static class MergedMessage
{
    /// <summary>The sentence; null where the sentences differ in more than numbers.</summary>
    public static string? Of(IReadOnlyList<string> messages)
    {
        string[][] words = [.. messages.Select(m => m.Split(' '))];
        if (words.Any(w => w.Length != words[0].Length))
        {
            return null;
        }

        var merged = new string[words[0].Length];
        for (int i = 0; i < merged.Length; i++)
        {
            if (Word([.. words.Select(w => w[i])]) is not { } word)
            {
                return null;
            }

            merged[i] = word;
        }

        return string.Join(' ', merged);
    }

    private static string? Word(string[] words)
    {
        if (words.All(w => w == words[0]))
        {
            return words[0];
        }

        string[] numbers = [.. words.Select(w => w.TrimEnd(',', ';', ':', '.'))];
        string end = words[0][numbers[0].Length..];
        if (words.Where((w, i) => w[numbers[i].Length..] != end).Any() || !numbers.All(n => Number(n) is not null))
        {
            return null;
        }

        string low = numbers.MinBy(n => Number(n)!.Value)!;
        string high = numbers.MaxBy(n => Number(n)!.Value)!;
        return $"{low} to {high}{end}";
    }

    private static double? Number(string word) =>
        double.TryParse(word.Replace('−', '-'), NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            ? number : null;
}
