using System.Globalization;
using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Repeats resemble the one before them: they are worth fewer than as many independent ones.</summary>
/// <remarks>Intervals allow for it (<see cref="RepeatWorth"/>); the finding says by how much, and how to take repeats that are worth more.</remarks>
internal sealed class SweepsAlike : ICheck
{
    // Less does not change what is claimed.
    private const double WorthWarning = 1.2;

    public string Code => "sweeps-alike";

    public string? UntestedBecause(Evidence seen) => seen.SerialCorrelation.Levels.IsEmpty
        ? "no three sweeps or placements repeat each other at enough frequencies clear of the floor"
        : null;

    public IEnumerable<Finding> Inspect(Evidence seen) => seen.SerialCorrelation.Found.Select(level => Told(level, seen));

    private Finding Told(SerialLevel level, Evidence seen)
    {
        (string Name, RepeatWorth Worth)[] worths = [.. Repeats(level, seen)];
        double wider = worths.Length == 0 ? 1 : worths.Max(w => w.Worth.Widening);
        string noun = level.OfPlacements ? "Placements" : "Sweeps";
        return new Finding
        {
            Code = Code,
            Severity = wider > WorthWarning ? Severity.Warning : Severity.Note,
            Role = level.OfPlacements ? SweepRole.Covered : null,
            Message = $"{noun} taken one after the other are alike. {Worths(worths)}",
            Basis = string.Create(
                CultureInfo.InvariantCulture,
                $"{level.RepeatCount} {noun.ToLowerInvariant()} in {Amount.Count(level.GroupCount, "group", "groups")}, in the order taken. Slow against quick changes: ratio {level.Ratio:0.00} at the frequencies, {level.WholeRatio:0.00} as a whole; independent ones give 0. Chance gives as much with a probability of at most {level.Probability:0.0000}; told below {SerialCorrelation.FalseAlarm:0.0##}.{Correlations(worths)}"),
            NextStep = level.OfPlacements
                ? "Find what changes slowly while the specimen is put on again and again (temperature, a cable, the frame), and wait until it stays. Take the reference in between."
                : "Wait longer between sweeps, or let source, cables and room come to rest first; taking reference and covered sweeps in turn doubles the time between those of one kind. More sweeps at the same pace help little. Where the specimen is put back between sweeps, name the placements.",
        };
    }

    private static string Worths((string Name, RepeatWorth Worth)[] worths) => worths.Length == 0
        ? "Intervals count placements and stay as they are."
        : string.Create(CultureInfo.InvariantCulture, $"{Sentence(string.Join(", ", worths.Select(w => $"{w.Name} are worth {Number(w.Worth.Independent)} independent ones")))} Intervals, plan and comparisons allow for it: at a frequency they are up to {worths.Max(w => w.Worth.Widening):0.0} times as wide as independent repeats would make them.");

    private static string Correlations((string Name, RepeatWorth Worth)[] worths) => worths.Length == 0 ? string.Empty : string.Create(
        CultureInfo.InvariantCulture, $" Correlation of one with the next: {string.Join(", ", worths.Select(w => string.Create(CultureInfo.InvariantCulture, $"{w.Worth.Lag1:0.00} ({w.Name})")))}.");

    // What intervals count: reference sweeps, and the sweeps or placements of specimens, once for each number of them.
    private static IEnumerable<(string Name, RepeatWorth Worth)> Repeats(SerialLevel level, Evidence seen)
    {
        SerialCorrelation found = seen.SerialCorrelation;
        int reference = seen.Campaign.Reference.SweepCount;
        if (!level.OfPlacements && found.Worth(RepeatKind.Reference, reference) is { } worth)
        {
            yield return ($"{reference} reference sweeps", worth);
        }

        ShieldingCurve[] counted = [.. seen.Curves.Where(c => c.PlacementCount > 1 == level.OfPlacements)];
        int[] numbers = [.. counted.Select(c => level.OfPlacements ? c.PlacementCount!.Value : c.SweepCount).Distinct().Order()];
        foreach (int number in numbers.Length > 2 ? [numbers[0], numbers[^1]] : numbers)
        {
            if (found.Worth(level.OfPlacements ? RepeatKind.Placement : RepeatKind.Covered, number) is { } covered)
            {
                yield return (level.OfPlacements ? $"{number} placements" : $"{number} covered sweeps", covered);
            }
        }
    }

    private static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..] + ".";

    private static string Number(double worth) => worth.ToString("0.0", CultureInfo.InvariantCulture);
}
