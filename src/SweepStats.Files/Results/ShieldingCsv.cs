using System.Text;
using SweepStats.Bands;
using SweepStats.Checks;
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
        "lot,specimen,frequency_hz,sweeps,placements,reference_db,covered_db,floor_db,dynamic_range_db,se_db,se_low_db,"
            + "se_high_db,u_db,dof,state,flags,required_db,outcome,conformance_probability,confidence";

    /// <summary>
    /// Writes the table. <c>se_db</c> is empty where the shielding is only known from below; then <c>se_low_db</c> is the bound,
    /// and <c>u_db</c> and <c>dof</c> are empty, since they belong to an estimate. <c>required_db</c>, <c>outcome</c> and
    /// <c>conformance_probability</c> are of the frequency by itself and empty where nothing is asked; a probability that is only
    /// bounded has <c>&gt;=</c> or <c>&lt;=</c> before it. <c>confidence</c> is the level of the two-sided interval; a bound is
    /// the lower end of one whose upper end is open. Empty where there is neither.
    /// </summary>
    public static void Write(AnalysisResult result, Stream to)
    {
        ArgumentNullException.ThrowIfNull(result);
        byte[][] frequencies =
            [.. result.Campaign.Grid.Hertz.ToArray().Select(f => Encoding.UTF8.GetBytes(ResultNumber.Exact(f)))];
        byte[] confidence = Encoding.UTF8.GetBytes(ResultNumber.Exact(result.Plan.Confidence.Level));
        Verdict verdict = result.Verdict.AsRelied();
        using var rows = new CsvRows(to, Header);
        foreach (ShieldingCurve curve in result.Curves)
        {
            var specimen = new SpecimenCells(curve, result.Findings);
            SpecimenOutcome? decided = verdict.Specimens.FirstOrDefault(s => s.Name == curve.Name);
            for (int f = 0; f < curve.Readings.Length; f++)
            {
                Row(rows, specimen, frequencies[f], curve.Readings[f]);
                Decision(rows, decided?.Frequencies.ElementAtOrDefault(f));
                rows.Cell(curve.Readings[f] is ShieldingReading.Measured or ShieldingReading.AtLeast ? confidence : []);
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

    private static void Row(CsvRows rows, SpecimenCells specimen, byte[] frequency, ShieldingReading reading)
    {
        ReadingEvidence evidence = reading.Evidence;
        rows.Cell(specimen.Lot).Cell(specimen.Specimen).Cell(frequency).Cell(specimen.Sweeps).Cell(specimen.Placements);
        rows.Level(evidence.ReferenceDb).Level(evidence.CoveredDb).Level(evidence.FloorDb).Level(evidence.DynamicRange?.Value);
        bool estimated = reading is ShieldingReading.Measured;
        rows.Figure(Shielding(reading)).Level(estimated ? evidence.StandardUncertaintyDb : null)
            .DegreesOfFreedom(estimated ? evidence.DegreesOfFreedom : null);
        rows.Cell(StateName(reading.State)).Cell(specimen.Flags.At(evidence.At));
    }

    private static BandFigure Shielding(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured m => new(m.Shielding.Value.Value, m.Shielding.Low.Value, m.Shielding.High.Value),
        ShieldingReading.AtLeast a => new(null, a.Bound.Value, null),
        ShieldingReading.Unrepeated u => new(u.Indication.Value, null, null),
        _ => default,
    };

    private static void Decision(CsvRows rows, FrequencyDecision? decision)
    {
        rows.Level(decision?.Required.Value).Cell(SummaryJson.Outcome(decision?.Outcome) ?? "");
        _ = decision?.Probability switch
        {
            null => rows.Cell(""),
            { IsKnown: true, Least: var known } => rows.Probability(known),
            { Most: 1, Least: var least } => rows.Probability(least, ">="),
            { Most: var most } => rows.Probability(most, "<="),
        };
    }

    /// <summary>What all rows of a specimen share, formed once.</summary>
    private sealed class SpecimenCells(ShieldingCurve curve, IEnumerable<Finding> findings)
    {
        public byte[] Lot { get; } = CsvRows.TextCell(curve.Name.Lot);

        public byte[] Specimen { get; } = CsvRows.TextCell(curve.Name.Specimen);

        public byte[] Sweeps { get; } = Encoding.UTF8.GetBytes(ResultNumber.Count(curve.SweepCount));

        public byte[] Placements { get; } = Encoding.UTF8.GetBytes(ResultNumber.Count(curve.PlacementCount));

        public FlagCells Flags { get; } = new(findings, curve.Name);
    }
}
