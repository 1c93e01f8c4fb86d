using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Repeats are missing for the interval that is asked for.</summary>
internal sealed class TooFewRepeats : ICheck
{
    /// <inheritdoc/>
    public string Code => "too-few-repeats";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Floor is { SweepCount: 1 } && seen.Campaign.Floor is { SweepCount: 1 })
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Note,
                Role = SweepRole.Floor,
                Message = "There is one floor sweep: its level is pooled over neighbouring frequencies, and 0.5 dB is allowed "
                    + "for what a second sweep would differ by as a whole.",
                Basis = "A spread needs two sweeps at least; 0.5 dB is about what receivers drift by.",
                NextStep = Unread(seen, SweepRole.Floor, null) ?? "Take at least three floor sweeps.",
            };
        }

        foreach ((SweepRole role, SpecimenName? specimen, int units, bool placements) in Groups(seen))
        {
            if (units == 1)
            {
                yield return new Finding
                {
                    Code = Code,
                    Severity = Severity.Warning,
                    Role = role,
                    Specimen = specimen,
                    Message = $"There is one {Name(role)} sweep: how well it repeats is not known and no interval is given for "
                        + "what rests on it. Bounds allow for noise alone.",
                    Basis = "A standard deviation takes 2 repeats at least.",
                    NextStep = Unread(seen, role, specimen)
                        ?? (role == SweepRole.Reference ? "Take at least three reference sweeps, before and after the specimens."
                        : "Take at least three sweeps, better five, taking the specimen off and putting it back between them."),
                };
            }
            else if (units == 2)
            {
                yield return new Finding
                {
                    Code = Code,
                    Severity = Severity.Warning,
                    Role = role,
                    Specimen = specimen,
                    Message = $"There are two {Name(role)} {(placements ? "placements" : "sweeps")}: two hardly show their "
                        + "spread, and intervals are wide for it.",
                    Basis = string.Create(Amount.Print,
                        $"Two repeats leave 1 degree of freedom: Student's t of a 95 % interval is "
                            + $"{StudentT.Quantile(0.975, 1):0.0}; with three repeats it is {StudentT.Quantile(0.975, 2):0.0}, "
                            + $"with five {StudentT.Quantile(0.975, 4):0.0}."),
                    NextStep = Unread(seen, role, specimen)
                        ?? (placements ? "Put the specimen on a third time and sweep it again, better five times: more sweeps "
                            + "of the same placement do not help."
                        : "Take a third sweep, better five."),
                };
            }
        }
    }

    private static IEnumerable<(SweepRole Role, SpecimenName? Specimen, int Units, bool Placements)> Groups(Evidence seen)
    {
        yield return (SweepRole.Reference, null, seen.Campaign.Reference.SweepCount, false);
        foreach (ShieldingCurve curve in seen.Curves)
        {
            bool placements = curve.PlacementCount > 1;
            yield return (SweepRole.Covered, curve.Name, placements ? curve.PlacementCount!.Value : curve.SweepCount, placements);
        }
    }

    // Repeats that were taken and could not be read need not be taken again.
    private static string? Unread(Evidence seen, SweepRole role, SpecimenName? specimen) =>
        UnreadFiles.Of([.. seen.Campaign.Unread.Where(u => specimen is null || u.Specimen == specimen)], role)?.Mend;

    private static string Name(SweepRole role) => role == SweepRole.Reference ? "reference" : "covered";
}
