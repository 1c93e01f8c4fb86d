using SweepStats.Doubts;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>The floor is not where it was measured: covered noise lies above it, or its sweeps before and after differ.</summary>
internal sealed class FloorMoved : ICheck
{
    // Less than this moves a value 10 dB over the floor by less than 0.1 dB.
    private const double WorthTellingDb = 0.5;

    // Twice what a receiver's noise usually moves by: something else changed.
    private const double UnusualDb = 2 * FloorHistory.UsualStabilityDb;

    /// <inheritdoc/>
    public string Code => "floor-moved";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => seen.History switch
    {
        null => Lacking.Sweeps(seen, SweepRole.Floor),
        { Bracketed: true } => null,
        _ when seen.Doubts.Motions.IsEmpty => "nothing says that floor sweeps were taken before and after the specimens; "
            + "whether covered noise piles up above them was looked at",
        _ => null,
    };

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        foreach (FloorMotion motion in seen.Doubts.Motions)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                Role = SweepRole.Covered,
                Specimen = motion.Specimen,
                Where = Stretches.Where(seen.Campaign.Grid, motion.Points.Contains),
                Size = new Decibels(motion.RiseDb),
                Message = $"At {Amount.OutOf(motion.Points.Length, seen.Campaign.Grid.Count)} the covered level stands "
                    + $"{Amount.Db(motion.RiseDb)} over the floor, everywhere alike: the noise has probably risen since the "
                    + "floor was measured. Bounds are given there, and the floor is taken to lie up to "
                    + $"{Amount.Db(motion.ReachDb)} off.",
                Basis = string.Create(Amount.Print, $"Mean rise {motion.RiseDb:0.00} dB with a standard error of "
                    + $"{motion.ErrorDb:0.00} dB; the readings scatter about it as noise does, and few stand just above."),
                NextStep = "Take floor sweeps now, and next time before and after the specimens. Let the receiver warm up.",
            };
        }

        if (seen.History is { Bracketed: true, ChangeDb: { } change } history && Math.Abs(change) >= WorthTellingDb
            && history.HalfWidthDb > 0)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Math.Abs(change) >= UnusualDb ? Severity.Warning : Severity.Note,
                Role = SweepRole.Floor,
                Size = new Decibels(change),
                Message = $"The floor {(change > 0 ? "rose" : "fell")} by {Amount.Db(Math.Abs(change))} from the sweeps before "
                    + "the specimens to those after them. Intervals near the floor allow for any floor between the two.",
                Basis = string.Create(Amount.Print, $"Mean of the later floor sweeps less that of the earlier ones, "
                    + $"{change:0.00} dB: more than sweeps of one time scatter."),
                NextStep = Math.Abs(change) < UnusualDb ? "Let the receiver warm up; take the floor more often."
                    : "Look what changed at the receiver (a setting, an attenuator, a transmitter that came on); mend it, and "
                        + "take floor and covered sweeps again.",
            };
        }
    }
}
