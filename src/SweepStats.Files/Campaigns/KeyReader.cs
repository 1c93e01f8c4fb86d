using SweepStats.Files.Campaigns.Settings;
using SweepStats.Sweeps;
using Tomlyn.Syntax;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// Takes the keys of one section of campaign.toml, each with its type and range; tells of every key that the table of settings
/// has not.
/// </summary>
internal sealed class KeyReader
{
    private readonly Dictionary<string, KeyValueSyntax> _keys = new(StringComparer.Ordinal);
    private readonly string[] _known;
    private readonly string _section;

    /// <summary>Prepares a section.</summary>
    /// <param name="section">Which keys it may have.</param>
    /// <param name="line">Line of its heading, from 1.</param>
    /// <param name="items">Its keys.</param>
    /// <param name="root">The folder of the file.</param>
    /// <param name="faults">Takes what is wrong.</param>
    public KeyReader(SettingsSection section, int line, IEnumerable<KeyValueSyntax> items, string root, FaultList faults)
    {
        (_section, Line, Root, Faults) = (section.Name, line, root, faults);
        _known = [.. section.Settings.Select(s => s.Key)];
        foreach (KeyValueSyntax item in items)
        {
            string key = NameOf(item.Key);
            if (!_keys.TryAdd(key, item))
            {
                faults.Add(LineOf(item), $"the key '{key}' is there twice", "keep one of them");
            }
        }
    }

    public int Line { get; }

    /// <summary>The folder that paths are relative to.</summary>
    public string Root { get; }

    public FaultList Faults { get; }

    public static int LineOf(SyntaxNode node) => node.Span.Start.Line + 1;

    /// <summary>A key as written, dotted keys included.</summary>
    public static string NameOf(KeySyntax? key)
    {
        IEnumerable<BareKeyOrStringValueSyntax?> parts = key is null ? [] : [key.Key, .. key.DotKeys.Select(d => d.Key)];
        return string.Join('.', parts.Select(p => p switch
        {
            StringValueSyntax quoted => quoted.Value ?? "",
            BareKeySyntax bare => bare.Key?.Text ?? "",
            _ => "",
        }));
    }

    public double? Number(string key, double least, double most)
    {
        if (Value(key) is not { } value)
        {
            return null;
        }

        if (NumberOf(value) is not { } number)
        {
            Faults.Add(LineOf(value), $"{Label(key)} is not a number",
                "write a plain number, such as 10 or 30e6, without quotes or units");
            return null;
        }

        if (!(number >= least && number <= most))
        {
            Faults.Add(LineOf(value), FormattableString.Invariant($"{Label(key)} is {number:R}, which is out of range"),
                FormattableString.Invariant($"choose a value from {least:R} to {most:R}"));
            return null;
        }

        return number;
    }

    public string? Text(string key)
    {
        if (Value(key) is not { } value)
        {
            return null;
        }

        string? text = (value as StringValueSyntax)?.Value?.Trim();
        if (text is null)
        {
            Faults.Add(LineOf(value), $"{Label(key)} is not a text", "put it into double quotes");
        }
        else if (Bad(text) is { } bad)
        {
            Faults.Add(LineOf(value), $"{Label(key)} {bad.Problem}", bad.Remedy);
            return null;
        }

        return text;
    }

    /// <summary>A text that names a day; null where the key is missing or wrong.</summary>
    public string? Day(string key)
    {
        string? text = Text(key);
        if (text is null || !StatedDate.Days(text).IsEmpty)
        {
            return text;
        }

        Refuse(key, $"{Label(key)} is '{text}', which names no day",
            "write it as \"2026-10-05\", or as \"2026-10-05 to 2026-10-07\"");
        return null;
    }

    /// <summary>One of a few words; null where the key is missing or wrong.</summary>
    public T? Choice<T>(string key, params KeyWord<T>[] choices)
        where T : struct
    {
        if (Value(key) is not { } value)
        {
            return null;
        }

        string? word = (value as StringValueSyntax)?.Value?.Trim();
        foreach ((string known, T meaning) in choices)
        {
            if (string.Equals(known, word, StringComparison.OrdinalIgnoreCase))
            {
                return meaning;
            }
        }

        string[] words = [.. choices.Select(c => c.Word)];
        Faults.Add(
            LineOf(value), word is null ? $"{Label(key)} is not a text" : $"{Label(key)} is '{word}'{Spelling.Hint(word, words)}",
            "use " + string.Join(", ", words.Select(w => $"\"{w}\"")));
        return null;
    }

    public bool? Truth(string key)
    {
        if (Value(key) is not { } value)
        {
            return null;
        }

        if (value is BooleanValueSyntax truth)
        {
            return truth.Value;
        }

        Faults.Add(LineOf(value), $"{Label(key)} is neither true nor false", "write true or false without quotes");
        return null;
    }

