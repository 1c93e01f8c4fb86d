using System.Globalization;
using SweepStats.Files.Campaigns;

namespace SweepStats.Files.Proposals;

/// <summary>
/// Guesses lot, specimen and placement of each covered sweep. A number that may count specimens as well as sweeps is left to the
/// person: several sweeps of one
/// specimen and one sweep each of several give other results.
/// </summary>
internal sealed class PlaceProposer
{
    private const string Only = "1";
    private const int HouseLevels = 3;

    private static readonly HashSet<string> CountWords = ["no", "nr", "num", "number", "nummer"];

    private readonly ImmutableArray<SweepCandidate> _covered;
    private readonly ImmutableArray<PlaceNames> _names;

    /// <param name="all">Every sweep of the folder.</param>
    /// <param name="covered">The covered ones.</param>
    public PlaceProposer(ImmutableArray<SweepCandidate> all, ImmutableArray<SweepCandidate> covered)
    {
        _covered = covered;
        HashSet<string> shared = Shared(all);
        _names = [.. covered.Select(s => new PlaceNames(s, shared))];
    }

    /// <summary>A guess for each covered sweep, in their order.</summary>
    public ImmutableArray<PlaceGuess> All()
    {
        PlaceGuess[] guesses = [.. _names.Select(Guess)];
        foreach (int[] same in Alike(guesses))
        {
            TellStatesApart(guesses, same);
        }

        foreach (int[] same in Alike(guesses))
        {
            TellDaysApart(guesses, same);
        }

        return [.. guesses];
    }

    private static int[][] Alike(PlaceGuess[] guesses) =>
    [
        .. Enumerable.Range(0, guesses.Length).Where(i => guesses[i].Specimen is not null)
            .GroupBy(i => (guesses[i].Lot, guesses[i].Specimen, guesses[i].Placement)).Select(g => g.ToArray())
            .Where(g => g.Length > 1),
    ];

    // "sample 1 wet" and "sample 1 dry" are no repeats of each other.
    private void TellStatesApart(PlaceGuess[] guesses, int[] same)
    {
        string[] states = [.. same.Select(i => _names[i].Unused).Distinct()];
        if (states.Length > 1)
        {
            foreach (int i in same)
            {
                guesses[i] =
                    Doubtful($"'{string.Join("', '", states.Where(s => s.Length > 0).Take(3))}' may be states of specimen "
                        + $"{guesses[i].Specimen}, which are no repeats of each other") with
                    { Lot = guesses[i].Lot };
            }
        }
    }

    // What was called p1 on two days was put into place twice.
    private void TellDaysApart(PlaceGuess[] guesses, int[] same)
    {
        DateOnly?[] days = [.. same.Select(i => TimeProposer.Day(_covered[i]))];
        if (guesses[same[0]].Placement is { } placement && days.Distinct().Count() > 1)
        {
            foreach ((int i, DateOnly? day) in same.Zip(days).Where(p => p.Second is not null))
            {
                string own = string.Create(CultureInfo.InvariantCulture, $"{placement} {day:yyyy-MM-dd}");
                guesses[i] = guesses[i] with
                {
                    Placement = own,
                    Reason = $"{guesses[i].Reason}, and of another day it is another placement",
                };
            }
        }
    }

    // What stands in every name of a folder, such as the name of the project.
    private static HashSet<string> Shared(ImmutableArray<SweepCandidate> all) =>
        all.Select(s => s.File).Distinct().Count() < 2
            ? [.. all.FirstOrDefault(s => s.Header is not null)?.Name.Left.Select(c => c.Text) ?? []]
        : [.. all.Select(Chunks).Aggregate((common, own) => [.. common.Intersect(own)])];

    private static IEnumerable<string> Chunks(SweepCandidate sweep) =>
        sweep.NearestFirst.SelectMany(p => p.Left).Where(c => !c.IsNumber).Select(c => c.Text);

    private PlaceGuess Guess(PlaceNames names)
    {
        PlaceGuess guess = names.Said.TryGetValue(PlaceKind.Specimen, out string? said) ? OfWord(names, said) : OfNames(names);
        string? wrong = new[] { guess.Lot, guess.Specimen, guess.Placement }.OfType<string>().Select(NameRule.Problem)
            .FirstOrDefault(p => p is not null);
        return wrong is null ? guess : Doubtful($"a name {wrong}");
    }

    private static PlaceGuess OfWord(PlaceNames names, string specimen)
    {
        string? lot = names.Said.GetValueOrDefault(PlaceKind.Lot)
            ?? (names.Folders.IsEmpty ? null : string.Join(' ', names.Folders));
        string reason = $"specimen {specimen} by its word";
        return Completed(names, new PlaceGuess(specimen, reason) { Lot = lot });
    }

