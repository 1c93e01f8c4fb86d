using System.Text.RegularExpressions;

namespace SweepStats.Studies.Fuzzing;

/// <summary>
/// Keeps files that failed: a few of every kind, made shorter as long as they fail alike, with a line each in a list.
/// </summary>
internal sealed partial class FoundFiles(string folder)
{
    private const int KeptOfAKind = 2;
    private const int Trials = 400;
    private const int LongestKind = 52;

    private readonly Dictionary<string, int> _kinds = [];
    private readonly Lock _lock = new();

    /// <summary>How often each kind of failure came.</summary>
    public IReadOnlyDictionary<string, int> Kinds => _kinds;

    public void Take(FuzzCase file, FuzzOutcome outcome, FuzzReading reader)
    {
        lock (_lock)
        {
            string kind = Kind(outcome);
            _kinds[kind] = _kinds.GetValueOrDefault(kind) + 1;
            if (_kinds[kind] <= KeptOfAKind)
            {
                Keep(Shortened(file, kind, reader), outcome.Told, outcome.Failure.ToString()!);
            }
        }
    }

    /// <summary>Keeps a file as it is.</summary>
    public void Keep(FuzzCase file, string told, string failure)
    {
        Directory.CreateDirectory(folder);
        string name = FormattableString.Invariant($"{failure.ToLowerInvariant()}-{file.File}{Path.GetExtension(file.Name)}");
        File.WriteAllBytes(Path.Combine(folder, name), file.Content);
        string options = file.Options.FrequencyUnit is null ? "no options"
            : "Hz, dBm" + (file.Options.Columns.IsEmpty ? "" : ", column " + string.Join(' ', file.Options.Columns));
        string line = $"{name} ({options}; from {file.Name}): {told}";
        File.AppendAllText(Path.Combine(folder, "found.txt"), line + "\n");
        Console.WriteLine(line);
    }

    // Without what is different in every file: numbers, and what is quoted from the file.
    private static string Kind(FuzzOutcome outcome)
    {
        string kind = $"{outcome.Failure} {Digits().Replace(Quoted().Replace(outcome.Told, "'…'"), "0")}";
        return kind[..Math.Min(kind.Length, LongestKind)];
    }

    // Runs of lines are left out, halving their length, as long as the file fails in the same way.
    private static FuzzCase Shortened(FuzzCase file, string kind, FuzzReading reader)
    {
        int trials = kind.StartsWith(nameof(FuzzFailure.Hang), StringComparison.Ordinal) ? Trials / 40 : Trials;
        List<byte[]> lines = Lines(file.Content);
        for (int run = Math.Max(1, lines.Count / 2); run >= 1 && trials > 0; run /= 2)
        {
            for (int at = 0; at < lines.Count && trials > 0;)
            {
                List<byte[]> fewer = [.. lines[..at], .. lines[Math.Min(lines.Count, at + run)..]];
                trials--;
                FuzzOutcome outcome = reader.Judge(file with { Content = [.. fewer.SelectMany(l => l)] });
                if (outcome.Failure is not null && Kind(outcome) == kind)
                {
                    lines = fewer;
                }
                else
                {
                    at += run;
                }
            }
        }

        return file with { Content = [.. lines.SelectMany(l => l)] };
    }

    private static List<byte[]> Lines(byte[] content)
    {
        List<byte[]> lines = [];
        for (int start = 0, end; start < content.Length; start = end)
        {
            int at = Array.IndexOf(content, (byte)'\n', start);
            end = at < 0 ? content.Length : at + 1;
            lines.Add(content[start..end]);
        }

        return lines;
    }

    [GeneratedRegex("'[^']*(?:'|$)")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"\d+")]
    private static partial Regex Digits();
}
