using SweepStats.Repeats;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Sweeps that read like those of another kind: files exchanged, a specimen left on, a source not switched.</summary>
/// <remarks>Told before all that follows from it. Plates and the reference as a whole have no fellows that show it: they are
/// held against what they must be (<see cref="MistakenPlate"/>, <see cref="MistakenReference"/>).</remarks>
internal sealed class WrongKind : ICheck
{
    private const int MostNamed = 3;

    /// <inheritdoc/>
    public string Code => "wrong-kind";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen)
    {
        string[] reasons = [.. new[] { Alone(seen), MistakenPlate.UntestedBecause(seen) }.OfType<string>()];
        return reasons.Length == 0 ? null : string.Join(", and ", reasons);
    }

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        MistakenSweep[] all = [.. MistakenSweeps.Among(seen.Campaign), .. MistakenPlate.Single(seen)];
        List<MistakenSweep> left = [.. all];
        List<Finding> found = [.. MistakenReference.In(seen, Code)];
        foreach (MistakenSweep one in all)
        {
            // Of several that might be, nobody knows which two were exchanged.
            if (left.Contains(one) && all.Where(one.IsExchangedWith).ToList() is [var other]
                && all.Count(other.IsExchangedWith) == 1)
            {
                found.Add(Exchanged(seen, one, other));
                left.RemoveAll(m => m == one || m == other);
            }
        }

        found.AddRange(left.GroupBy(m => (m.Sweep.Role, m.Specimen, m.Like)).Select(g => Told(seen, [.. g])));
        return [.. found, .. MistakenPlate.Whole(seen, Code)];
    }

    /// <summary>A kind as half a sentence: "a reference sweep", "covered sweeps of A/A02".</summary>
    public static string Kind(SweepRole role, SpecimenName? specimen, bool one) =>
        (one ? "a " : string.Empty) + Named(role, specimen, one);

    private static string Named(SweepRole role, SpecimenName? specimen, bool one) =>
        $"{Word(role)} {(one ? "sweep" : "sweeps")}{(specimen is { } name ? $" of {name}" : string.Empty)}";

    private static string Word(SweepRole role) => role.ToString().ToLowerInvariant();

    // Placements of a specimen are held against each other by another check.
    private static string? Alone(Evidence seen)
    {
        var kinds = seen.Campaign.Used().GroupBy(s => (s.Role, s.Lot, s.Specimen)).ToList();
        var alone = kinds.FindAll(k => !k.GroupBy(s => s.Placement).Any(p => p.Skip(1).Any()));
        var left = alone.FindAll(k => !k.Skip(1).Any());
        int specimens = left.Count(k => k.Key.Role == SweepRole.Covered);
        IEnumerable<string> named = left.Where(k => k.Key.Role != SweepRole.Covered).Select(k => $"the {Word(k.Key.Role)}")
            .Concat(specimens == 0 ? [] : [Amount.Count(specimens, "specimen", "specimens")]);
        return alone.Count == kinds.Count ? "no two sweeps repeat each other"
            : left.Count == 0 ? null : $"only one sweep was taken of {string.Join(" and ", named)}";
    }

    private Finding Exchanged(Evidence seen, MistakenSweep one, MistakenSweep other) => Fault(seen, [one, other]) with
    {
        Role = null,
        Specimen = one.Specimen ?? other.Specimen,
        Message = $"{one.Sweep.Name} reads like {Kind(other.Sweep.Role, other.Specimen, one: true)}, and {other.Sweep.Name} like "
            + $"{Kind(one.Sweep.Role, one.Specimen, one: true)}: the two files look exchanged.",
        NextStep = $"Look whether {one.Sweep.Name} and {other.Sweep.Name} were exchanged: "
            + "put each where it belongs, or take both again.",
    };

    private Finding Told(Evidence seen, MistakenSweep[] mistaken)
    {
        MistakenSweep first = mistaken[0];
        bool one = mistaken.Length == 1;
        double above = Nearest(mistaken).AboveOwnDb;
        string like = first.Likes.Length == 1 ? Kind(first.Like.Role, first.Like.Specimen, one)
            : $"{Kind(first.Like.Role, null, one)}{(first.Like.Specimen is { } name ? $" (nearest {name})" : string.Empty)}";
        string others = first.OwnCount == 1 ? "the other" : $"the other {first.OwnCount}";
        string own = Named(first.Sweep.Role, first.Specimen, one: first.OwnCount == 1);
        return Fault(seen, mistaken) with
        {
            Sweep = one ? first.Sweep.Name : null,
            Message = $"{Named(mistaken)} {(one ? "reads" : "read")} like {like}, {Amount.Db(Math.Abs(above))} "
                + $"{(above > 0 ? "above" : "below")} {others} {own}.",
        };
    }

    private Finding Fault(Evidence seen, MistakenSweep[] mistaken) => new()
    {
        Code = Code,
        Severity = Severity.Fault,
        Role = mistaken[0].Sweep.Role,
        Specimen = mistaken[0].Specimen,
        Size = new(Math.Abs(Nearest(mistaken).AboveOwnDb)),
        Bias = Bias.Unknown,
        Misleads = true,
        Message = string.Empty,
        Basis = $"At {Amount.OutOf(mistaken.Min(m => m.Agreeing), seen.Campaign.Grid.Count)} or more within three deviations "
            + $"of those, and at most of all at least {Amount.Db(mistaken.Max(m => m.FarDb))} from its own kind.",
        NextStep = $"At {Named(mistaken)} look whether {Mishap(mistaken[0])}, or files were exchanged: "
            + "put each where it belongs, or take it again.",
    };

    private static MistakenSweep Nearest(MistakenSweep[] mistaken) => mistaken.MinBy(m => Math.Abs(m.AboveOwnDb))!;

    private static string Named(MistakenSweep[] mistaken) =>
        Amount.Names([.. mistaken.Select(m => m.Sweep.Name)], MostNamed);

    private static string Mishap(MistakenSweep mistaken) => (mistaken.Sweep.Role, mistaken.Like.Role) switch
    {
        (_, SweepRole.Floor) => "the source was off",
        (SweepRole.Floor, _) => "the source was on",
        (SweepRole.Covered, _) => "the specimen was in place",
        (SweepRole.Plate, SweepRole.Reference) => "the plate was in place",
        _ => "the specimen was left on",
    };
}
