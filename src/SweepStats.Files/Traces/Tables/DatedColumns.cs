using System.Globalization;
using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Columns that are headed by the time at which their sweep was taken.</summary>
internal static class DatedColumns
{
    private const int Longest = 40;

    private static readonly string[] Clocks = ["H:mm", "HH:mm", "H:mm:ss", "HH:mm:ss"];

    /// <summary>The names, those that are times taken for names of traces: a time heads nothing else.</summary>
    public static ImmutableArray<ColumnName> Named(ImmutableArray<ColumnName> names) =>
        !names.Any(IsTime) ? names
        : Corner(names) is { } corner ? [ColumnName.Of($"frequency ({corner.Frequency.Symbol()})"),
            .. names.Skip(1).Select(n => ColumnName.Of($"{n.Text} ({corner.Level.Symbol()})"))]
        : [.. names.Select(n => IsTime(n) ? ColumnName.OfTrace(n.Text) : n)];

    // "MHz \ dBm" in the corner of a table whose other titles are all times: one unit down, one across.
    private static Units? Corner(ImmutableArray<ColumnName> names)
    {
        string[] words = names[0].Text.Split(['\\', '/', '|', ' '], StringSplitOptions.RemoveEmptyEntries);
        FrequencyUnit[] down = [.. words.Select(FrequencyUnits.Parse).OfType<FrequencyUnit>()];
        LevelUnit[] across = [.. words.Select(LevelUnits.Parse).OfType<LevelUnit>()];
        return words.Length == 2 && down is [var frequency] && across is [var level] && names.Skip(1).All(IsTime)
            ? new Units(frequency, level) : null;
    }

    private sealed record Units(FrequencyUnit Frequency, LevelUnit Level);

    /// <summary>
    /// When the sweep of a column was taken, as its name says; a time of day alone is none: the day may have changed between two
    /// columns.
    /// </summary>
    /// <param name="name">The name of the column.</param>
    /// <param name="stated">When the file says that it was taken.</param>
    public static DateTimeOffset? TakenAt(string name, DateTimeOffset? stated)
    {
        if (!MayBeTime(name))
        {
            return stated;
        }

        string time = Bare(name);
        return SweepDate.Parse(time) is { } date ? date.At : IsClock(time) ? null : stated;
    }

    private static bool IsTime(ColumnName name)
    {
        if (name.Kind != ColumnKind.Unknown || !MayBeTime(name.Text))
        {
            return false;
        }

        string time = Bare(name.Text);
        return IsClock(time) || SweepDate.Parse(time) is not null;
    }

    private static bool IsClock(string text) =>
        DateTime.TryParseExact(text, Clocks, CultureInfo.InvariantCulture, DateTimeStyles.None, out _);

    // Asked for every column of every table: most names have no digit to begin with.
    private static bool MayBeTime(string name) => name.Length is > 3 and <= Longest && char.IsAsciiDigit(name[0]);

    private static string Bare(string name)
    {
        int bracket = name.AsSpan().IndexOfAny('(', '[');
        return (bracket > 0 ? name[..bracket] : name).Trim();
    }
}
