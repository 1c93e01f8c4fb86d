using System.Globalization;
using SweepStats.Cli.Plot;
using SweepStats.Files;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>How a file was understood, in lines for a person.</summary>
/// <param name="plot">Draws the traces; null to leave that out.</param>
internal sealed class LookText(TracePlot? plot)
{
    private const string Indent = "  ";
    private const int MostPlots = 3;
    private const int MostLines = 8;
    private const int MostNames = 4;
    private const int OnePlotHeight = 8;
    private const int PlotHeight = 5;
    private const string Transmission = "S21";

    /// <summary>The file's name; indented what was understood, and what to paste; then the pictures of the traces.</summary>
    public IEnumerable<string> Of(string file, SeenFile seen, TraceReadOptions said) =>
    [
        PrintedText.Of(file),
        .. Lines(seen).Select(line => Indent + line),
        .. PasteLines.Of(file, seen.Refusal, said).Select(line => Indent + line),
        .. Plots(seen.Reading.Traces),
    ];

    private static IEnumerable<string> Lines(SeenFile seen) => Lines(seen.Reading, seen.Refusal);

    private static IEnumerable<string> Lines(TraceReading reading, ImmutableArray<ReadFault> refusal) =>
    [
        .. TraceTable.Of(reading.Traces),
        .. More(reading.Traces),
        .. Doubts(reading.Traces),
        .. Refused(reading.Traces, refusal),
        .. Phases(reading.Traces),
        .. Settings(reading),
        .. Assumed(reading),
    ];

    private static IEnumerable<string> More(ImmutableArray<Trace> traces)
    {
        int more = traces.Length - TraceTable.Longest;
        return more > 0 ? [MoreOf(more, "trace")] : [];
    }

    // Traces of one table mostly share their doubt: it is said once, with the names.
    private static IEnumerable<string> Doubts(ImmutableArray<Trace> traces)
    {
        var doubts = traces.SelectMany(t => t.Doubts.Select(doubt => (Trace: t, Doubt: doubt)))
            .GroupBy(d => SharedWording.Of(d.Doubt, d.Trace)).ToArray();
        foreach (var doubt in doubts.Take(MostLines))
        {
            ReadFault said = doubt.Count() > 1 ? doubt.Key : doubt.First().Doubt;
            yield return $"{Names([.. doubt.Select(d => d.Trace)], traces.Length)}: not usable as a sweep: {Sentence(said)}";
        }

        if (doubts.Length > MostLines)
        {
            yield return MoreOf(doubts.Length - MostLines, "reason");
        }
    }

    // What a trace is refused for stands above already.
    private static IEnumerable<string> Refused(ImmutableArray<Trace> traces, ImmutableArray<ReadFault> refusal)
    {
        ReadFault[] others = [.. refusal.Except(traces.SelectMany(t => t.Doubts))];
        return refusal.IsEmpty ? [] : others.Length == 0
            ? ["A campaign refuses this file for that."]
            : others.Select(fault => $"A campaign refuses this file: {Sentence(fault)}");
    }

    private static IEnumerable<string> Phases(ImmutableArray<Trace> traces)
    {
        Trace[] some = [.. traces.Where(t => !t.Phases.IsEmpty)];
        return some.Length == 0 ? []
            : [some.Length == traces.Length ? "phase: read" : $"phase: read for {Names(some, traces.Length)}"];
    }

    private static string Names(Trace[] some, int all)
    {
        if (some.Length == all && all > 1)
        {
            return "all traces";
        }

        string names = string.Join(", ", some.Take(MostNames).Select(TraceTable.Name));
        return some.Length > MostNames
            ? string.Create(CultureInfo.InvariantCulture, $"{names} and {some.Length - MostNames} more") : names;
    }

    private static string MoreOf(int count, string noun) =>
        string.Create(CultureInfo.InvariantCulture, $"and {count} more {noun}{(count == 1 ? "" : "s")}; --format json lists all");

