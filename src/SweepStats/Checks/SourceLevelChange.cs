using System.Globalization;
using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Reference and covered sweeps that state different levels of the source: the shielding is off by the difference.</summary>
/// <remarks>A ratio, as a network analyser shows, does not move with the level of the source.</remarks>
internal static class SourceLevelChange
{
    // What a level is set to is written to a tenth of a dB or so; less changes no claim.
    private const double WorthTellingDb = 0.1;

    public static IEnumerable<Finding> Of(Evidence seen, string code)
    {
        if (seen.Campaign.Scale == LevelScale.DecibelRatio || Mean(seen.Campaign.Reference.Sweeps) is not { } reference)
        {
            yield break;
        }

        foreach (SpecimenBlock specimen in seen.Campaign.Covered)
        {
            if (Mean(specimen.Block.Sweeps) is { } covered && Math.Abs(reference - covered) >= WorthTellingDb)
            {
                yield return Told(code, specimen.Name, reference, covered);
            }
        }
    }

    private static Finding Told(string code, SpecimenName specimen, double reference, double covered)
    {
        double over = reference - covered;
        return new Finding
        {
            Code = code,
            Severity = Severity.Fault,
            Role = SweepRole.Covered,
            Specimen = specimen,
            Size = new Decibels(Math.Abs(over)),
            Bias = new Bias(Math.Max(0, over), Math.Max(0, -over)),
            Message = $"The source stood at {Dbm(reference)} for the reference and at {Dbm(covered)} for the covered sweeps: "
                + $"the shielding is shown {Amount.Db(Math.Abs(over))} too {(over > 0 ? "large" : "small")}.",
            Basis = $"Means of the source levels that sweeps state (source_dbm); told from {Amount.Db(WorthTellingDb)} on. Levels are not corrected for them.",
            NextStep = "Take reference and covered sweeps with one level of the source, or correct source_dbm where it is written wrongly.",
        };
    }

    private static double? Mean(IEnumerable<Sweep> sweeps)
    {
        double[] stated = [.. sweeps.Select(s => s.SourceDbm).OfType<double>()];
        return stated.Length == 0 ? null : stated.Average();
    }

    private static string Dbm(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.##} dBm");
}
