using SweepStats.Fields;
using SweepStats.Report.Text;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Lots;

/// <summary>What further layers of a cloth add.</summary>
internal static class LayerWords
{
    internal const string LayersHeading = "Layers";

    internal const string LayersDoNotAdd =
        "Decibels of layers do not simply add: what a layer adds depends on its distance from the others and on how they touch.";

    internal const string LayersOfThese = "Limits of these pieces alone: other pieces of the cloth may differ by more.";

    /// <summary>A line for each step, then what holds for all of them; none where no layers are stated.</summary>
    internal static IEnumerable<string> LayersText(AnalysisResult result) =>
        result.Layers.IsEmpty ? [] : [.. result.Layers.Select(step => LayerLine(result, step)), LayersOfThese, LayersDoNotAdd];

    private static string LayerLine(AnalysisResult result, LayerStep step)
    {
        int further = step.To - step.From;
        string what = $"Lot {PlainText.Short(step.Lot, LongestSpecimen)}, {Plain(step.From)} to {Plain(step.To)} layers";
        if (step.AddedDb.Value is not { } added || step.BeforeDb is not { } before)
        {
            return $"{what}: no claim, since at no frequency both are bounded from both sides.";
        }

        string limits = step.AddedDb is { Low: { } low, High: { } high }
            ? $" ({Level(result.Plan.Confidence)}: {Interval(low, high)})" : " (no limits: nothing repeats)";
        string where = step.LeftOut == 0 ? string.Empty
            : $", at the {Plain(step.PointCount)} of {Plain(step.PointCount + step.LeftOut)} frequencies bounded from both sides";
        return $"{what}: {(further == 1 ? "the further layer adds" : $"{Plain(further)} further layers add")} "
            + $"{Ratio(added)}{limits} to {Ratio(before)}, mean over {(step.LeftOut == 0 ? "the band" : "those frequencies")}"
            + $"{where}.";
    }
}
