using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// Floor sweeps that show no noise: the bottom of a display, a number put in by hand, an input that is not connected.
/// </summary>
internal sealed class DeadFloor : ICheck
{
    /// <inheritdoc/>
    public string Code => "dead-floor";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => seen.FloorLife is null ? Lacking.Sweeps(seen, SweepRole.Floor) : null;

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.FloorLife is { State: not FloorState.Alive } life)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Weight(life.State),
                Role = SweepRole.Floor,
                Message = Message(life, Level(life, seen)),
                Basis = Basis(life),
                NextStep = NextStep(life.State),
            };
        }
    }

    private static Severity Weight(FloorState state) => state switch
    {
        FloorState.PartlyClipped => Severity.Note,
        FloorState.Hidden => Severity.Warning,
        _ => Severity.Fault,
    };

    private static string Level(FloorLife life, Evidence seen) =>
        string.Create(Amount.Print, $"{life.LevelDb:0.0#} {seen.Campaign.Scale.Symbol()}");

    private static string Message(FloorLife life, string level) =>
        string.Create(Amount.Print, $"{life.Tied} of {life.ReadingCount} floor readings ") + life.State switch
        {
            FloorState.Stuck => $"stand still, most at {level}: noise moves, so these sweeps show no floor.",
            FloorState.Hidden => $"stand at {level}: on so coarse a display this may be noise averaged for long, or no noise at "
                + "all. These sweeps are not taken for a floor.",
            FloorState.Clipped =>
                $"stand at the lowest level, {level}: the bottom of the display cuts the noise off. These sweeps show no floor.",
            _ => $"stand at the lowest level, {level}: the bottom of the display cuts off some of the noise. Less than a quarter "
                + "do, so the floor holds.",
        };

    private static string Basis(FloorLife life) => life.State switch
    {
        FloorState.Stuck => string.Create(Amount.Print,
            $"Noise of 10 000 looks scatters by 0.043 dB; by chance {life.Tied} of {life.ReadingCount} readings stand still "
                + $"less than once in 1000 times."),
        FloorState.Hidden => string.Create(Amount.Print,
            $"Noise of 100 looks keeps {life.Tied} readings in one step of the display less than once in 1000 times, noise of "
                + $"10 000 looks more often."),
        _ => string.Create(Amount.Print, $"{100.0 * life.Tied / life.ReadingCount:0} % of the readings at the lowest level and "
            + $"none below, although noise falls as far as it rises (by chance once in 1024 times); 25 % move the lower end of "
            + $"an interval so that it misses in 4 % of the cases instead of 2.5 %."),
    };

    private static string NextStep(FloorState state) => state switch
    {
        FloorState.Stuck => "Look whether the input was connected, whether the bottom of the display lies above the noise, and "
            + "whether the file holds readings. Switch the source off, leave all receiver settings as they are, and take the "
            + "floor sweeps again.",
        FloorState.Hidden => "Export the floor with more digits, or show it on a finer scale, and take the floor sweeps again.",
        _ => "Lower the bottom of the display (a lower reference level, or more dB a division) until the noise stands clear of "
            + "it, and take the floor sweeps again; covered sweeps that reach the bottom too.",
    };
}
