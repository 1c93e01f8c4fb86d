using SweepStats.Repeats;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>One sweep differs from those that repeat it by more than they differ among each other.</summary>
internal sealed class OddSweep : ICheck
{
    public string Code => "odd-sweep";

    public string? UntestedBecause(Evidence seen)
    {
        bool LookedAt(SweepRole role) => seen.Repeats.Any(g => g.Role == role && OddRepeats.CanTell(g, seen.Repeats));
        string floor = LookedAt(SweepRole.Floor) ? "; floor sweeps were looked at" : string.Empty;
        return (LookedAt(SweepRole.Reference), LookedAt(SweepRole.Covered)) switch
        {
            (true, true) => null,
            (true, false) => "no five covered sweeps of one placement repeat each other, nor three among many others; reference "
                + "sweeps were looked at",
            (false, true) => "no five reference sweeps repeat each other; covered sweeps were looked at",
            _ => "no five reference or covered sweeps of one placement repeat each other" + floor,
        };
    }

    public IEnumerable<Finding> Inspect(Evidence seen) => seen.OddRepeats.Select(odd => new Finding
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = odd.Group.Role,
        Specimen = odd.Group.Specimen,
        Sweep = odd.Sweep.Sweep.Name,
        Size = odd.Size,
        Bias = Moved(seen, odd),
        Message = What(odd) + " It stays in the result.",
        Basis = string.Create(Amount.Print,
            $"Against the scatter of {odd.SweepCount} repeated sweeps t = {odd.T:0.0} on {odd.DegreesOfFreedom} degrees of "
                + $"freedom, probability {odd.Probability:0.0e+0}; "
                + $"{(odd.Deviate is { } deviate ? string.Create(Amount.Print,
                    $"in its own group extreme studentised deviate {deviate:0.00} against {odd.CriticalDeviate:0.00}")
                    : "its own group is too small to say more")}."),
        NextStep = "Look what was different (a cable touched, a person in the way, a setting). If you know, exclude the sweep "
            + "with that reason in sweeps.csv and take it again; if not, take more sweeps.",
    });

    // What it moves the mean of its role or specimen by; a lower reference, or a higher covered level, makes too little
    // shielding.
    private static Bias? Moved(Evidence seen, OddRepeat odd)
    {
        int sweeps = odd.Group.Role == SweepRole.Reference ? seen.Campaign.Reference.SweepCount
            : seen.Campaign.Covered.FirstOrDefault(c => c.Name == odd.Group.Specimen)?.Block.SweepCount ?? 0;
        double by = odd.Size.Value / sweeps;
        bool tooMuch = odd.Sweep.Offset.Value > 0 == (odd.Group.Role == SweepRole.Reference);
        return sweeps == 0 || odd.Group.Role == SweepRole.Floor ? null
            : !odd.ByOffset ? new Bias(by, by) : tooMuch ? new Bias(by, 0) : new Bias(0, by);
    }

    private static string What(OddRepeat odd)
    {
        int others = odd.Group.Sweeps.Length - 1;
        string size = Amount.Db(odd.Size.Value);
        return odd.ByOffset
            ? $"{odd.Sweep.Sweep.Name} lies {size} {(odd.Sweep.Offset.Value > 0 ? "above" : "below")} the other {others} sweeps "
                + "as a whole."
            : $"{odd.Sweep.Sweep.Name} has another shape than the other {others} sweeps: frequency by frequency it differs by "
                + $"{size} more than they do among each other.";
    }
}
