using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Verdicts;

namespace SweepStats.Files.Results;

/// <summary>shielding.csv: one row for each specimen and frequency.</summary>
public static class ShieldingCsv
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "shielding.csv";

    /// <summary>First line.</summary>
    public const string Header =
        "lot,specimen,frequency_hz,sweeps,placements,reference_db,covered_db,floor_db,dynamic_range_db,se_db,se_low_db,se_high_db,u_db,dof,state,flags,required_db,outcome,conformance_probability,confidence";

    /// <summary>Writes the table. <c>se_db</c> is empty where the shielding is only known from below; then <c>se_low_db</c> is the bound, and <c>u_db</c> and <c>dof</c> are empty, since they belong to an estimate.
    /// <c>required_db</c>, <c>outcome</c> and <c>conformance_probability</c> are of the frequency by itself and empty where nothing is asked; a probability that is only bounded has <c>&gt;=</c> or <c>&lt;=</c> before it.
    /// <c>confidence</c> is the level of the two-sided interval; a bound is the lower end of one whose upper end is open. Empty where there is neither.</summary>
    public static void Write(AnalysisResult result, Stream to)
    {
        ArgumentNullException.ThrowIfNull(result);
        using var rows = new CsvRows(to, Header);
        foreach (ShieldingCurve curve in result.Curves)
        {
            Finding[] findings = [.. result.Findings.Where(f => (f.Specimen is null || f.Specimen == curve.Name) && !f.Where.IsDefaultOrEmpty)];
            SpecimenOutcome? decided = result.Verdict.Specimens.FirstOrDefault(s => s.Name == curve.Name);
            for (int f = 0; f < curve.Readings.Length; f++)
            {
                Row(rows, curve, curve.Readings[f], findings);
                Decision(rows, decided?.Frequencies.ElementAtOrDefault(f));
                rows.Cell(curve.Readings[f] is ShieldingReading.Measured or ShieldingReading.AtLeast ? ResultNumber.Exact(result.Plan.Confidence.Level) : "");
                rows.End();
            }
        }
    }

    /// <summary>How a state is written.</summary>
    internal static string StateName(ShieldingState state) => state switch
    {
        ShieldingState.Clear => "clear",
        ShieldingState.NearFloor => "near-floor",
        ShieldingState.Capped => "capped",
        ShieldingState.Overloaded => "overloaded",
        _ => "no-floor",
    };

    private static void Row(CsvRows rows, ShieldingCurve curve, ShieldingReading reading, Finding[] findings)
    {
        ReadingEvidence evidence = reading.Evidence;
        rows.Text(curve.Name.Lot).Text(curve.Name.Specimen).Cell(ResultNumber.Exact(evidence.At.Value));
        rows.Cell(ResultNumber.Count(curve.SweepCount)).Cell(ResultNumber.Count(curve.PlacementCount));
        rows.Cell(ResultNumber.Level(evidence.ReferenceDb)).Cell(ResultNumber.Level(evidence.CoveredDb)).Cell(ResultNumber.Level(evidence.FloorDb));
        rows.Cell(ResultNumber.Level(evidence.DynamicRange?.Value));
        (double? se, double? low, double? high, bool estimated) = reading switch
        {
            ShieldingReading.Measured m => (m.Shielding.Value.Value, m.Shielding.Low.Value, m.Shielding.High.Value, true),
            ShieldingReading.AtLeast a => ((double?)null, (double?)a.Bound.Value, (double?)null, false),
            ShieldingReading.Unrepeated u => (u.Indication.Value, null, null, false),
            _ => (null, null, null, false),
        };
        rows.Cell(ResultNumber.Level(se)).Cell(ResultNumber.Level(low)).Cell(ResultNumber.Level(high));
        rows.Cell(estimated ? ResultNumber.Level(evidence.StandardUncertaintyDb) : "").Cell(estimated ? ResultNumber.DegreesOfFreedom(evidence.DegreesOfFreedom) : "");
        rows.Cell(StateName(reading.State)).Cell(Flags(evidence.At, findings));
    }

    private static void Decision(CsvRows rows, FrequencyDecision? decision)
    {
        rows.Cell(ResultNumber.Level(decision?.Required.Value)).Cell(SummaryJson.Outcome(decision?.Outcome) ?? "");
        rows.Cell(decision?.Probability switch
        {
            null => "",
            { IsKnown: true, Least: var known } => ResultNumber.Probability(known),
            { Most: 1, Least: var least } => ">=" + ResultNumber.Probability(least),
            { Most: var most } => "<=" + ResultNumber.Probability(most),
        });
    }

    private static string Flags(Hertz at, Finding[] findings)
    {
        IEnumerable<string> codes = findings.Where(f => Holds(f, at)).Select(f => f.Code).Distinct().Order(StringComparer.Ordinal);
        return string.Join(' ', codes);
    }

    // The stretches rise, so the one that may hold a frequency is found by halving.
    private static bool Holds(Finding finding, Hertz at)
    {
        (int low, int high) = (0, finding.Where.Length - 1);
        while (low <= high)
        {
            int middle = (low + high) / 2;
            if (finding.Where[middle].Contains(at))
            {
                return true;
            }

            (low, high) = at < finding.Where[middle].Start ? (low, middle - 1) : (middle + 1, high);
        }

        return false;
    }
}
