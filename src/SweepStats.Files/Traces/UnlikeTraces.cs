using SweepStats.Files.Traces.Tables;

namespace SweepStats.Files.Traces;

/// <summary>
/// Tells traces that are no repeats of each other, so that to pool them would give a mean of different things: those named by
/// their parts in a comparison, such as "Reference" and "Covered", and traces below each other of other detectors or of the
/// highest, lowest and mean of the same sweeps.
/// </summary>
internal static class UnlikeTraces
{
    private const int MostListed = 8;
    private const int LongestShown = 60;

    private static readonly Dictionary<string, string> Roles = Words(
        new("reference", "ref reference referenz référence referencia riferimento bezug bezugspegel "
            + "open offen empty leer vide vacío vuoto without ohne sans sin senza "
            + "bare unshielded uncovered"),
        new("covered", "covered cover mit with avec con specimen prüfling probe closed "
            + "geschlossen zu shielded geschirmt bedeckt abgedeckt verdeckt couvert "
            + "fermé cubierto cerrado coperto chiuso stoff"),
        new("floor", "noise noisefloor floor rauschen rauschpegel grundrauschen eigenrauschen rauschboden untergrund "
            + "background ambient bruit fond ruido rumore"));

    /// <summary>
    /// The reading with a doubt at each trace where their names give them different parts and none was asked for by name.
    /// </summary>
    public static TraceReading Doubted(TraceReading reading, string file, TraceReadOptions options)
    {
        if (!options.Columns.IsEmpty || reading.Traces.Length < 2)
        {
            return reading;
        }

        if (Differ(reading.Traces, t => t.Quantity == "correction" ? null : Of(t.Column)))
        {
            return With(reading, new ReadFault(
                file, null, "the names give the traces different parts, such as reference, covered and noise, so that they are "
                    + $"no repeats of each other: {Names(reading)}",
                "list the file in sweeps.csv once for each of them, with its role and its name (column)"));
        }

        if (reading.AreNamedApart)
        {
            return With(reading, new ReadFault(
                file, null, "the rows are of traces with names of their own, which may be no repeats of each other: "
                    + $"{Names(reading)}",
                "list the file in sweeps.csv once for each of them, with its role and its name (column)"));
        }

        return reading.IsStacked && Differ(reading.Traces, t => ColumnName.Of(t.Column).Statistic)
            ? With(reading, new ReadFault(
                file, null, "some traces are the highest, lowest or mean of the same sweeps, or come from other detectors, "
                    + $"which are no repeats of each other: {Names(reading)}",
                "name the trace to read in sweeps.csv (column = its name, or its number from 1)"))
            : reading;
    }

    private static bool Differ(ImmutableArray<Trace> traces, Func<Trace, string?> what)
    {
        string? first = what(traces[0]);
        return traces.Skip(1).Any(t => what(t) != first);
    }

    private static TraceReading With(TraceReading reading, ReadFault doubt) =>
        reading with { Traces = [.. reading.Traces.Select(t => t with { Doubts = t.Doubts.Add(doubt) })] };

    private static string Names(TraceReading reading) =>
        string.Join(", ", reading.Traces.Take(MostListed).Select(t => $"'{Short(t.Column)}'"))
            + (reading.Traces.Length > MostListed ? ", …" : "");

    /// <summary>The part that a name gives to its trace: reference, covered or floor; null for none.</summary>
    public static string? Of(string name)
    {
        int start = -1;
        for (int i = 0; i <= name.Length; i++)
        {
            bool letter = i < name.Length && char.IsLetter(name[i]);
            if (letter && start < 0)
            {
                start = i;
            }
            else if (!letter && start >= 0)
            {
                if (Roles.TryGetValue(name[start..i].ToLowerInvariant(), out string? role))
                {
                    return role;
                }

                start = -1;
            }
        }

        return null;
    }

    private static Dictionary<string, string> Words(params RoleWords[] roles) =>
        roles.SelectMany(r => r.Words.Split(' ').Select(w => (w, r.Role)))
            .ToDictionary(p => p.w, p => p.Role, StringComparer.Ordinal);

    private static string Short(string name) => name.Length <= LongestShown ? name : name[..LongestShown] + "…";

    /// <summary>A part in a comparison, and the words for it.</summary>
    private readonly record struct RoleWords(string Role, string Words);
}
