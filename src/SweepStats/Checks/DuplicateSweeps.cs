using SweepStats.Alignment;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>A copied file is no repeat.</summary>
internal sealed class DuplicateSweeps : ICheck
{
    private const int MostNamed = 3;

    public string Code => "duplicate-sweep";

    public string? UntestedBecause(Evidence seen) => Copies.CouldBeTold([.. seen.Campaign.Used()]) ? null : "levels so few or so coarse agree by chance";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        foreach (IGrouping<bool, DuplicateSweep> alike in seen.Campaign.Duplicates.GroupBy(twin => twin.SameKind))
        {
            DuplicateSweep[] twins = [.. alike];
            if (twins.Length > MostNamed)
            {
                yield return Together(twins);
                continue;
            }

            foreach (DuplicateSweep twin in twins)
            {
                yield return One(twin);
            }
        }
    }

    private Finding Together(DuplicateSweep[] twins)
    {
        DuplicateSweep first = twins[0];
        string named = string.Join(", ", twins.Take(MostNamed).Select(t => $"{t.Copy.Name} those of {t.Kept.Name}"));
        return One(first) with
        {
            Role = twins.All(t => t.Copy.Role == first.Copy.Role) ? first.Copy.Role : null,
            Specimen = twins.All(t => Specimen(t) == Specimen(first)) ? Specimen(first) : null,
            Message = $"{Amount.Count(twins.Length, "sweep holds", "sweeps hold")} exactly the levels of another ({named} and {Amount.Count(twins.Length - MostNamed, "more", "more")}): "
                + (first.SameKind ? "each is counted once, since two real sweeps do not agree at every point." : "one of each two is not what it says it is."),
        };
    }

    private static SpecimenName? Specimen(DuplicateSweep twin) =>
        twin.Copy.Role == SweepRole.Covered ? new SpecimenName(twin.Copy.Lot ?? "1", twin.Copy.Specimen ?? "1") : null;

    private Finding One(DuplicateSweep twin) => new()
    {
        Code = Code,
        Severity = twin.SameKind ? Severity.Warning : Severity.Fault,
        Role = twin.Copy.Role,
        Specimen = Specimen(twin),
        Message = twin.SameKind
                    ? $"{twin.Copy.Name} holds exactly the levels of {twin.Kept.Name}: it is counted once, since two real sweeps do not agree at every point."
                    : $"{twin.Copy.Name} holds exactly the levels of {twin.Kept.Name}, although they stand for different things: one of them is not what it says it is.",
        Basis = string.Create(Amount.Print, $"All {twin.Copy.Levels.Length} levels are the same to the last digit, {twin.Copy.Levels.Distinct().Count()} different ones among them; {(twin.SameKind ? "two real sweeps agree so by chance less than once in 1000 times, by what other sweeps and the step of the display show" : "sweeps of two kinds hardly ever agree at every point")}."),
        NextStep = "Look whether a file was copied or exported twice; take the missing sweep again.",
    };
}
