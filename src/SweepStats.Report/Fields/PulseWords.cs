using System.Globalization;
using SweepStats.Fields;
using SweepStats.Report.Drawing;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Fields;

/// <summary>What is left of a pulse behind the specimens.</summary>
public static class PulseWords
{
    internal const int MostGapsNamed = 3;

    private const double Nano = 1e-9, Micro = 1e-6, Milli = 1e-3;

    internal const string PulseHeading = "What is left of a pulse";

    internal const string PulseColumnsCaption = "What is left of the pulse, by what is taken for the shielding outside the band";

    /// <summary>The estimate and its limits, which go wherever a pulse is told.</summary>
    internal const string PulseCaution =
        "This is an estimate for the measured specimens and geometry, for a plane wave and a specimen that does not change "
        + "under the field. "
        + "It is no proof that a person, a device or a building is protected. Local codes and licensed practice prevail.";

    internal const string MinimumPhase =
        "The estimate supposes that the specimen delays no part of the pulse more than its shielding asks for (minimum phase). "
            + "\"Any phase\" holds without that.";

    /// <summary>Whether the campaign states a field, a pulse, or what is taken outside the band.</summary>
    public static bool AsksForField(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Plan.Field is not null || result.Plan.Pulse != new PulseQuestion();
    }

    /// <summary>Specimens by what may be left behind them at most, most first; those without a claim before all.</summary>
    internal static IEnumerable<ResidualPulse> PulsesByPeak(AnalysisResult result) =>
        result.Pulses.OrderByDescending(
            p => p.Under(result.Plan.Pulse.Outside) is { } left ? left.Highest ?? double.PositiveInfinity
            : double.PositiveInfinity);

    /// <summary>The pulse in front of the specimens, and how much of it the measurement holds.</summary>
    internal static string PulseInFront(AnalysisResult result)
    {
        DoubleExponential pulse = result.Plan.Pulse.Pulse;
        FrequencyGrid grid = result.Campaign.Grid;
        string source = result.Plan.Pulse.IsOwn ? "stated in campaign.toml" : "early-time pulse of IEC 61000-2-9";
        return $"Pulse: {FieldEstimate(pulse.PeakVoltsPerMetre)}, {Energy(pulse.JoulesPerSquareMetre)} ({source}). "
            + $"{ShareText(pulse.EnergyShareIn(grid))} of its energy lies in the measured {Band(grid.Band)}{LeftOut(grid)}.";
    }

    private static string LeftOut(FrequencyGrid grid) => FrequencyGaps.Of(grid) is { IsEmpty: false } gaps
        ? $" without {Listed([.. gaps.Select(Band)], MostGapsNamed)}, where nothing was measured and no shielding is taken"
        : string.Empty;

    /// <summary>What is taken outside the band.</summary>
    internal static string OutsideTaken(OutsideBand outside) => outside switch
    {
        OutsideBand.Hold => "Outside the band the shielding at its ends is taken to hold on (hold).",
        OutsideBand.Slope =>
            "Outside the band the slope of the last octave is taken to go on for a decade, never below 0 dB (slope).",
        _ => "Outside the band no shielding is taken (none).",
    };

    /// <summary>The peak that is left under an assumption: an interval, a bound, or nothing.</summary>
    internal static string PeakLeft(PulseLeft? left) => left switch
    {
        null => NoClaim,
        { MeasuredPhaseLeavesMore: true } => left.PeakAtMost is { } bound ? $"at most {FieldWords.FieldLeft(bound)}" : NoClaim,
        { PeakLimits: { } limits } => FieldInterval(limits),
        { Estimate: { } estimate } => $"about {FieldEstimate(estimate.PeakVoltsPerMetre)}",
        { PeakAtMost: { } most } => $"at most {FieldWords.FieldLeft(most)}",
        _ => NoClaim,
    };

    internal static readonly string[] PulseColumns =
        ["Specimen", "Outside", "Peak", "Limits", "Any phase", "Rise", "Width", "Energy", "Measured phase"];

    /// <summary>One row for each assumption on each specimen, most left first.</summary>
    internal static IEnumerable<IReadOnlyList<string>> PulseRows(AnalysisResult result) =>
        PulsesByPeak(result).SelectMany(p => Enum.GetValues<OutsideBand>().Select(outside => PulseRow(result, p, outside)));

    /// <summary>What the rows rest on, and why some of them claim nothing.</summary>
    internal static IEnumerable<string> PulseRemarks(AnalysisResult result)
    {
        if (result.Pulses.Any(p => p.Silence is null))
        {
            yield return MinimumPhase;
        }

        foreach (ResidualPulse[] alike in Alike(result, p => p.BoundCount))
        {
            yield return $"{NamesOf(alike)}: at {Count(alike[0].BoundCount, "frequency")} the shielding is known from below "
                + "alone, so only \"at most\" can be said.";
        }

        foreach (ResidualPulse[] alike in Alike(result, p => p.UnknownCount))
        {
            yield return $"{NamesOf(alike)}: at {Count(alike[0].UnknownCount, "frequency")} the shielding is not known; none is "
                + "taken there.";
        }

        if (result.Pulses.Where(p => p.Assumed.Any(a => a.MeasuredPhaseLeavesMore)).ToArray() is { Length: > 0 } more)
        {
            yield return $"{NamesOf(more)}: with the measured phase more is left than with the minimum phase, so only \"at "
                + "most\" is said.";
        }

        if (result.Pulses.Any(p => p.EndsEarly))
        {
            yield return "The lowest measured frequency is so low that the record of the pulse ends before all has died away: "
                + "peaks and their limits may err by more than they say.";
        }

        foreach (FieldSilence why in result.Pulses.SelectMany(p => p.Assumed.Select(a => a.Silence).Append(p.Silence))
            .OfType<FieldSilence>().Distinct().Order())
        {
            yield return $"No claim: {PulseSilenceBecause(why)}.";
        }
    }

