using SweepStats.Sweeps;

namespace SweepStats.Files.Proposals;

/// <summary>Words of names, English and German, that tell what a sweep was taken for. All in lower case, umlauts as two
/// letters.</summary>
internal static class RoleWords
{
    private static readonly string[] Sources =
        ["source", "signal", "generator", "gen", "tx", "rf", "quelle", "sender", "traeger", "carrier"];

    private static readonly string[] Without = ["ohne", "without", "no", "kein", "keine", "keinen"];

    private static readonly string[] Materials =
        ["stoff", "tuch", "cloth", "fabric", "textil", "gewebe", "vlies", "folie", "foil", "vorhang", "curtain", "gardine",
            "material", "cover"];

    private static readonly ImmutableDictionary<string, SweepRole> Exact = new Dictionary<string, SweepRole>
    {
        ["floor"] = SweepRole.Floor,
        ["dark"] = SweepRole.Floor,
        ["terminated"] = SweepRole.Floor,
        ["background"] = SweepRole.Floor,
        ["nosignal"] = SweepRole.Floor,
        ["nosource"] = SweepRole.Floor,
        ["ambient"] = SweepRole.Floor,
        ["ref"] = SweepRole.Reference,
        ["refs"] = SweepRole.Reference,
        ["thru"] = SweepRole.Reference,
        ["through"] = SweepRole.Reference,
        ["open"] = SweepRole.Reference,
        ["uncovered"] = SweepRole.Reference,
        ["unshielded"] = SweepRole.Reference,
        ["bare"] = SweepRole.Reference,
        ["ungeschirmt"] = SweepRole.Reference,
        ["unbedeckt"] = SweepRole.Reference,
        ["empty"] = SweepRole.Reference,
        ["leer"] = SweepRole.Reference,
        ["baseline"] = SweepRole.Reference,
        ["ohne"] = SweepRole.Reference,
        ["without"] = SweepRole.Reference,
        ["covered"] = SweepRole.Covered,
        ["cov"] = SweepRole.Covered,
        ["mit"] = SweepRole.Covered,
        ["with"] = SweepRole.Covered,
        ["dut"] = SweepRole.Covered,
        ["shielded"] = SweepRole.Covered,
        ["geschirmt"] = SweepRole.Covered,
        ["abgeschirmt"] = SweepRole.Covered,
        ["bedeckt"] = SweepRole.Covered,
        ["abgedeckt"] = SweepRole.Covered,
        ["coupon"] = SweepRole.Covered,
        ["piece"] = SweepRole.Covered,
        ["stueck"] = SweepRole.Covered,
        ["direct"] = SweepRole.Reference,
        ["direkt"] = SweepRole.Reference,
        ["plate"] = SweepRole.Plate,
    }.ToImmutableDictionary();

    // Compounds begin with these: Rauschmessung, Referenzpegel, Stoffprobe, samples.
    private static readonly ImmutableArray<(string Stem, SweepRole Role)> Stems =
    [
        ("noise", SweepRole.Floor), ("rausch", SweepRole.Floor), ("grundrausch", SweepRole.Floor),
        ("eigenrausch", SweepRole.Floor), ("hintergrund", SweepRole.Floor), ("dunkel", SweepRole.Floor),
        ("umgebung", SweepRole.Floor), ("abschluss", SweepRole.Floor), ("reference", SweepRole.Reference),
        ("referenz", SweepRole.Reference), ("durchgang", SweepRole.Reference), ("durchverbindung", SweepRole.Reference),
        ("offen", SweepRole.Reference), ("leermess", SweepRole.Reference), ("normali", SweepRole.Reference),
        ("sample", SweepRole.Covered), ("probe", SweepRole.Covered), ("muster", SweepRole.Covered),
        ("specimen", SweepRole.Covered), ("pruefling", SweepRole.Covered), .. Materials.Select(m => (m, SweepRole.Covered)),
        ("platte", SweepRole.Plate), ("metallplatte", SweepRole.Plate), ("metalplate", SweepRole.Plate),
        ("linearity", SweepRole.Linearity), ("linearitaet", SweepRole.Linearity),
    ];

    // A sheet of metal may be the plate that closes the fixture, or a specimen.
    private static readonly string[] Sheets = ["blech", "sheet"];

    private static readonly string[] SpecimenEnds = ["probe", "muster", "stoff", "tuch", "sample", "cloth"];

    /// <summary>Which tokens tell a role.</summary>
    /// <param name="tokens">The tokens of a name.</param>
    public static ImmutableArray<RoleWord> In(ImmutableArray<NameToken> tokens)
    {
        var found = ImmutableArray.CreateBuilder<RoleWord>();
        for (int i = 0; i < tokens.Length; i++)
        {
            string? next = i + 1 < tokens.Length ? tokens[i + 1].Word : null;
            if (next is not null && Pair(tokens[i].Word, next) is { } pair)
            {
                found.Add(new RoleWord(i, 2, pair, $"{tokens[i].Text} {tokens[i + 1].Text}"));
                i++;
            }
            else
            {
                found.AddRange(Of(tokens[i].Word).Select(role => new RoleWord(i, 1, role, tokens[i].Text)));
            }
        }

        return found.ToImmutable();
    }

    // "ohne Probe" is the reference, "ohne Signal" and "source off" the floor.
    private static SweepRole? Pair(string first, string second) =>
        Without.Contains(first) && Sources.Contains(second) ? SweepRole.Floor
        : (Without.Contains(first) && Of(second) is [SweepRole.Covered]) || (first == "w" && second == "o") ? SweepRole.Reference
        : Sources.Contains(first) && second is "off" or "aus" ? SweepRole.Floor
        : null;

    // A "Referenzprobe" is a specimen by its end and a reference by its beginning: both are said, and neither is believed.
    private static SweepRole[] Of(string word)
    {
        if (Exact.TryGetValue(word, out SweepRole exact))
        {
            return [exact];
        }

        if (Sheets.Contains(word))
        {
            return [SweepRole.Plate, SweepRole.Covered];
        }

        (string? stem, SweepRole role) = Stems.FirstOrDefault(s => word.StartsWith(s.Stem, StringComparison.Ordinal));
        return stem is null ? []
            : role != SweepRole.Covered && SpecimenEnds.Any(e => word.EndsWith(e, StringComparison.Ordinal))
            ? [role, SweepRole.Covered]
            : [role];
    }
}
