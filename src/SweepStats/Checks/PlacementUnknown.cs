using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Without placements the interval covers sweep-to-sweep repeatability alone.</summary>
internal sealed class PlacementUnknown : ICheck
{
    /// <inheritdoc/>
    public string Code => "placement-unknown";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        string[] unnamed = [.. seen.Curves.Where(c => c.PlacementCount is null or 1).Select(c => c.Name.ToString())];
        if (unnamed.Length > 0)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Note,
                Role = SweepRole.Covered,
                Message = $"For {Which(unnamed, seen.Curves.Length)} no placements are named, or only one: the intervals cover "
                    + "how well sweeps repeat, not how well the specimen can be put back.",
                Basis = string.Create(Amount.Print, $"Two placements or more are named for "
                    + $"{seen.Curves.Length - unnamed.Length} of {seen.Curves.Length} specimens."),
                NextStep = "Take the specimen off and put it back between sweeps, and name the placements: "
                    + "covered/<lot>/<specimen>/<placement>/, or the placement column of sweeps.csv.",
            };
        }
    }

    // All of them need no names, and many are no help.
    private static string Which(string[] unnamed, int all) =>
        unnamed.Length < all && unnamed.Length <= 3 ? string.Join(", ", unnamed)
            : Amount.Count(unnamed.Length, "specimen", "specimens");
}
