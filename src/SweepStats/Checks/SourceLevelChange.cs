using SweepStats.Alignment;
using SweepStats.Linearity;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// Sweeps that were taken at different levels of the source: the shielding, or the leakage, is off by the difference.
/// </summary>
/// <remarks>
/// A sweep that states none was taken at the campaign's. A ratio with phase, as a network analyser shows, does not move with the
/// level of the source.
/// </remarks>
internal static class SourceLevelChange
{
    // What a level is set to is written to a tenth of a dB or so; less changes no claim.
    private const double WorthTellingDb = 0.1;

    /// <summary>A fault for each specimen, and a warning for the plate, taken at another level than the reference.</summary>
    public static IEnumerable<Finding> Of(Evidence seen, string code)
    {
        if (seen.Campaign is { Scale: LevelScale.DecibelRatio, Reference.HasPhases: true }
            || Levels(seen, seen.Campaign.Reference.Sweeps) is not { Length: > 0 } reference)
        {
            yield break;
        }

        foreach (SpecimenBlock specimen in seen.Campaign.Covered)
        {
            double[] covered = Levels(seen, specimen.Block.Sweeps);
            if (covered.Length > 0
                && Math.Max(reference.Max() - covered.Min(), covered.Max() - reference.Min()) >= WorthTellingDb)
            {
                yield return Told(code, specimen.Name, reference, covered);
            }
        }

        if (IsPlateElsewhere(seen))
        {
            yield return Plate(code, reference, PlateLevels(seen));
        }
    }

    /// <summary>
    /// Whether the plate was taken at another level than the reference: what it shows is then no measure of the leakage.
    /// </summary>
    public static bool IsPlateElsewhere(Evidence seen) =>
        !(seen.Campaign is { Scale: LevelScale.DecibelRatio, Reference.HasPhases: true })
        && Levels(seen, seen.Campaign.Reference.Sweeps) is { Length: > 0 } reference && PlateLevels(seen) is { Length: > 0 } plate
        && Math.Abs(reference.Average() - plate.Average()) >= WorthTellingDb;

    private static double[] PlateLevels(Evidence seen) =>
        Levels(seen, seen.Campaign.SetAside.Where(s => s.Role == SweepRole.Plate));

    private static Finding Plate(string code, double[] reference, double[] plate) => new()
    {
        Code = code,
        Severity = Severity.Warning,
        Role = SweepRole.Plate,
        Size = new Decibels(Math.Abs(reference.Average() - plate.Average())),
        Bias = Bias.Unknown,
        Message = $"The source stood at {All(reference)} for the reference and at {All(plate)} for the plate: "
            + "what the plate shows is no measure of the leakage, and the shielding may be off for it.",
        Basis = $"Means of the source levels (source_dbm); told from {Amount.Db(WorthTellingDb)} on. Levels are not corrected "
            + "for them.",
        NextStep = "Take the plate with the level of the source that the reference had, or correct source_dbm where it is "
            + "written wrongly.",
    };

    private static Finding Told(string code, SpecimenName specimen, double[] references, double[] covereds)
    {
        (double reference, double covered) = (references.Average(), covereds.Average());
        double over = reference - covered;
        return new Finding
        {
            Code = code,
            Severity = Severity.Fault,
            Role = SweepRole.Covered,
            Specimen = specimen,
            Size = new Decibels(Math.Abs(over)),
            Bias = new Bias(Math.Max(0, references.Max() - covereds.Min()), Math.Max(0, covereds.Max() - references.Min())),
            Message = $"The source stood at {All(references)} for the reference and at {All(covereds)} for the covered sweeps: "
                + (Math.Abs(over) >= WorthTellingDb
                    ? $"the shielding is shown {Amount.Db(Math.Abs(over))} too {(over > 0 ? "large" : "small")}."
                    : "levels that differ are no repeats of each other."),
            Basis = "Source levels (source_dbm, of the sweep or else of the campaign), the farthest of reference and covered; "
                + $"told from {Amount.Db(WorthTellingDb)} on. Levels are not corrected for them.",
            NextStep = "Take reference and covered sweeps with one level of the source, or correct source_dbm where it is "
                + "written wrongly.",
        };
    }

    private static double[] Levels(Evidence seen, IEnumerable<Sweep> sweeps) =>
        [.. sweeps.Select(s => ReferenceSource.Of(s, seen.SourceDbm)).OfType<double>()];

    private static string All(double[] levels) => string.Join(" and ", levels.Distinct().Order().Select(Amount.Dbm));
}
