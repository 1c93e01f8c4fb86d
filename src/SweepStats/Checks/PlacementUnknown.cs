using System.Globalization;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Without placements the interval covers sweep-to-sweep repeatability alone.</summary>
internal sealed class PlacementUnknown : ICheck
{
    public string Code => "placement-unknown";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        int unnamed = seen.Curves.Count(c => c.PlacementCount is null or 1);
        if (unnamed > 0)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Note,
                Role = SweepRole.Covered,
                Message = $"For {Amount.Count(unnamed, "specimen", "specimens")} no placements are named, or only one: the intervals cover how well sweeps repeat, not how well the specimen can be put back.",
                Basis = string.Create(CultureInfo.InvariantCulture, $"Two placements or more are named for {seen.Curves.Length - unnamed} of {seen.Curves.Length} specimens."),
                NextStep = "Take the specimen off and put it back between sweeps, and name the placements: covered/<lot>/<specimen>/<placement>/, or the placement column of sweeps.csv.",
            };
        }
    }
}
