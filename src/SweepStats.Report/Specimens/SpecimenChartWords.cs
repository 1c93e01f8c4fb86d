using SweepStats.Bands;
using SweepStats.Floor;
using SweepStats.Report.Answer;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Specimens;

/// <summary>Titles, legends and descriptions of charts.</summary>
internal static class SpecimenChartWords
{
    internal const string ArrowLegend = "at least this much";
    internal const string UnrepeatedLegend = "one sweep: no interval";
    internal const string UnreadableLegend = "nothing can be claimed";
    internal const string OverviewTitle = "Shielding of all specimens";
    internal const string BandsTitle = "Shielding over the whole band";
    internal const string ClaimLegend = "at least, everywhere in the band";

    internal static string RequiredLine(Requirement requirement, FrequencyGrid grid) =>
        $"required: {VerdictWords.Required(requirement, grid)}";

    internal static string AcceptanceLine(DecisionRule rule) => $"with guard band of {Exact(rule.GuardBand.Value, "dB")}";

    internal static string MeanLegend(Confidence confidence) =>
        $"mean over the band with {Level(confidence)} interval; arrow: at least";

    internal static string OverviewTitleOfLot(string lot, int part, int parts) =>
        parts == 1 ? $"Shielding, lot {lot}" : $"Shielding, lot {lot}, part {Plain(part)} of {Plain(parts)}";

    internal static string OverviewSubtitle(AnalysisResult result, bool intervals, bool unrepeated, BoundCauses? bounds)
    {
        if (result.Floor is null)
        {
            return "no floor known: every reading is a lower bound, drawn as an arrow";
        }

        string[] parts =
        [
            .. intervals ? [$"shaded: {Level(result.Plan.Confidence)} intervals"] : Array.Empty<string>(),
            .. unrepeated ? ["dotted: single sweeps, no interval"] : Array.Empty<string>(),
            .. bounds is not null ? [$"arrows: at least this much, {bounds.What} hides the rest"] : Array.Empty<string>(),
        ];
        return string.Join("; ", parts);
    }

    internal static string OverviewDescription(IEnumerable<ShieldingCurve> curves) =>
        $"Shielding over frequency, one line a specimen: {string.Join(", ", curves.Select(c => SpecimenLabel(c.Name)))}. The "
            + "figures are in the tables of the page.";

    internal static string ShieldingTitle(string piece) => $"Shielding of {piece}";

    internal static string ShieldingSubtitle(ShieldingCurve curve, bool floorKnown)
    {
        string sweeps = Count(curve.SweepCount, "covered sweep");
        string placements = curve.PlacementCount is { } n ? $" in {Count(n, "placement")}" : ", placements not noted";
        var causes = BoundCauses.Of(curve.Readings);
        string caps = !floorKnown ? "; no floor known, so every reading is a lower bound"
            : causes.Any ? $"; arrows: {causes.What} hides how much more" : string.Empty;
        return sweeps + placements + caps;
    }

    internal static string ShieldingDescription(ShieldingCurve curve, BandStatement? band)
    {
        string claim = band is null ? string.Empty : VerdictWords.Claim(band) + ". ";
        int bounds = curve.Readings.Count(r => r is ShieldingReading.AtLeast);
        string known = bounds == 0 ? string.Empty
            : $"Only a lower bound is known at {Plain(bounds)} of {Count(curve.Readings.Length, "frequency")}.";
        return $"Shielding of {SpecimenLabel(curve.Name)} over frequency. {claim}{known}".TrimEnd();
    }

    internal static string LevelsTitle(string piece) => $"Levels behind the shielding of {piece}";

    internal static string LevelsSubtitle(ShieldingCurve curve, AnalysisResult result) =>
        $"log means of {Count(result.Campaign.Reference.SweepCount, "reference sweep")}, "
        + $"{Count(curve.SweepCount, "covered sweep")}"
        + (result.Floor is null ? "; no floor known"
            : result.Floor.SweepCount > 0 ? $", {Count(result.Floor.SweepCount, "floor sweep")}" : string.Empty);

    internal static string FloorLegend(NoiseFloor? floor) => floor?.Source == FloorSource.Declared ? "floor (declared)" : "floor";

    internal static string LevelsDescription(ShieldingCurve curve, AnalysisResult result)
    {
        int ambient = curve.Readings.Count(r => r.Evidence.Ambient);
        string marks = ambient == 0 ? string.Empty
            : $" {Count(ambient, "frequency")} with an ambient signal marked from the top.";
        string floor = result.Floor is null ? "The floor is not known."
            : "The usable range is shaded: covered levels in it can be told from the floor.";
        return $"Reference and covered levels of {SpecimenLabel(curve.Name)} over frequency. {floor}{marks}";
    }

    internal static string RangeTitle(bool required) =>
        required ? "Dynamic range against the requirement" : "Dynamic range against the shielding found";

    internal static string RangeSubtitle(AnalysisResult result) =>
        result.Curves.Length > 1 ? "smallest of all specimens at each frequency"
            : "largest shielding that this set-up can bound from both sides";

    internal static string RangeDescription(AnalysisResult result) =>
        $"Usable dynamic range over frequency, {RangeSubtitle(result)}, with what it is needed for.";

    internal static string BandsDescription(IEnumerable<BandStatement> bands) =>
        string.Join(" ",
            bands.Select(b => $"{SpecimenLabel(b.Name)}: {VerdictWords.Claim(b)}; mean {VerdictWords.Figure(b.MeanDb)}."));
}
