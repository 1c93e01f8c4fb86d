namespace SweepStats.Files.Traces.Preambles;

/// <summary>What lines such as <c>Trace 2 Mode,Max Hold</c> state for the trace of a number.</summary>
internal sealed class NumberedWords
{
    private readonly Dictionary<Setting, SortedDictionary<int, string?>> _words = [];

    /// <summary>Takes a word; two that differ for the same trace leave it unknown.</summary>
    public void Take(Setting setting, int number, string word)
    {
        if (!_words.TryGetValue(setting, out SortedDictionary<int, string?>? words))
        {
            _words.Add(setting, words = []);
        }

        words[number] = words.TryGetValue(number, out string? before) && before != word ? null : word;
    }

    /// <summary>The word of a trace; null where none is stated for it.</summary>
    /// <param name="setting">What is asked for.</param>
    /// <param name="trace">Place of the trace from 0.</param>
    /// <param name="traces">Number of traces in the file.</param>
    public string? Of(Setting setting, int trace, int traces)
    {
        if (!_words.TryGetValue(setting, out SortedDictionary<int, string?>? words))
        {
            return null;
        }

        if (traces > 1)
        {
            return words.GetValueOrDefault(trace + 1);
        }

        // A file of one trace may state the settings of others, of which those that are not shown are not it.
        string?[] shown = [.. words.Where(w => !IsBlank(w.Key)).Select(w => w.Value).Distinct()];
        return shown is [var only] ? only : null;
    }

    private bool IsBlank(int number) =>
        _words.TryGetValue(Setting.TraceMode, out SortedDictionary<int, string?>? modes)
        && modes.GetValueOrDefault(number) is { } mode && TraceWords.IsBlank(mode);
}
