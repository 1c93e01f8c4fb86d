namespace SweepStats.Planted.Faults;

/// <summary>The faults that cannot change a result, each with the reason: equivalent.txt.</summary>
internal sealed class Equivalents
{
    private readonly Dictionary<string, string> reasons;

    private Equivalents(Dictionary<string, string> reasons) => this.reasons = reasons;

    /// <summary>Reads the list: a fault's file, right and faulty text on one line, the reason on the next.</summary>
    public static Equivalents Read(string path)
    {
        string[] lines = [.. File.ReadLines(path).Where(line => line.Length > 0 && line[0] != '#')];
        return lines.Length % 2 == 0
            ? new Equivalents(lines.Chunk(2).ToDictionary(pair => pair[0].Trim(), pair => pair[1].Trim()))
            : throw new InvalidOperationException($"{path}: each fault needs a line of its own and one with the reason.");
    }

    /// <summary>Why a fault cannot change a result; null where it is not in the list.</summary>
    public string? Why(Fault fault) => reasons.GetValueOrDefault(fault.Key);
}
