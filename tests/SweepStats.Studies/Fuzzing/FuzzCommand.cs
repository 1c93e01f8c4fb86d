using System.Globalization;

namespace SweepStats.Studies.Fuzzing;

/// <summary>The words behind the study verbs that fuzz.</summary>
internal static class FuzzCommand
{
    /// <summary><c>FILES SEED [FOLDER [FOUND]]</c>; null where the words are others.</summary>
    public static int? Run(ReadOnlySpan<string> words)
    {
        if (words.Length is < 2 or > 4 || !Number(words[0], out long files) || !Number(words[1], out long seed))
        {
            return null;
        }

        string? folder = words.Length > 2 && words[2] != "-" ? words[2] : null;
        return FuzzRun.Start(new FuzzPlan(files, seed, folder),
            words.Length > 3 ? words[3] : Path.Combine(Path.GetTempPath(), "fuzz-found"));
    }

    /// <summary><c>[FOLDER]</c>: what comes of the seeds unchanged.</summary>
    public static int Seeds(string? folder)
    {
        foreach ((string name, var reading) in new FuzzPlan(0, 0, folder).Unchanged())
        {
            Console.WriteLine(reading.Faults.IsEmpty
                ? FormattableString.Invariant(
                    $"{name}: {reading.Traces.Length} traces, {reading.Traces.Count(t => !t.Doubts.IsEmpty)} of them doubtful")
                : $"{name}: refused, {reading.Faults[0]}");
        }

        return 0;
    }

    private static bool Number(string word, out long number) =>
        long.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out number);
}