    private PlaceGuess OfNames(PlaceNames names)
    {
        string own = Own(names);
        if ((WordDoubt(names) ?? (names.IsHouse ? null : NameDoubt(names, own))) is { } doubt)
        {
            return Doubtful(doubt);
        }

        ImmutableArray<string> places = own.Length > 0 && !names.IsHouse ? names.Folders.Add(own) : names.Folders;
        return places.IsEmpty || (names.IsHouse && places.Length > HouseLevels) ? Unnamed(names)
            : places.Length > HouseLevels
                ? Doubtful($"'{string.Join("', '", places)}': which of them is the specimen is not plain")
            : Placed(names, places, names.IsHouse ? "" : own);
    }

    private static string? WordDoubt(PlaceNames names)
    {
        if (names.Words.LastOrDefault() is { } last && names.Words.Length > 1
            && PlaceWords.IsPolarisation(last.Text.ToLowerInvariant()))
        {
            return $"'{last.Text}' may be a polarisation or a part of the specimen's name";
        }

        return names.Words.FirstOrDefault(w => w.IsCounted) is { } counted
            ? $"the number in '{counted.Text}' may count specimens or sweeps" : null;
    }

    private static string? NameDoubt(PlaceNames names, string own)
    {
        if (names.Letter is { } letter)
        {
            return $"'{letter}' may be a specimen, a placement or a sweep";
        }

        if (own.Length > 0
            && (names.Numbers.Length > 1 || (names.Numbers.Length == 1 && !names.SaysRepeat && !names.Words[^1].IsMark)))
        {
            return $"'{string.Join("', '", names.Numbers)}' behind '{own}' may count specimens, placements or sweeps";
        }

        return names.Folders.IsEmpty ? null : FolderDoubt(names, own);
    }

    // By itself a name in a named folder may be a specimen of that lot or a sweep of that specimen.
    private static string? FolderDoubt(PlaceNames names, string own) =>
        own.Length > 0 && !names.Counts
            ? $"'{own}' in '{names.Folders[^1]}' may be a specimen of that lot, or a sweep of that specimen"
        : names.IsCountOfCovered
            ? $"the number {string.Join(", ", names.Numbers)} in '{names.Folders[^1]}' may count specimens of that lot, or "
                + "sweeps of that specimen"
        : null;

    // Where a word counts the sweeps, "curtain 3 run 2", the number before it is part of what they are of.
    private static string Own(PlaceNames names)
    {
        string[] words =
            [.. names.Words.Select(w => w.Text).Where(w => names.Numbers.IsEmpty || !CountWords.Contains(w.ToLowerInvariant()))];
        return names is { SaysRepeat: true, Numbers.Length: 1 } ? string.Join('_', [.. words, names.Numbers[0]])
            : string.Join('_', names.Words.Select(w => w.Text));
    }

    // As covered/<lot>/<specimen>/<placement>/ is read.
    private static PlaceGuess Placed(PlaceNames names, ImmutableArray<string> places, string own)
    {
        bool hasLot = names.Said.TryGetValue(PlaceKind.Lot, out string? lot);
        int specimen = hasLot ? 0 : Math.Min(1, places.Length - 1);
        if (hasLot && places.Length > 2)
        {
            return Doubtful($"'{string.Join("', '", places)}' of lot {lot}: which of them is the specimen is not plain");
        }

        string where = own.Length > 0 && places[specimen] == own ? "its own name" : "a name above its own";
        string reason = $"specimen {places[specimen]} by {where}";
        string? of = hasLot ? lot : places.Length > 1 ? places[0] : null;
        return Completed(names, new PlaceGuess(places[specimen], reason)
        {
            Lot = of,
            Placement = places.Length > specimen + 1 ? places[specimen + 1] : null,
        });
    }

    private PlaceGuess Unnamed(PlaceNames names)
    {
        if (_covered.Length == 1)
        {
            return Completed(names, new PlaceGuess(Only, "specimen 1: it is the only covered sweep"));
        }

        // Lots or placements without a specimen leave open how many there are.
        return _names.All(n => n.SaysRepeat && n.Folders.IsEmpty && n.Words.IsEmpty && !n.Said.ContainsKey(PlaceKind.Lot)
            && !n.Said.ContainsKey(PlaceKind.Specimen))
            ? Completed(names, new PlaceGuess(Only, "specimen 1: the names count sweeps and name no specimen"))
            : Doubtful(names.Numbers.IsEmpty ? "no name tells the specimen"
                : $"the number {string.Join(", ", names.Numbers)} may count specimens or sweeps");
    }

    private static PlaceGuess Completed(PlaceNames names, PlaceGuess guess)
    {
        string? placement = names.Said.GetValueOrDefault(PlaceKind.Placement) ?? guess.Placement;
        string lot = guess.Lot is null ? "" : $"; lot {guess.Lot}";
        string placed = placement is null ? "" : $"; placement {placement}";
        string counted = names.Numbers.IsEmpty || names.SaysRepeat ? ""
            : $"; {string.Join(", ", names.Numbers)} counts its sweeps";
        return guess with { Placement = placement, Reason = guess.Reason + lot + placed + counted };
    }

    private static PlaceGuess Doubtful(string why) =>
        new(null, "") { ToFillIn = $"specimen, the same name for sweeps of one specimen: {why}" };
}
