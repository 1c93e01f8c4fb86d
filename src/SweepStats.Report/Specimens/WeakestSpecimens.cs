using SweepStats.Bands;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Verdicts;

namespace SweepStats.Report.Specimens;

/// <summary>The specimens whose own charts are looked at first.</summary>
internal static class WeakestSpecimens
{
    /// <summary>So many: what the verdict rests on, and few enough to be looked at one by one.</summary>
    public const int Most = 5;

    /// <summary>
    /// First those that fail, then those that are undecided or cannot be told, then the others; among them those that least can
    /// be claimed of where they have a value. What the floor or a transmitter hides says nothing of the cloth: a specimen without
    /// any value comes last.
    /// </summary>
    public static IReadOnlyList<SpecimenName> Of(AnalysisResult result)
    {
        Dictionary<SpecimenName, RequirementOutcome> outcomes = result.Verdict.Specimens.IsDefaultOrEmpty ? []
            : result.Verdict.Specimens.ToDictionary(s => s.Name, s => s.Outcome);
        return
        [
            .. result.Curves.OrderBy(c => Rank(outcomes, c.Name)).ThenBy(c => Room(c, result.Plan.Requirement)).Take(Most)
                .Select(c => c.Name),
        ];
    }

    private static int Rank(Dictionary<SpecimenName, RequirementOutcome> outcomes, SpecimenName name) =>
        !outcomes.TryGetValue(name, out RequirementOutcome outcome) ? 0 : outcome switch
        {
            RequirementOutcome.Fails => 0,
            RequirementOutcome.Undecided => 1,
            RequirementOutcome.CannotTell => 2,
            _ => 3,
        };

    // How far the lowest limit lies over what is asked for there, or over nothing, in dB; endless where there is no value.
    private static double Room(ShieldingCurve curve, Requirement? requirement)
    {
        double least = double.PositiveInfinity;
        foreach (ShieldingReading reading in curve.Readings)
        {
            double low = Low(reading);
            double asked = requirement is null ? 0 : requirement.At(reading.Evidence.At)?.Value ?? double.NaN;
            // Not a number where there is no value or nothing is asked.
            least = low - asked < least ? low - asked : least;
        }

        return least;
    }

    // The limit that the table over the whole band shows.
    private static double Low(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured => reading.Evidence.OneSidedLow?.Value ?? double.NaN,
        ShieldingReading.Unrepeated u => u.Indication.Value,
        _ => double.NaN,
    };
}