    /// <summary>Pairs of numbers; null where the key is missing or wrong.</summary>
    public ImmutableArray<(double, double)>? Pairs(string key) => List<(double, double)>(key,
        item => ((item as ArraySyntax)?.Items.Select(i => i.Value is null ? null : NumberOf(i.Value)).ToArray() ?? [])
            is [{ } first, { } second] ? (first, second) : null,
        "pairs of numbers", "[[30e6, 20], [1e9, 40]]");

    /// <summary>Numbers, each with its line; null where the key is missing or wrong.</summary>
    public ImmutableArray<(double Number, int Line)>? Numbers(string key, double least, double most)
    {
        if (Value(key) is not { } value)
        {
            return null;
        }

        var numbers = ImmutableArray.CreateBuilder<(double, int)>();
        foreach (ValueSyntax? item in (value as ArraySyntax)?.Items.Select(i => i.Value) ?? [null])
        {
            if (item is null || NumberOf(item) is not { } number)
            {
                Faults.Add(LineOf(item ?? value), $"{Label(key)} is not a list of numbers", "write it as [30e6, 1e9]");
                return null;
            }

            if (!(number >= least && number <= most))
            {
                Faults.Add(LineOf(item), FormattableString.Invariant($"{Label(key)} holds {number:R}, which is out of range"),
                    FormattableString.Invariant($"choose values from {least:R} to {most:R}"));
                return null;
            }

            numbers.Add((number, LineOf(item)));
        }

        return numbers.ToImmutable();
    }

    /// <summary>Texts, each with its line; null where the key is missing or wrong.</summary>
    public ImmutableArray<(string Text, int Line)>? Texts(string key) => List<(string, int)>(key,
        item => (item as StringValueSyntax)?.Value is { } text ? (text.Trim(), LineOf(item)) : null,
        "texts", "[\"one\", \"another\"]");

    private ImmutableArray<T>? List<T>(string key, Func<ValueSyntax, T?> read, string what, string example)
        where T : struct
    {
        if (Value(key) is not { } value)
        {
            return null;
        }

        var list = ImmutableArray.CreateBuilder<T>();
        foreach (ValueSyntax? item in (value as ArraySyntax)?.Items.Select(i => i.Value) ?? [null])
        {
            if (item is null || read(item) is not { } entry)
            {
                Faults.Add(LineOf(item ?? value), $"{Label(key)} is not a list of {what}", $"write it as {example}");
                return null;
            }

            list.Add(entry);
        }

        return list.ToImmutable();
    }

    public int LineOf(string key) => _keys.TryGetValue(key, out KeyValueSyntax? item) ? LineOf(item) : Line;

    /// <summary>A text as it is written, unchecked; null where the key is missing or holds something else.</summary>
    public string? Written(string key) => (Value(key) as StringValueSyntax)?.Value?.Trim();

    /// <summary>Whether no other key is there.</summary>
    public bool HasOnly(string key) => _keys.Keys.All(k => k == key);

    public bool Has(string key) => _keys.ContainsKey(key);

    /// <summary>Adds a fault for a key, at its line.</summary>
    public void Refuse(string key, string problem, string remedy) => Faults.Add(LineOf(key), problem, remedy);

    /// <summary>Adds a fault at a line, for one of several values of a key.</summary>
    public void Refuse(int line, string problem, string remedy) => Faults.Add(line, problem, remedy);

    /// <summary>Tells of keys that are needed and missing.</summary>
    public void Require(params string[] keys)
    {
        foreach (string key in keys.Where(k => !_keys.ContainsKey(k)))
        {
            Faults.Add(Line, $"{Label(key)} is missing", $"add {key} = …");
        }
    }

    /// <summary>Tells of keys that the section has not.</summary>
    public void RefuseOthers()
    {
        foreach ((string key, KeyValueSyntax item) in _keys.Where(k => !_known.Contains(k.Key)))
        {
            string where = _section.Length == 0 ? "at the top" : $"in [{_section}]";
            Faults.Add(LineOf(item), $"there is no key '{key}' {where}{Spelling.Hint(key, _known)}",
                $"use {string.Join(", ", _known)}");
        }
    }

    private static (string Problem, string Remedy)? Bad(string text) =>
        text.Length == 0 ? ("is empty", "fill it in, or remove the key")
        : text.Length > 200 ? ("is longer than 200 characters", "shorten it")
        : text.Any(char.IsControl) ? ("holds control characters", "remove them, such as tabs and line ends")
        : null;

    private string Label(string key) => _section.Length == 0 ? key : $"{_section}.{key}";

    private ValueSyntax? Value(string key)
    {
        if (!_known.Contains(key))
        {
            throw new InvalidOperationException($"The key '{key}' is read and stands in no table.");
        }

        return _keys.TryGetValue(key, out KeyValueSyntax? item) ? item.Value : null;
    }

    private static double? NumberOf(ValueSyntax value) => value switch
    {
        FloatValueSyntax real => real.Value,
        IntegerValueSyntax whole => whole.Value,
        _ => null,
    };
}
