using System.Text.RegularExpressions;
using SweepStats.Planted.Faults;

namespace SweepStats.Planted.Trials;

/// <summary>
/// Which test caught a fault before, by an earlier page and by what ran here since: it is tried first, and not at all where it
/// ran here beside the same core.
/// </summary>
internal sealed partial class EarlierTrials
{
    private readonly Dictionary<string, string> tests = [];
    private readonly Dictionary<string, string> settled = [];
    private readonly string version;
    private readonly Lock writing = new();

    /// <summary>Reads them.</summary>
    /// <param name="page">Page of an earlier run; none where there is no such file.</param>
    /// <param name="core">The core.</param>
    public EarlierTrials(string page, CoreSource core)
    {
        version = core.Version;
        foreach (string line in Lines(page))
        {
            if (Row().Match(line) is { Success: true } row)
            {
                string fault = $"{row.Groups["file"].Value}: {Plain(row.Groups["what"].Value)}";
                tests[fault] = StudyPage.Tests + row.Groups["test"].Value;
            }
        }

        foreach (string[] pair in Lines(Kept).Select(line => line.Split('\t')))
        {
            tests[pair[0]] = pair[1];
            if (pair[2] == version)
            {
                settled[pair[0]] = pair[1];
            }
        }
    }

    private static string Kept => Path.Combine(Repository.Bin, "caught.txt");

    /// <summary>The test that caught a fault; null where none is known.</summary>
    public string? Of(Fault fault) => tests.GetValueOrDefault(fault.Key);

    /// <summary>The test that caught it here beside the same core; null where none did.</summary>
    public string? Settled(Fault fault) => settled.GetValueOrDefault(fault.Key);

    /// <summary>Keeps what came of a fault, where a test caught it.</summary>
    public void Keep(Trial trial)
    {
        if (trial.Outcome.Caught is { } test && Settled(trial.Fault) is null)
        {
            lock (writing)
            {
                File.AppendAllText(Kept, $"{trial.Fault.Key}\t{test}\t{version}\n");
            }
        }
    }

    private static IEnumerable<string> Lines(string path) => File.Exists(path) ? File.ReadLines(path) : [];

    private static string Plain(string cell) => cell.Replace("\\|", "|", StringComparison.Ordinal)
        .Replace("` → `", " → ", StringComparison.Ordinal).Trim('`');

    [GeneratedRegex(@"^\| \d+ \| (?<file>[\w./]+):\d+ \| (?<what>`.*`) \| (?<test>\w+\.[\w.]+) \|$")]
    private static partial Regex Row();
}
