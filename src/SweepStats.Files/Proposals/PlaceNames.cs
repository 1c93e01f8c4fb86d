namespace SweepStats.Files.Proposals;

/// <summary>What the names of a covered sweep tell of its place, put together: what words say, names of folders, marks and
/// numbers.</summary>
internal sealed class PlaceNames
{
    /// <param name="sweep">The sweep.</param>
    /// <param name="shared">Chunks that every sweep of the folder has, which tell nothing.</param>
    public PlaceNames(SweepCandidate sweep, IReadOnlySet<string> shared)
    {
        if (sweep.Folders is [{ Text: var top }, ..] && sweep.Header is null or { Roles.IsEmpty: true }
            && top.Equals("covered", StringComparison.OrdinalIgnoreCase))
        {
            (IsHouse, Folders, Words, Letters, Numbers) =
                (true, [.. sweep.Folders.Skip(1).Select(f => f.Text.Trim())], [], [], []);
            return;
        }

        foreach (PlaceKind kind in Enum.GetValues<PlaceKind>())
        {
            if (sweep.NearestFirst.FirstOrDefault(p => p.Said.ContainsKey(kind)) is { } part)
            {
                Said[kind] = part.Said[kind];
            }
        }

        NamePart nearest = sweep.Header ?? sweep.Name;
        Folders =
        [
            .. sweep.Folders.Concat(sweep.Header is null ? [] : [sweep.Name])
                .Select(p => string.Join(' ', Left(p, shared).Select(c => c.Text))).Where(t => t.Length > 0),
        ];
        ImmutableArray<NameChunk> left = Left(nearest, shared);
        Numbers = [.. left.Reverse().TakeWhile(c => c.IsNumber).Reverse().Select(c => c.Text)];
        Words = [.. left.Take(left.Length - Numbers.Length)];
        IsCountOfCovered = !nearest.Roles.IsEmpty && Words.IsEmpty && !Numbers.IsEmpty && !SaysRepeat;
        Letters = [];
        TakeLetters();
    }

    /// <summary>Whether its folders are those of a campaign, covered/&lt;lot&gt;/&lt;specimen&gt;/, where the file's own name
    /// tells nothing.</summary>
    public bool IsHouse { get; }

    /// <summary>What words such as "lot" or "sample" name.</summary>
    public Dictionary<PlaceKind, string> Said { get; } = [];

    /// <summary>What is left of the names of its folders, the outermost first.</summary>
    public ImmutableArray<string> Folders { get; }

    /// <summary>What is left of its own name before the numbers at its end.</summary>
    public ImmutableArray<NameChunk> Words { get; private set; }

    /// <summary>Whether its own name is a word for what covers and a number, "cloth 3", which may be the third cloth as well as
    /// the third sweep.</summary>
    public bool IsCountOfCovered { get; }

    /// <summary>Chunks such as "p1" that a single letter explains once something else names the specimen.</summary>
    public ImmutableArray<string> Letters { get; private set; }

    /// <summary>Whether its own name counts sweeps, so that the rest of it names what they are of.</summary>
    public bool Counts => !Numbers.IsEmpty || SaysRepeat || !Letters.IsEmpty;

    /// <summary>The last chunk where a single letter may stand for specimen, sweep or placement: s2, m2, p2; null where none
    /// does.</summary>
    public string? Letter => Words.Length + Folders.Length > 1 && Words.LastOrDefault() is { IsMark: true } last
        && char.ToLowerInvariant(last.Text[0]) is 'p' or 's' or 'm' && char.IsAsciiDigit(last.Text[1]) ? last.Text : null;

    /// <summary>The numbers at the end of its own name.</summary>
    public ImmutableArray<string> Numbers { get; }

    /// <summary>What is left where words name the specimen: it may be a state of it, such as wet or dry; empty
    /// elsewhere.</summary>
    public string Unused => IsHouse || !Said.ContainsKey(PlaceKind.Specimen) ? ""
        : string.Join(' ', (Said.ContainsKey(PlaceKind.Lot) ? Folders : []).Concat(Words.Select(w => w.Text)));

    /// <summary>Whether a word calls the number behind it a repeat.</summary>
    public bool SaysRepeat => Said.ContainsKey(PlaceKind.Repeat);

    private static ImmutableArray<NameChunk> Left(NamePart part, IReadOnlySet<string> shared) =>
        [.. part.Left.Where(c => !shared.Contains(c.Text))];

    // "A1-p2": p2 is the placement, since A1 is the specimen. A file called "p2" alone is of a specimen of that name.
    private void TakeLetters()
    {
        while (Words.LastOrDefault() is { } last && Kind(last) is { } kind && IsNamedBefore() && Said.TryAdd(kind, last.Text))
        {
            Letters = Letters.Add(last.Text);
            Words = Words.RemoveAt(Words.Length - 1);
        }

        while (Words.Length > 1 && Words[0].IsMark && char.ToLowerInvariant(Words[0].Text[0]) == 'l'
            && char.IsAsciiDigit(Words[0].Text[1]) && Said.TryAdd(PlaceKind.Lot, Words[0].Text))
        {
            Letters = Letters.Add(Words[0].Text);
            Words = Words.RemoveAt(0);
        }
    }

    private bool IsNamedBefore() => Said.ContainsKey(PlaceKind.Specimen)
        || (Words.Length > 1 ? Words[^2].IsMark || Kind(Words[^2]) is not null
            : Folders.LastOrDefault() is { } folder && new NameChunk(folder).IsMark);

    private static PlaceKind? Kind(NameChunk chunk) =>
        chunk.Text.Length < 2 || !char.IsAsciiDigit(chunk.Text[1]) ? null : char.ToLowerInvariant(chunk.Text[0]) switch
        {
            'p' => PlaceKind.Placement,
            'r' or 'w' => PlaceKind.Repeat,
            _ => null,
        };
}
