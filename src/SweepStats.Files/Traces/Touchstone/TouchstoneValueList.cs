namespace SweepStats.Files.Traces.Touchstone;

/// <summary>The values of a keyword that may run on over several lines.</summary>
/// <param name="keyword">The keyword in its brackets.</param>
internal sealed class TouchstoneValueList(string keyword)
{
    private const int LongestShown = 40;
    private const int MostKept = 100;

    /// <summary>Line of the keyword, from 1; null where the file does not have it.</summary>
    public int? Line { get; set; }

    /// <summary>The values so far.</summary>
    public List<string> Values { get; } = [];

    /// <summary>The values as messages show them.</summary>
    public string Shown => Short(Values);

    /// <summary>Adds values; beyond as many as any file of four ports has, their number does not matter.</summary>
    public void Add(IEnumerable<string> words) => Values.AddRange(words.Take(MostKept - Math.Min(MostKept, Values.Count)));

    /// <summary>Keyword and values as messages show them.</summary>
    public override string ToString() => $"{keyword} {Shown}";

    /// <summary>Words in one text, cut where it grows long.</summary>
    public static string Short(IEnumerable<string> words)
    {
        string all = string.Join(' ', words.Take(LongestShown));
        return all.Length <= LongestShown ? all : all[..LongestShown] + "…";
    }
}
