using System.Globalization;
using SweepStats.Alignment;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>A copied file is no repeat.</summary>
internal sealed class DuplicateSweeps : ICheck
{
    public string Code => "duplicate-sweep";

    public string? UntestedBecause(Evidence seen) => Copies.CouldBeTold([.. seen.Campaign.Used()]) ? null : "levels so few or so coarse agree by chance";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        foreach (DuplicateSweep twin in seen.Campaign.Duplicates)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = twin.SameKind ? Severity.Warning : Severity.Fault,
                Role = twin.Copy.Role,
                Specimen = twin.Copy.Role == SweepRole.Covered ? new SpecimenName(twin.Copy.Lot ?? "1", twin.Copy.Specimen ?? "1") : null,
                Message = twin.SameKind
                    ? $"{twin.Copy.Name} holds exactly the levels of {twin.Kept.Name}: it is counted once, since two real sweeps do not agree at every point."
                    : $"{twin.Copy.Name} holds exactly the levels of {twin.Kept.Name}, although they stand for different things: one of them is not what it says it is.",
                Basis = string.Create(CultureInfo.InvariantCulture, $"All {twin.Copy.Levels.Length} levels are the same to the last digit, {twin.Copy.Levels.Distinct().Count()} different ones among them; {(twin.SameKind ? "two real sweeps agree so by chance less than once in 1000 times, by what other sweeps and the step of the display show" : "sweeps of two kinds agree so where nothing at all is shielded")}."),
                NextStep = "Look whether a file was copied or exported twice; take the missing sweep again.",
            };
        }
    }
}