    private static string Sentence(ReadFault doubt)
    {
        string line = doubt.Line is { } number ? string.Create(CultureInfo.InvariantCulture, $"line {number}: ") : "";
        return PrintedText.Of($"{line}{doubt.Problem}; {doubt.Remedy}");
    }

    private static IEnumerable<string> Settings(TraceReading reading)
    {
        DateTimeOffset[] taken = [.. reading.Traces.Select(t => t.TakenAt).OfType<DateTimeOffset>().Order()];
        string date = taken is [] ? "" : taken[0] == taken[^1] ? "; taken " + Date(taken[0])
            : $"; taken {Date(taken[0])} to {Date(taken[^1])}";
        bool network = reading.Traces.All(t => IsParameter(t.Quantity));
        yield return "settings: "
            + SettingsText.Of(reading.Settings, [.. reading.Traces.Select(t => t.Settings)], network) + date;
        var own = reading.Traces.GroupBy(t => SettingsText.Own(t.Settings, reading.Settings))
            .Where(g => g.Key.Length > 0).ToArray();
        foreach (var stated in own.Take(MostLines))
        {
            yield return $"{Names([.. stated], reading.Traces.Length)}: {stated.Key}";
        }

        if (own.Length > MostLines)
        {
            yield return MoreOf(own.Length - MostLines, "setting");
        }
    }

    // S21, and the like of up to nine ports.
    private static bool IsParameter(string quantity) =>
        quantity.Length == 3 && quantity[0] == 'S' && char.IsAsciiDigit(quantity[1]) && char.IsAsciiDigit(quantity[2]);

    // Midnight is what a date without a time becomes.
    private static string Date(DateTimeOffset at) =>
        at.ToString(at.TimeOfDay == TimeSpan.Zero ? "yyyy-MM-dd" : "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture)
            + (at.Offset == TimeSpan.Zero ? "" : at.ToString(" zzz", CultureInfo.InvariantCulture));

    // So do their assumptions: a unit tried for a file of sixteen traces is one line, not sixteen.
    private static IEnumerable<string> Assumed(TraceReading reading)
    {
        var assumed = reading.Assumptions
            .Select(said => (Said: said, Shared: SharedWording.Of(said, reading.Traces)))
            .GroupBy(a => (IsShared: a.Shared.About is not null, a.Shared.Text))
            .ToArray();
        foreach (var same in assumed.Take(MostLines))
        {
            string text = same.Count() > 1 && same.Key.IsShared
                ? $"{Names([.. same.Select(a => a.Shared.About!).Distinct()], reading.Traces.Length)}: {same.Key.Text}"
                : same.First().Said;
            yield return (IsPassedOver(text) ? "passed over: " : "assumed: ") + PrintedText.Of(text);
        }

        if (assumed.Length > MostLines)
        {
            yield return MoreOf(assumed.Length - MostLines, "assumption");
        }
    }

    // What was stated and left unused is the contrary of an assumption.
    private static bool IsPassedOver(string said) =>
        said.EndsWith("was not used", StringComparison.Ordinal) || said.EndsWith("neither was used", StringComparison.Ordinal)
        || said.EndsWith("day and month cannot be told apart", StringComparison.Ordinal);

    private IEnumerable<string> Plots(ImmutableArray<Trace> traces)
    {
        if (plot is null)
        {
            yield break;
        }

        Trace[] usable = [.. traces.Where(t => t.Doubts.IsEmpty && t.Blank is null && TracePlot.CanShow(t))];
        Trace[] shown = [.. usable.OrderBy(t => t.Quantity == Transmission ? 0 : 1).Take(MostPlots)];
        foreach (Trace trace in shown)
        {
            yield return "";
            yield return Indent + TraceTable.Name(trace);
            foreach (string line in plot.Of(trace, shown.Length == 1 ? OnePlotHeight : PlotHeight))
            {
                yield return Indent + line;
            }
        }

        if (usable.Length > shown.Length)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{Indent}({shown.Length} of {usable.Length} traces drawn)");
        }
    }
}
