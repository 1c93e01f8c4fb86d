using OxyPlot;
using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Report.Drawing;
using SweepStats.Sweeps;

namespace SweepStats.Report.Specimens;

/// <summary>The shielding asked for as a heavy dashed line.</summary>
internal static class RequirementLine
{
    /// <summary>What is asked in dB at each frequency of the grid, and so much more; NaN where nothing is asked.</summary>
    public static IReadOnlyList<DataPoint> Points(Requirement requirement, FrequencyGrid grid, double extra = 0)
    {
        List<DataPoint> points = [];
        foreach (double hertz in grid.Hertz)
        {
            points.Add(new DataPoint(hertz, requirement.At(new Hertz(hertz))?.Value + extra ?? double.NaN));
        }

        return points;
    }

    /// <summary>What is asked where it is the same at every frequency of the grid; null where it is not.</summary>
    public static double? Constant(Requirement requirement, FrequencyGrid grid)
    {
        double[] asked = [.. Points(requirement, grid).Select(p => p.Y).Distinct()];
        return asked is [var only] && double.IsFinite(only) ? only : null;
    }

    /// <summary>The line; null where nothing is asked.</summary>
    public static Trace? Of(Requirement? requirement, FrequencyGrid grid) =>
        requirement is null ? null : Of(Points(requirement, grid), SpecimenChartWords.RequiredLine(requirement, grid));

    /// <summary>What a lower limit has to reach, as a thin dotted line; null where no guard band is stated.</summary>
    public static Trace? Guarded(DecisionRule? rule, FrequencyGrid grid) =>
        rule is { GuardBand.Value: > 0 } ? Guarded(Points(rule.Requirement, grid, rule.GuardBand.Value), rule) : null;

    /// <summary>The thin dotted line through any points, named by the rule.</summary>
    public static Trace Guarded(IReadOnlyList<DataPoint> points, DecisionRule rule) =>
        new()
        {
            Colour = Ink.Red,
            Points = points,
            Dash = [2, 3],
            Thickness = 1.2,
            Title = SpecimenChartWords.AcceptanceLine(rule),
        };

    /// <summary>The heavy dashed line through any points.</summary>
    public static Trace Of(IReadOnlyList<DataPoint> points, string title) =>
        new() { Colour = Ink.Red, Points = points, Dash = [12, 5], Thickness = 2, Title = title };
}
