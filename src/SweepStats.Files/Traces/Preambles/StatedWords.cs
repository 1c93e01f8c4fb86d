namespace SweepStats.Files.Traces.Preambles;

/// <summary>What the lines above the data state in words. Where two lines differ, neither counts.</summary>
internal sealed class StatedWords
{
    private const int MostOfOne = 2;
    private const int LongestWord = 60;

    private readonly Dictionary<Setting, ImmutableArray<string>> _found = [];
    private readonly NumberedWords _numbered = new();

    /// <summary>
    /// Takes the words of a setting: the first statement counts; a later one that differs makes the setting unknown rather than
    /// the last one true.
    /// </summary>
    public void Take(Setting setting, ImmutableArray<string> values) =>
        _found[setting] =
            _found.TryGetValue(setting, out ImmutableArray<string> before) && !before.SequenceEqual(values) ? [] : values;

    /// <summary>Takes words that count only where no other statement does.</summary>
    public void TakeUnlessStated(Setting setting, ImmutableArray<string> values) => _found.TryAdd(setting, values);

    /// <summary>Takes what is stated for the trace of a number.</summary>
    public void Take(Setting setting, int number, Statement statement) =>
        _numbered.Take(setting, number, string.Join(' ', statement.Values));

    /// <summary>All words of a setting; empty where none are stated.</summary>
    public ImmutableArray<string> All(Setting setting) =>
        _found.TryGetValue(setting, out ImmutableArray<string> values) ? values : [];

    /// <summary>The one word of a setting; null where none is stated, or several are.</summary>
    public string? One(Setting setting) =>
        All(setting) is { Length: > 0 } values && values.All(v => v == values[0]) ? values[0] : null;

    /// <summary>The word of one of several traces; null where that is not stated.</summary>
    /// <param name="setting">What is asked for.</param>
    /// <param name="trace">Place of the trace from 0.</param>
    /// <param name="traces">Number of traces in the file.</param>
    public string? Of(Setting setting, int trace, int traces)
    {
        if (_numbered.Of(setting, trace, traces) is { } own)
        {
            return Printable(own);
        }

        ImmutableArray<string> values = All(setting);
        if (values.IsEmpty)
        {
            return null;
        }

        ImmutableArray<string> bare = values.Length == traces ? values
            : [.. values.Where((v, i) => i == 0 || !SettingFlags.IsFlag(v))];
        if (bare.Length != traces && bare.Length > MostOfOne)
        {
            // As many values as there are traces in some other count of them: nobody can tell which is this one's.
            return bare.All(v => v == bare[0]) ? bare[0] : null;
        }

        return Printable(bare.Length == traces ? bare[trace] : string.Join(' ', bare));
    }

    private static string? Printable(string text)
    {
        string word = ForeignWords.ToEnglish(new string([.. text.Where(c => !char.IsControl(c))]));
        return word.Length is > 0 and <= LongestWord && !word.AsSpan().Trim("-–— ").IsEmpty ? word : null;
    }
}
