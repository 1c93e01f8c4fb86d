using SweepStats.Alignment;
using SweepStats.Linearity;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>A copied file is no repeat.</summary>
internal sealed class DuplicateSweeps : ICheck
{
    private const int MostNamed = 3;

    // Of a summary: the list of the sweeps names all that are not counted.
    private const int MostShown = 2;

    /// <inheritdoc/>
    public string Code => "duplicate-sweep";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) =>
        Copies.CouldBeTold([.. seen.Campaign.Used()]) ? null : "levels so few or so coarse agree by chance";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        IEnumerable<DuplicateSweep> all = seen.Campaign.Duplicates.Where(twin => !IsReferenceAgain(seen, twin));
        foreach (IGrouping<bool, DuplicateSweep> alike in all.GroupBy(twin => twin.SameKind))
        {
            DuplicateSweep[] twins = [.. alike];
            if (twins.Length > MostNamed)
            {
                yield return Together(seen, twins);
                continue;
            }

            foreach (DuplicateSweep twin in twins)
            {
                yield return One(seen, twin);
            }
        }
    }

    // The highest step of the source may be that of the reference, and its sweeps then stand for the same.
    private static bool IsReferenceAgain(Evidence seen, DuplicateSweep twin)
    {
        Sweep[] both = [twin.Kept, twin.Copy];
        return both.FirstOrDefault(s => s.Role == SweepRole.Linearity) is { } step
            && both.FirstOrDefault(s => s.Role == SweepRole.Reference) is { } reference
            && (step.SourceDbm ?? seen.SourceDbm) == ReferenceSource.Of(reference, seen.SourceDbm);
    }

    private Finding Together(Evidence seen, DuplicateSweep[] twins)
    {
        DuplicateSweep first = twins[0];
        string Word(SweepRole kind) => kind.ToString().ToLowerInvariant();
        string roles =
            string.Join(", ", twins.GroupBy(t => t.Copy.Role).Select(g => Amount.Count(g.Count(), Word(g.Key), Word(g.Key))));
        string named = string.Join(", ", twins.Take(MostShown).Select(t => t.Copy.Name));
        return One(seen, first) with
        {
            Role = twins.All(t => t.Copy.Role == first.Copy.Role) ? first.Copy.Role : null,
            Specimen = twins.All(t => Specimen(t) == Specimen(first)) ? Specimen(first) : null,
            Misleads = !first.SameKind || IsMostOfAKind(seen, twins),
            Message = string.Create(Amount.Print,
                $"{twins.Length} of {All(seen)} sweeps hold exactly the levels of another ({roles}; the first {named}): ")
                + (first.SameKind ? "they are copies and not counted, since two real sweeps do not agree at every point."
                    : "one of each two is not what it says it is."),
        };
    }

    private static int All(Evidence seen) =>
        seen.Campaign.Used().Count() + seen.Campaign.SetAside.Length + seen.Campaign.Duplicates.Count(twin => twin.SameKind);

    // What is missing then is missing for that.
    private static bool IsMostOfAKind(Evidence seen, DuplicateSweep[] twins) => twins.GroupBy(t => SweepKind.Of(t.Copy))
        .Any(g => g.Count() >= seen.Campaign.Used().Concat(seen.Campaign.SetAside).Count(s => SweepKind.Of(s) == g.Key));

    private static SpecimenName? Specimen(DuplicateSweep twin) =>
        twin.Copy.Role == SweepRole.Covered ? SpecimenName.Of(twin.Copy) : null;

    private Finding One(Evidence seen, DuplicateSweep twin) => new()
    {
        Code = Code,
        Severity = twin.SameKind ? Severity.Warning : Severity.Fault,
        Role = twin.Copy.Role,
        Specimen = Specimen(twin),
        Misleads = !twin.SameKind || IsMostOfAKind(seen, [twin]),
        Message = twin.SameKind
                    ? $"{twin.Copy.Name} holds exactly the levels of {twin.Kept.Name}: it is counted once, since two real "
                        + "sweeps do not agree at every point."
                    : $"{twin.Copy.Name} holds exactly the levels of {twin.Kept.Name}, although they stand for different "
                        + "things: one of them is not what it says it is.",
        Basis = string.Create(Amount.Print, $"All {twin.Copy.Levels.Length} levels are the same to the last digit, "
            + $"{twin.Copy.Levels.Distinct().Count()} different ones among them; "
            + $"{(twin.SameKind
                ? "two real sweeps agree so by chance less than once in 1000 times, by what other sweeps and the step of "
                    + "the display show"
                : "sweeps of two kinds hardly ever agree at every point")}."),
        NextStep = "Look whether a file was copied or exported twice; take the missing sweep again.",
    };
}