    private static IEnumerable<ResidualPulse[]> Alike(AnalysisResult result, Func<ResidualPulse, int> count) =>
        result.Pulses.Where(p => count(p) > 0).GroupBy(count).Select(alike => alike.ToArray());

    private static string NamesOf(IEnumerable<ResidualPulse> pulses) =>
        Listed([.. pulses.Select(p => SpecimenLabel(p.Name))], MostSpecimensNamed);

    internal static string PulseTitle(AnalysisResult result) =>
        $"Pulse behind the specimens, shielding outside the band: {OutsideWord(result.Plan.Pulse.Outside)}";

    internal static string PulseSubtitle(AnalysisResult result, bool banded) =>
        banded ? $"Minimum phase; shaded: the interval of the peak ({Level(result.Plan.Confidence)}), carried along the curve"
            : "Minimum phase, without an interval";

    internal static string PulseInFront(double divisor) =>
        divisor > 1 ? $"pulse in front, divided by {Plain(divisor)}" : "pulse in front";

    internal static string PulseLegend(ResidualPulse pulse) =>
        Frame.Name(pulse.Name.ToString())
        + (pulse.BoundCount + pulse.UnknownCount > 0 ? " (bounds taken as values)" : string.Empty);

    internal static string PulseDescription(AnalysisResult result, IReadOnlyList<ResidualPulse> shown) =>
        $"Field over time behind {Count(shown.Count, "specimen")}. "
            + string.Join(" ",
                shown.Select(p => $"{SpecimenLabel(p.Name)}: peak {PeakLeft(p.Under(result.Plan.Pulse.Outside))}."));

    internal const string NoClaim = "no claim";

    private static IReadOnlyList<string> PulseRow(AnalysisResult result, ResidualPulse pulse, OutsideBand outside)
    {
        PulseLeft? left = pulse.Under(outside);
        PulseFigures? estimate = left?.Estimate;
        return
        [
            SpecimenLabel(pulse.Name), OutsideWord(outside) + (outside == result.Plan.Pulse.Outside ? " (asked)" : string.Empty),
            estimate is null ? Nothing : FieldEstimate(estimate.PeakVoltsPerMetre),
            left?.PeakLimits is { } limits ? FieldInterval(limits) : Nothing,
            left?.PeakAtMost is { } most ? $"at most {FieldWords.FieldLeft(most)}" : NoClaim,
            estimate is null ? Nothing : Time(estimate.RiseSeconds),
            estimate is null ? Nothing : Time(estimate.WidthSeconds),
            estimate is not null ? Energy(estimate.JoulesPerSquareMetre) : left?.EnergyAtMost is { } energy
                ? $"at most {Energy(energy, up: true)}" : Nothing,
            left?.PeakWithMeasuredPhase is { } phased ? FieldEstimate(phased) : Nothing,
        ];
    }

    internal static string PulseSilenceBecause(FieldSilence silence) => silence switch
    {
        FieldSilence.NoClaim => "repeats are missing, or the slope at an end of the band is not known",
        FieldSilence.NothingKeptOut => "for any phase it is not shown that the peak is lowered",
        _ => FieldWords.FieldSilenceBecause(silence),
    };

    internal static string OutsideWord(OutsideBand outside) => outside.ToString().ToLowerInvariant();

    /// <summary>An interval of field strengths, rounded outwards: "4.81 to 5.32 kV/m".</summary>
    private static string FieldInterval(Interval limits)
    {
        FieldUnit low = FieldUnit.Of(limits.Low), high = FieldUnit.Of(limits.High);
        string unit = low == high ? string.Empty : $" {low.Symbol}";
        return $"{FieldWords.DownToThreeDigits(limits.Low / low.VoltsPerMetre)}{unit} to "
            + $"{FieldWords.UpToThreeDigits(limits.High / high.VoltsPerMetre)} {high.Symbol}";
    }

    /// <summary>An estimate to three digits.</summary>
    private static string FieldEstimate(double voltsPerMetre) =>
        FieldWords.In(voltsPerMetre, v => FieldWords.ToThreeDigits(v, Math.Round));

    private static string Time(double seconds) => seconds < 0.9995 * Micro
        ? $"{FieldWords.ToThreeDigits(seconds / Nano, Math.Round)} ns"
        : $"{FieldWords.ToThreeDigits(seconds / Micro, Math.Round)} µs";

    private static string Energy(double joules, bool up = false)
    {
        (double size, string unit) = joules >= 0.1 ? (1, "J/m²") : joules >= 0.1 * Milli ? (Milli, "mJ/m²")
            : joules >= 0.1 * Micro ? (Micro, "µJ/m²") : (Nano, "nJ/m²");
        return $"{(up ? FieldWords.UpToThreeDigits(joules / size) : FieldWords.ToThreeDigits(joules / size, Math.Round))} {unit}";
    }

    private static string ShareText(double share) =>
        share < 0.0005 ? "Less than 0.1 %" : (share * 100).ToString("0.#", CultureInfo.InvariantCulture) + " %";
}
