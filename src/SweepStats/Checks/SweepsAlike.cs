using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Repeats resemble the one before them: they are worth fewer than as many independent ones.</summary>
/// <remarks>Intervals allow for it (<see cref="RepeatWorth"/>); the finding says by how much, and how to take repeats that are
/// worth more.</remarks>
internal sealed class SweepsAlike : ICheck
{
    // Less does not change what is claimed.
    private const double WorthWarning = 1.2;

    private const string BetweenSweeps =
        "Wait longer between sweeps, or let source, cables and room come to rest first; taking reference and covered sweeps "
        + "in turn "
        + "doubles the time between those of one kind. More sweeps at the same pace help little. Where the specimen is put back "
        + "between sweeps, name the placements.";

    private const string BetweenPlacements =
        "Find what changes slowly while the specimen is put on again and again (temperature, a cable, the frame), and wait "
        + "until it stays. Take the reference in between.";

    /// <inheritdoc/>
    public string Code => "sweeps-alike";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => seen.SerialCorrelation.Levels.IsEmpty
        ? "no three sweeps or placements repeat each other at enough frequencies clear of the floor"
        : null;

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen) => seen.SerialCorrelation.Found.Select(level => Told(level, seen));

    private Finding Told(SerialLevel level, Evidence seen)
    {
        CountedRepeats[] counted = [.. Repeats(level, seen)];
        double wider = counted.Length == 0 ? 1 : counted.Max(c => c.Worth.Widening);
        return new Finding
        {
            Code = Code,
            Severity = wider > WorthWarning ? Severity.Warning : Severity.Note,
            Role = level.OfPlacements ? SweepRole.Covered : null,
            Message = $"{(level.OfPlacements ? "Placements" : "Sweeps")} are no independent repeats: each resembles the one "
                + $"before. {Worths(counted, wider)}",
            Basis = Basis(level) + Correlations(counted),
            NextStep = level.OfPlacements ? BetweenPlacements : BetweenSweeps,
        };
    }

    private static string Basis(SerialLevel level) => string.Create(Amount.Print,
        $"{level.RepeatCount} {(level.OfPlacements ? "placements" : "sweeps")} in "
            + $"{Amount.Count(level.GroupCount, "group", "groups")}, ")
        + string.Create(Amount.Print,
            $"in the order taken. Slow against quick changes: ratio {level.Ratio:0.00} at the frequencies, "
                + $"{level.WholeRatio:0.00} ")
        + string.Create(Amount.Print,
            $"as a whole; independent ones give 0. Chance gives as much with a probability of at most "
                + $"{level.Probability:0.0000}; ")
        + string.Create(Amount.Print, $"told below {SerialCorrelation.FalseAlarm:0.0##}.");

    private static string Worths(CountedRepeats[] counted, double wider)
    {
        if (counted.Length == 0)
        {
            return "Intervals count placements and stay as they are.";
        }

        string[] each = [.. counted.Select(c =>
            string.Create(Amount.Print, $"{c.Name} are worth {c.Worth.Independent:0.0} independent ones"))];
        string all = string.Join(", ", each);
        return string.Create(Amount.Print,
            $"{all}. Intervals, plan and comparisons allow for it: at a frequency they are up to {wider:0.0} times as wide.");
    }

    private static string Correlations(CountedRepeats[] counted) => counted.Length == 0 ? string.Empty
        : " Correlation of one with the next: " + string.Join(", ", counted.Select(Correlation)) + ".";

    private static string Correlation(CountedRepeats counted) =>
        string.Create(Amount.Print, $"{counted.Worth.Lag1:0.00} ({counted.Name})");

    // What intervals count: reference sweeps, and the sweeps or placements of specimens, once for each number of them.
    private static IEnumerable<CountedRepeats> Repeats(SerialLevel level, Evidence seen)
    {
        SerialCorrelation found = seen.SerialCorrelation;
        int reference = seen.Campaign.Reference.SweepCount;
        if (!level.OfPlacements && found.Worth(RepeatKind.Reference, reference) is { } worth)
        {
            yield return new CountedRepeats($"{reference} reference sweeps", worth);
        }

        ShieldingCurve[] counted = [.. seen.Curves.Where(c => c.PlacementCount > 1 == level.OfPlacements)];
        int[] numbers = [.. counted.Select(c => level.OfPlacements ? c.PlacementCount!.Value : c.SweepCount).Distinct().Order()];
        foreach (int number in numbers.Length > 2 ? [numbers[0], numbers[^1]] : numbers)
        {
            if (found.Worth(level.OfPlacements ? RepeatKind.Placement : RepeatKind.Covered, number) is { } covered)
            {
                yield return new CountedRepeats(level.OfPlacements ? $"{number} placements"
                    : $"{number} covered sweeps", covered);
            }
        }
    }

    private sealed record CountedRepeats(string Name, RepeatWorth Worth);
}
