using System.Globalization;
using SweepStats.Files.Campaigns;
using SweepStats.Sweeps;

namespace SweepStats.Files.Proposals;

/// <summary>
/// Guesses the role of each sweep of a folder. Names say it; levels confirm it or cast doubt on it: the floor lies lowest, the
/// reference highest. Levels alone say
/// nothing, since a specimen that shields well lies as low as the floor.
/// </summary>
internal sealed class RoleProposer
{
    // Sweeps of one kind differ by less, and kinds that do not differ by more cannot be told by their level.
    private const double ClearDb = 3;

    // The source is stepped down by 10 dB for linearity; such a sweep must not pass for a reference.
    private const double OneKindDb = 6;

    private readonly ImmutableArray<SweepCandidate> _sweeps;
    private readonly RoleGuess[] _names;

    /// <summary>Looks at the names of all sweeps first; levels are compared between sweeps, so all are needed at once.</summary>
    public RoleProposer(ImmutableArray<SweepCandidate> sweeps)
    {
        _sweeps = sweeps;
        _names = [.. sweeps.Select(RoleNames.Of)];
    }

    /// <summary>A guess for each sweep, in their order.</summary>
    public ImmutableArray<RoleGuess> All()
    {
        RoleGuess[] confirmed = [.. _sweeps.Select((s, i) => Confirmed(s, _names[i]))];
        HashSet<string> covered = [.. _sweeps.Where((s, i) => Unsaid(i) && LiesBetween(s)).Select(Shape)];
        for (int i = 0; i < confirmed.Length; i++)
        {
            if (Unsaid(i))
            {
                confirmed[i] = Unnamed(_sweeps[i], covered.Contains(Shape(_sweeps[i])));
            }
        }

        return [.. confirmed];
    }

    private bool Unsaid(int at) => _names[at] is { Role: null, Reason: "" };

    private RoleGuess Confirmed(SweepCandidate sweep, RoleGuess name)
    {
        if (name.Role is not { } role || sweep.Level is not { } level)
        {
            return name;
        }

        double[] floors = Levels(SweepRole.Floor, sweep);
        double[] references = Levels(SweepRole.Reference, sweep);
        string? doubt = role switch
        {
            SweepRole.Floor => FloorDoubt(level, references, Levels(SweepRole.Covered, sweep)),
            SweepRole.Reference => ReferenceDoubt(level, references, floors),
            _ => references.Length > 0 && level > references.Max() + ClearDb
                ? $"it lies at {Db(level)}, above the reference ({Db(references.Max())})" : null,
        };
        return doubt is null ? name with { Reason = name.Reason + Standing(role, level, floors, references) }
            : new RoleGuess(null, $"{name.Reason} says {role.Name()}, but {doubt}");
    }

    private static string? FloorDoubt(double level, double[] references, double[] covered) =>
        references.Length > 0 && level > references.Max() - ClearDb
            ? $"it lies at {Db(level)}, not below the reference ({Db(references.Max())})"
        : covered.Length > 0 && level > covered.Min() + ClearDb
            ? $"it lies at {Db(level)}, above a covered sweep ({Db(covered.Min())})"
        : null;

    private static string? ReferenceDoubt(double level, double[] references, double[] floors) =>
        floors.Length > 0 && level < floors.Min() + ClearDb
            ? $"it lies at {Db(level)}, not above the floor ({Db(floors.Min())})"
        : level < references.Max() - OneKindDb
            ? $"it lies at {Db(level)}, {Number(references.Max() - level)} dB below another reference: a linearity sweep, or "
                + "a covered one?"
        : null;

    // Only where levels say something beside the name.
    private static string Standing(SweepRole role, double level, double[] floors, double[] references) => role switch
    {
        SweepRole.Floor when references.Length > 0 => $", {Number(references.Max() - level)} dB below the reference",
        SweepRole.Reference when floors.Length > 0 => $", {Number(level - floors.Min())} dB above the floor",
        SweepRole.Linearity => "; write the level at the source into source_dbm: without it the sweep is not used",
        SweepRole.Covered when floors.Length > 0 && level < floors.Max() + ClearDb => ", as low as the floor",
        SweepRole.Covered when floors.Length > 0 && references.Length > 0 => ", between floor and reference",
        _ => "",
    };

    private RoleGuess Unnamed(SweepCandidate sweep, bool shaped)
    {
        if (LiesBetween(sweep))
        {
            return new RoleGuess(SweepRole.Covered,
                "no word tells its role, but it has a name of its own and lies between floor and reference");
        }

        if (shaped && Levels(SweepRole.Reference, sweep) is { Length: > 0 } references
            && sweep.Level <= references.Max() + ClearDb)
        {
            return new RoleGuess(SweepRole.Covered,
                "no word tells its role, but it is named as others that lie between floor and reference");
        }

        return new RoleGuess(null,
            "no word of its name tells what it was taken for" + (Hint(sweep) is { } hint ? $"; {hint}" : ""));
    }

    private bool LiesBetween(SweepCandidate sweep) =>
        sweep.Level is { } level && Shape(sweep).Length > 0
        && Levels(SweepRole.Floor, sweep) is { Length: > 0 } floors
            && Levels(SweepRole.Reference, sweep) is { Length: > 0 } references
        && level > floors.Max() + ClearDb && level < references.Max() - ClearDb;

    private string? Hint(SweepCandidate sweep)
    {
        double[] all =
            [.. _sweeps.Where(s => s.Scale == sweep.Scale && s.Span == sweep.Span).Select(s => s.Level).OfType<double>()];
        return sweep.Level is not { } level || all.Length < 2 || all.Max() - all.Min() < ClearDb ? null
            : level < all.Min() + ClearDb ? "it lies lowest, as a floor does, and as a specimen does that shields well"
            : level > all.Max() - ClearDb ? "it lies highest, as a reference does"
            : "it lies between the lowest and the highest, as a covered sweep does";
    }

    // Files that say no unit are held against each other only, and so are those over other frequencies, where all lie elsewhere.
    private double[] Levels(SweepRole role, SweepCandidate like) =>
        [.. _sweeps.Where((s, i) => _names[i].Role == role && s.Scale == like.Scale && s.Span == like.Span).Select(s => s.Level)
            .OfType<double>()];

    // What is left of the name with each number as #; empty where nothing but numbers is left.
    private static string Shape(SweepCandidate sweep)
    {
        ImmutableArray<NameChunk> left = (sweep.Header ?? sweep.Name).Left;
        bool named = left.Any(c => !c.IsNumber) || (sweep.Header ?? sweep.Name).Said.ContainsKey(PlaceKind.Lot);
        return !named ? ""
            : string.Join('_',
                left.Select(c => string.Concat(c.Text.Select(x => char.IsAsciiDigit(x) ? '#' : x)))) is { Length: > 0 } shape
            ? shape : "lot";
    }

    private static string Db(double level) => Number(level) + " dB";

    private static string Number(double level) => Math.Round(level, 1).ToString("0.#", CultureInfo.InvariantCulture);
}
