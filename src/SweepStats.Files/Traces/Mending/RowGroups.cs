using System.Globalization;
using System.Text;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>
/// Parts a table of one row a reading into its traces, told apart by a column of words or by one that counts the sweeps.
/// </summary>
internal sealed class RowGroups(WordColumns columns, TraceText source, Func<TraceText, TraceReading> read)
{
    private const int MostTried = 8;
    private const int MostSmall = 20;
    private const int FewestRows = 5;
    private const int LongestName = 80;
    private const int MostListed = 8;
    private const int LinesAbove = 5;

    private static readonly HashSet<string> Splitting =
    [
        "trace", "traces", "name", "sweep", "run", "scan", "series", "curve", "channel", "ch", "no", "nr", "number", "index",
        "measurement", "meas", "repeat", "repetition", "repeats", "set", "id", "cycle", "pol", "polarisation", "polarization",
        "polarisierung", "antenna", "antenne", "position", "messung", "lauf", "durchlauf", "kurve", "spur", "kanal",
        "wiederholung", "mesure", "balayage", "courbe", "voie", "répétition", "barrido", "traza", "medida", "curva", "traccia",
        "misura", "prova", "detector", "detektor", "quantity", "parameter", "polarización", "polarizzazione", "n", "#",
    ];

    /// <summary>The traces; null where no column parts the rows so that the frequencies of every part rise.</summary>
    public TraceReading? Read()
    {
        foreach (int[] candidate in Candidates().Take(MostTried))
        {
            int[] keys = WithCounters(candidate);
            if (Parts(keys) is { Count: > 1 } parts && parts.Count <= DataBlock.MostTraces && Traces(parts, keys) is { } reading)
            {
                return reading;
            }
        }

        return null;
    }

    /// <summary>Whether the header names a column that counts sweeps or traces, and nothing else.</summary>
    public static bool MayBeNumbered(TraceText text)
    {
        if (RowPattern.Find(text) is not { } pattern)
        {
            return false;
        }

        int first = 0;
        while (first < text.LineCount && !pattern.IsRow(text.Line(first)))
        {
            first++;
        }

        List<Range> fields = [];
        for (int i = first - 1; i >= Math.Max(0, first - LinesAbove); i--)
        {
            ReadOnlySpan<byte> line = text.Line(i);
            FieldRanges.Of(line, pattern.Mark, fields);
            foreach (Range field in fields)
            {
                ReadOnlySpan<byte> name = FieldRanges.Bare(line[field]);
                if (name.Length is > 0 and <= LongestName && Words(Encoding.UTF8.GetString(name)) is { Length: > 0 } words
                    && Array.TrueForAll(words, Splitting.Contains))
                {
                    return true;
                }
            }
        }

        return false;
    }

    // Words first, one column or all together; then numbers whose name says that they count sweeps.
    private IEnumerable<int[]> Candidates()
    {
        int[] telling = [.. Enumerable.Range(0, columns.Columns)
            .Where(c => !columns.Tally(c).IsVaried && columns.Tally(c).Values.Count > 1 && !columns.Tally(c).AreUnits)];
        int[] words = [.. telling.Where(c => columns.Tally(c).Numbers == 0)];
        int[] numbers = [.. telling.Except(words).Where(c => IsSplitting(c) && columns.Tally(c).Values.All(IsCount))];
        IEnumerable<int[]> single = words.OrderBy(c => IsSplitting(c) ? 0 : 1).Concat(numbers).Select(c => new[] { c });
        int[] named = [.. words.Where(IsSplitting), .. numbers];
        return single.Concat(named.Length > 1 ? [named] : []).Concat(words.Length > 1 ? [words] : []);
    }

    // "run" beside "taken": a number of the sweep that is one in each part tells no more than its other column, and is no level.
    private int[] WithCounters(int[] keys)
    {
        int[] counters = [.. Enumerable.Range(0, columns.Columns)
            .Where(c => !keys.Contains(c) && IsNumbered(c) && IsSplitting(c) && columns.Tally(c).Values.All(IsCount))];
        if (counters.Length == 0 || Parts(keys) is not { } parts)
        {
            return keys;
        }

        return [.. keys,
            .. counters.Where(
                c => parts.TrueForAll(p => p.Lines.TrueForAll(l => columns.Value(l, c) == columns.Value(p.Lines[0], c))))];
    }

    private bool IsSplitting(int column) => Array.Exists(Words(columns.Name(column)), Splitting.Contains);

    private static string[] Words(string name) =>
        name.ToLowerInvariant().Split([' ', '_', '.', '-', '(', ')', '[', ']', '/'], StringSplitOptions.RemoveEmptyEntries);

    private static bool IsCount(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out _);

