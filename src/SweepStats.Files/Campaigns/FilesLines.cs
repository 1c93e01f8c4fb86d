using System.Text;
using SweepStats.Files.Traces;

namespace SweepStats.Files.Campaigns;

/// <summary>Writes a block [[files]] of campaign.toml.</summary>
public static class FilesLines
{
    /// <summary>What to write so that a campaign reads a file as it was read with these statements.</summary>
    /// <param name="file">The file; the block holds for all of its name.</param>
    /// <param name="said">The statements.</param>
    public static ImmutableArray<string> Of(string file, TraceReadOptions said)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(said);
        return [.. Heading(PathPattern.ForName(Plain(file))), .. Stated(said)];
    }

    /// <summary>The same with keys to fill in for what is asked; one pattern may be stated for many files.</summary>
    /// <param name="match">The pattern.</param>
    /// <param name="faults">What is wrong with the file.</param>
    /// <param name="said">What was stated already.</param>
    public static ImmutableArray<string> ToFillIn(string match, IReadOnlyCollection<ReadFault> faults, TraceReadOptions said)
    {
        ArgumentNullException.ThrowIfNull(faults);
        ArgumentNullException.ThrowIfNull(said);
        StatableKeys asked = faults.Aggregate(StatableKeys.None, (all, f) => all | f.Asks);
        return asked == StatableKeys.None ? [] : [.. Heading(match), .. Stated(said), .. Asked(asked, faults)];
    }

    /// <summary>The pattern for all files of the name of one.</summary>
    public static string PatternOf(string file)
    {
        ArgumentNullException.ThrowIfNull(file);
        return PathPattern.ForName(Plain(file));
    }

    private static string Plain(string file) => file.Replace('\\', '/');

    private static IEnumerable<string> Heading(string match) => ["[[files]]", $"match = {Quoted(match)}"];

    private static IEnumerable<string> Stated(TraceReadOptions said) => new[]
    {
        Line("frequency_column", said.FrequencyColumn),
        said.Columns.IsEmpty ? null : $"level_columns = [{string.Join(", ", said.Columns.Select(Quoted))}]",
        Line("phase_column", said.PhaseColumn),
        Line("phase_unit", said.PhaseUnit switch { PhaseUnit.Degrees => "deg", PhaseUnit.Radians => "rad", _ => null }),
        Line("real_column", said.RealColumn),
        Line("imaginary_column", said.ImaginaryColumn),
        Line("frequency_unit", said.FrequencyUnit?.Symbol()),
        Line("level_unit", said.LevelUnit is { } unit ? Word(unit) : null),
    }.OfType<string>();

    private static IEnumerable<string> Asked(StatableKeys asked, IEnumerable<ReadFault> faults)
    {
        string Among(StatableKeys key) => faults.FirstOrDefault(f => f.Asks.HasFlag(key) && f.Candidates.Length > 0) is { } fault
            ? $"   # one of {OneLine(fault.Candidates)}" : "";
        if (asked.HasFlag(StatableKeys.FrequencyColumn))
        {
            yield return "frequency_column = \"\"" + Among(StatableKeys.FrequencyColumn);
        }

        if (asked.HasFlag(StatableKeys.LevelColumns))
        {
            yield return "level_columns = [\"\"]" + Among(StatableKeys.LevelColumns)
                .Replace("one of", "one or more of", StringComparison.Ordinal);
        }

        if (asked.HasFlag(StatableKeys.FrequencyUnit))
        {
            yield return "frequency_unit = \"\"   # Hz, kHz, MHz or GHz";
        }

        if (asked.HasFlag(StatableKeys.LevelUnit))
        {
            yield return "level_unit = \"\"   # dBm, dBµV, dBmV, dB, dBµV/m, V, mV, µV, W, mW or linear";
        }
    }

    private static string? Line(string key, string? value) => value is null ? null : $"{key} = {Quoted(value)}";

    private static string Word(LevelUnit unit) => unit == LevelUnit.LinearMagnitude ? LevelUnits.LinearWord : unit.Symbol();

    private static string OneLine(string text) =>
        string.Concat(text.Select(c => char.IsControl(c) || c is '\u2028' or '\u2029' ? ' ' : c));

    // A basic string of TOML.
    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (char c in text)
        {
            quoted.Append(c is '"' or '\\' ? $"\\{c}" : char.IsControl(c) ? FormattableString.Invariant($"\\u{(int)c:X4}")
                : c.ToString());
        }

        return quoted.Append('"').ToString();
    }
}
