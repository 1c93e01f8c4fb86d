using System.Globalization;
using SweepStats.Bands;
using SweepStats.Fields;
using SweepStats.Report.Answer;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Fields;

/// <summary>What is left of a stated field behind the specimens.</summary>
internal static class FieldWords
{
    internal const string FieldHeading = "Field behind the specimens";

    internal static readonly string[] FieldColumns =
        ["Specimen", "Shielding it rests on", "Field left at most", "Of what is tolerable"];

    /// <summary>The estimate and its limits, which go wherever a field is told.</summary>
    internal const string FieldCaution =
        "This is an estimate for the measured specimens and geometry, of a steady field at the measured frequencies and not of "
        + "a pulse; between and beyond them nothing "
        + "was measured. It is no proof that a person, a device or a building is protected. Local codes and licensed practice "
        + "prevail.";

    /// <summary>
    /// What is left at most of the stated field, on the console: the most behind any specimen, those of which nothing is claimed,
    /// and the caution.
    /// </summary>
    internal static IEnumerable<string> FieldInBrief(AnalysisResult result)
    {
        if (result.Plan.Field is not { } threat)
        {
            yield break;
        }

        ResidualField[] claimed = [.. result.Fields.Where(f => f.VoltsPerMetre is not null)];
        string most = claimed.MaxBy(f => f.VoltsPerMetre) is { } worst
            ? $"at most {FieldLeft(worst.VoltsPerMetre!.Value)} of {FieldStrength(threat.VoltsPerMetre)} "
                + $"{VerdictWords.AtAll(result.Bands[0])} "
                + $"({Level(result.Plan.Confidence)}; most behind {SpecimenLabel(worst.Name)}){Tolerated(worst, threat)}."
            : $"nothing is claimed of what is left of {FieldStrength(threat.VoltsPerMetre)}.";
        yield return $"Field: {most}{Unclaimed(result)}";
        yield return $"  {FieldCaution}";
    }

    /// <summary>What is left behind a specimen, behind its claim; empty where no field is stated.</summary>
    internal static string FieldBehind(AnalysisResult result, BandStatement band) =>
        result.Plan.Field is { } threat && result.Fields.FirstOrDefault(f => f.Name == band.Name) is { } field
            ? field.VoltsPerMetre is { } left ? $". Field: at most {FieldLeft(left)} of {FieldStrength(threat.VoltsPerMetre)}"
            : ". Field: no claim"
            : string.Empty;

    internal static string FieldCaption(AnalysisResult result, FieldThreat threat) =>
        $"What is left at most of {FieldStrength(threat.VoltsPerMetre)} behind each specimen, "
        + $"{VerdictWords.AtAll(result.Bands[0])} at once, {Level(result.Plan.Confidence)} one-sided: "
        + "the field in front times 10^(−SE/20), with the lower limit of the shielding over the band, less what findings may "
        + "take off it.";

    internal static IReadOnlyList<string> FieldRow(ResidualField field, FieldThreat threat) =>
    [
        SpecimenLabel(field.Name),
        field.Shielding is { } shielding ? "SE " + Bound(shielding) : Nothing,
        field.VoltsPerMetre is { } left ? FieldLeft(left) : $"no claim: {FieldSilenceBecause(field.Silence)}",
        field.IsTolerable switch { true => $"within {FieldStrength(threat.TolerableVoltsPerMetre!.Value)}", false => "not shown",
            _ => Nothing },
    ];

    /// <summary>Why nothing is claimed, in a few words.</summary>
    internal static string FieldSilenceBecause(FieldSilence? silence) => silence switch
    {
        FieldSilence.Untrustworthy => "a fault stands against the measurement",
        FieldSilence.NoClaim => "no shielding is claimed at every frequency",
        FieldSilence.FindingOfUnknownSize => "a finding may lower the shielding by an unknown amount",
        _ => "it is not shown that anything is kept out",
    };

    // A null field is as good as tolerable; what was asked about has an answer either way.
    private static string Tolerated(ResidualField worst, FieldThreat threat) =>
        threat.TolerableVoltsPerMetre is not { } tolerable ? string.Empty
        : worst.IsTolerable == true ? $", within the {FieldStrength(tolerable)} that are tolerable"
        : $"; that no more than the tolerable {FieldStrength(tolerable)} are left is not shown";

    private static string Unclaimed(AnalysisResult result)
    {
        ResidualField[] silent = [.. result.Fields.Where(f => f.VoltsPerMetre is null)];
        string reasons = string.Join("; ", silent.Select(f => FieldSilenceBecause(f.Silence)).Distinct());
        return silent.Length == 0 ? string.Empty
            : silent.Length == result.Fields.Length ? $" Why: {reasons}."
            : $" No claim for {Listed([.. silent.Select(f => SpecimenLabel(f.Name))], MostSpecimensNamed)}: {reasons}.";
    }

    /// <summary>A field strength as stated: "50 kV/m".</summary>
    internal static string FieldStrength(double voltsPerMetre) =>
        In(voltsPerMetre, v => v.ToString("G6", CultureInfo.InvariantCulture));

    /// <summary>An upper limit, rounded up to three digits: "5.24 kV/m".</summary>
    internal static string FieldLeft(double voltsPerMetre) => In(voltsPerMetre, UpToThreeDigits);

    internal static string In(double voltsPerMetre, Func<double, string> text)
    {
        var unit = FieldUnit.Of(voltsPerMetre);
        return $"{text(voltsPerMetre / unit.VoltsPerMetre)} {unit.Symbol}";
    }

    internal static string UpToThreeDigits(double value) => ToThreeDigits(value, v => Math.Ceiling(v * (1 - 1e-12)));

    internal static string DownToThreeDigits(double value) => ToThreeDigits(value, v => Math.Floor(v * (1 + 1e-12)));

    internal static string ToThreeDigits(double value, Func<double, double> round)
    {
        if (value is <= 0 or >= 1e15)
        {
            return value.ToString("G3", CultureInfo.InvariantCulture);
        }

        int decimals = Math.Clamp(2 - (int)Math.Floor(Math.Log10(value)), -12, 12);
        double scale = Math.Pow(10, decimals);
        return (round(value * scale) / scale).ToString($"F{Math.Max(0, decimals)}", CultureInfo.InvariantCulture);
    }
}