    private List<RowGroup>? Parts(int[] keys)
    {
        var parts = new Dictionary<string, List<int>>(StringComparer.Ordinal);
        List<RowGroup> ordered = [];
        for (int i = columns.FirstRow; i < source.LineCount; i++)
        {
            if (!columns.IsRow(i))
            {
                continue;
            }

            string key = Key(i, keys);
            if (!parts.TryGetValue(key, out List<int>? lines))
            {
                parts.Add(key, lines = []);
                ordered.Add(new(key, lines));
            }

            lines.Add(i);
        }

        bool crumbs = ordered.Count > MostSmall && columns.Rows < FewestRows * ordered.Count;
        return !crumbs && ordered.TrueForAll(p => p.Lines.Count > 1) ? ordered : null;
    }

    private string Key(int line, int[] keys)
    {
        string key =
            string.Join(", ",
                keys.Select(c => IsNumbered(c) ? $"{columns.Name(c)} {columns.Value(line, c)}" : columns.Value(line, c))
                    .Where(v => v.Length > 0));
        return new string([.. (key.Length <= LongestName ? key : key[..LongestName] + "…").Where(c => !char.IsControl(c))]);
    }

    private bool IsNumbered(int column) => columns.Tally(column).Numbers > 0;

    private TraceReading? Traces(List<RowGroup> parts, int[] keys)
    {
        using TraceText text = columns.Filled([.. keys.Where(IsNumbered)]).Text;
        bool mayDiffer = keys is [var only] && IsSplitting(only);
        var joined = new JoinedParts(Said(parts, keys));
        foreach ((string key, List<int> lines) in parts)
        {
            TraceReading part = Part(text, lines);
            if (!part.Faults.IsEmpty || part.IsStacked || part.Traces.Any(t => t.Axis.Grid is null))
            {
                // A unit that the file does not say is missing in every part alike.
                return part.Faults.Any(f => f.Unstated != UnstatedUnits.None) ? part : null;
            }

            if (!mayDiffer && !joined.SharesAxis(part))
            {
                return null;
            }

            joined.Add(key, part);
        }

        return joined.Reading is { } reading ? reading with { AreNamedApart = !CountSweeps(parts, keys) } : null;
    }

    private bool CountSweeps(List<RowGroup> parts, int[] keys) => parts.TrueForAll(p => IsSweepNumber(p.Key))
        || Array.TrueForAll(keys, c => SweepColumns.Contains(columns.Name(c).Trim().ToLowerInvariant()));

    // "Sweep 3", "3", a time: what counts repeats. "Sample 1" and "Thru" may be anything.
    private static bool IsSweepNumber(string key) => SweepDate.Parse(key) is not null
        || Array.TrueForAll(Words(key.Replace(',', ' ').Replace(':', ' ')),
            w => SweepWords.Contains(w) || w.All(c => char.IsAsciiDigit(c) || c is 't' or 'z'));

    // What such a column holds are sweeps, whatever they are called.
    private static readonly HashSet<string> SweepColumns =
        ["sweep", "run", "scan", "repeat", "repetition", "rep", "durchlauf", "lauf", "wiederholung", "wdh", "balayage",
            "répétition", "barrido", "scansione"];

    private static readonly HashSet<string> SweepWords =
    [
        "trace", "sweep", "run", "scan", "no", "nr", "number", "measurement", "meas", "repeat", "repetition", "rep", "messung",
        "lauf", "durchlauf", "kurve", "spur", "wiederholung", "wdh", "mesure", "balayage", "courbe", "répétition", "barrido",
        "traza", "medida", "curva", "traccia", "misura", "#", "taken", "time", "n",
    ];

    // The lines above the rows, the rows of one trace, and where they come from.
    private TraceReading Part(TraceText text, List<int> lines)
    {
        var buffer = new LineBuffer(text, lines.Count * 24);
        for (int i = 0; i < columns.FirstRow; i++)
        {
            buffer.Line(text.Line(i));
        }

        foreach (int line in lines)
        {
            buffer.Line(text.Line(line));
        }

        using TraceText part = buffer.Finish(false);
        TraceReading reading = read(part);
        int? Line(int? line) =>
            line is { } l && l > columns.FirstRow ? lines[Math.Min(l - 1 - columns.FirstRow, lines.Count - 1)] + 1 : line;
        return reading with
        {
            Faults = [.. reading.Faults.Select(f => f with { Line = Line(f.Line) })],
            Traces = [.. reading.Traces.Select(
                t => t with { Doubts = [.. t.Doubts.Select(d => d with { Line = Line(d.Line) })] })],
        };
    }

    private string Said(List<RowGroup> parts, int[] keys)
    {
        string by = string.Join(", ",
            keys.Select(c =>
                (c + 1).ToString(CultureInfo.InvariantCulture) + (columns.Name(c) is { Length: > 0 } name ? $" '{name}'" : "")));
        string names = string.Join(", ", parts.Take(MostListed).Select(p => p.Key.Length > 0 ? p.Key : "no text"))
            + (parts.Count > MostListed ? ", …" : "");
        return FormattableString.Invariant($"the rows hold {parts.Count} traces, told apart by column {by}: {names}");
    }

    /// <summary>The rows of a trace by their lines from 0, and what they have in common.</summary>
    private sealed record RowGroup(string Key, List<int> Lines);
}
