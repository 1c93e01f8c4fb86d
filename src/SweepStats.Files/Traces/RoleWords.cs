namespace SweepStats.Files.Traces;

/// <summary>
/// Tells traces that are named by their parts in a comparison, such as "Reference" and "Covered": they are no repeats of each other, and to pool them would
/// give a mean of two different things.
/// </summary>
internal static class RoleWords
{
    private const int MostListed = 8;
    private const int LongestShown = 60;

    private static readonly Dictionary<string, string> Roles = Words(
        ("reference", "ref reference referenz référence referencia riferimento bezug bezugspegel open offen empty leer vide vacío vuoto without ohne sans sin senza bare unshielded uncovered"),
        ("covered", "covered cover mit with avec con specimen prüfling probe closed geschlossen zu shielded geschirmt bedeckt abgedeckt verdeckt couvert fermé cubierto cerrado coperto chiuso stoff"),
        ("floor", "noise noisefloor floor rauschen rauschpegel grundrauschen eigenrauschen rauschboden untergrund background ambient bruit fond ruido rumore"));

    /// <summary>The reading with a doubt at each trace where their names give them different parts and none was asked for by name.</summary>
    public static TraceReading Doubted(TraceReading reading, string file, TraceReadOptions options)
    {
        if (!options.Columns.IsEmpty || reading.Traces.Length < 2)
        {
            return reading;
        }

        string?[] roles = [.. reading.Traces.Select(t => t.Quantity == "correction" ? null : Of(t.Column))];
        if (Array.TrueForAll(roles, r => r == roles[0]))
        {
            return reading;
        }

        string names = string.Join(", ", reading.Traces.Take(MostListed).Select(t => $"'{Short(t.Column)}'")) + (reading.Traces.Length > MostListed ? ", …" : "");
        var doubt = new ReadFault(
            file, null, $"the names give the traces different parts, such as reference, covered and noise, so that they are no repeats of each other: {names}",
            "list the file in sweeps.csv once for each of them, with its role and its name (column)");
        return reading with { Traces = [.. reading.Traces.Select(t => t with { Doubts = t.Doubts.Add(doubt) })] };
    }

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

    private static Dictionary<string, string> Words(params (string Role, string Words)[] roles) =>
        roles.SelectMany(r => r.Words.Split(' ').Select(w => (w, r.Role))).ToDictionary(p => p.w, p => p.Role, StringComparer.Ordinal);

    private static string Short(string name) => name.Length <= LongestShown ? name : name[..LongestShown] + "…";
}
