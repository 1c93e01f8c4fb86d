using SweepStats.Planning;
using SweepStats.Report.Answer;
using SweepStats.Report.Setup;
using SweepStats.Report.Specimens;
using SweepStats.Report.Text;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedLevel;

namespace SweepStats.Report.Plans;

/// <summary>A plan on the console.</summary>
public static class PlanWords
{
    // Doubling the one must gain this much more than doubling the other to be called what pays.
    private const double PlainlyMore = 1.1;

    /// <summary>What a plan rests on, how wide the interval will be, what it takes, and what a claim needs.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="pilot">The pilot campaign; null where all was stated by hand.</param>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> Plan(SweepPlan plan, AnalysisResult? pilot)
    {
        ArgumentNullException.ThrowIfNull(plan);
        bool overloaded = pilot is not null && BoundCauses.Of(pilot.Curves).Overload;
        return
        [
            .. pilot is null ? Array.Empty<string>() : OfPilot(pilot, overloaded),
            .. Rests(plan.Basis), .. Widths(plan), .. Range(plan), .. Claim(plan, overloaded),
            .. plan.UsableRangeDb is null && plan.Claim is null ? Array.Empty<string>() : [PlanClaimWords.FloorKnown(plan.Basis)],
            // The answer before what it was picked from.
            string.Empty,
            $"Half-width of the {Level(plan.Question.Confidence)} interval at one frequency, clear of the floor; half of "
                + $"all campaigns do better. {ReferenceTaken(plan.Question)}",
            .. Table(plan),
        ];
    }

    private static IEnumerable<string> OfPilot(AnalysisResult pilot, bool overloaded)
    {
        yield return $"Plan from the pilot: {PlainText.Of(pilot.Title)}";
        yield return $"The pilot: {VerdictWords.Headline(pilot)}";
        if (overloaded)
        {
            yield return "The pilot's receiver was overloaded: put attenuation before it first, and take the range that is then "
                + "left into account (--range).";
        }
    }

    private static string[] Range(SweepPlan plan) => plan.UsableRangeDb is not { } usable ? []
        : [$"Usable dynamic range with {Numbers(plan.Chosen)}: {LowTenths(usable)} dB."];

    private static IEnumerable<string> Claim(SweepPlan plan, bool overloaded) => plan.Question.ClaimDb is null ? []
        :
        [
            string.Empty, .. PlanClaimWords.Source(plan),
            .. plan.Claim is { } claim ? PlanClaimWords.Claimed(plan, claim, overloaded)
                : ["Nothing can be said of the claim: state --range and --looks, and let reference and specimen repeat."],
        ];

    private static IEnumerable<string> Rests(PlanBasis basis)
    {
        string placed = basis.PlacementDeviationDb is { } p ? $"between placements {Small(p)}, " : string.Empty;
        yield return $"Standard deviations: {placed}between sweeps of one placement {Small(basis.SweepDeviationDb)}, between "
            + $"reference sweeps {Small(basis.ReferenceDeviationDb)}.";
        if (basis.PlacementDeviationDb is null)
        {
            yield return basis.PlacementsHidden
                ? "How far placements differ cannot be told, since the covered level stands nowhere 15 dB over the floor: the "
                    + "plan holds for a specimen that stays where it is. State --placement-spread."
                : "How far placements differ is not known: the plan holds for a specimen that stays where it is. Name "
                    + "placements in a pilot, or state --placement-spread.";
        }

        if (basis.RangeDb is { } range)
        {
            yield return $"Reference over floor, where it is least: {Ratio(range)}; "
                + $"{string.Join(" or ", basis.Noise.Select(n => SettingWords.Looks(n.Looks * n.LogAverages)))} looks a reading.";
        }
    }

    private static string ReferenceTaken(PlanQuestion question) =>
        question.ReferenceFixed ? $"{Count(question.Numbers.ReferenceSweeps, "reference sweep")}."
            : "As many reference sweeps as covered ones.";

    private static IEnumerable<string> Table(SweepPlan plan)
    {
        bool byPlacement = plan.Basis.PlacementDeviationDb is not null;
        ImmutableArray<ExpectedWidth> first = plan.Table[0];
        yield return byPlacement
            ? "  placements" + string.Concat(first.Select(w => Count(w.Numbers.SweepsEach, "sweep").PadLeft(11)))
            : "  sweeps     half-width";
        foreach (ImmutableArray<ExpectedWidth> row in plan.Table)
        {
            int rows = byPlacement ? row[0].Numbers.Placements : row[0].Numbers.SweepsEach;
            yield return "  " + Plain(rows).PadLeft(byPlacement ? 10 : 6)
                + string.Concat(row.Select(w => Width(w.HalfWidthDb).PadLeft(byPlacement ? 11 : 15)));
        }
    }

    private static IEnumerable<string> Widths(SweepPlan plan)
    {
        if (plan.Question.HalfWidthDb is { } wanted)
        {
            yield return Wanted(plan, wanted);
        }

        yield return double.IsFinite(plan.HalfWidthDb)
            ? $"{Capital(Numbers(plan.Chosen))}: ±{Width(plan.HalfWidthDb)} is to be expected; 9 of 10 campaigns stay within "
                + $"±{Width(plan.HalfWidthInNineOfTenDb)}."
            : $"{Capital(Numbers(plan.Chosen))}: no interval, since reference or specimen is not repeated.";
        if (plan.TwiceThePlacementsDb is { } placements && double.IsFinite(placements))
        {
            string pays = plan.TwiceTheSweepsDb > placements * PlainlyMore ? "More placements pay"
                : "More sweeps of each placement do as well";
            yield return $"{pays}: twice the placements give ±{Width(placements)}, twice the sweeps of each "
                + $"±{Width(plan.TwiceTheSweepsDb)}.";
        }
    }

    private static string Wanted(SweepPlan plan, double wanted)
    {
        string width = $"±{Exact(wanted, "dB")}";
        if (plan.AllFixed && double.IsFinite(plan.HalfWidthDb))
        {
            return $"{Capital(Numbers(plan.Chosen))} give ±{Width(plan.HalfWidthDb)}: "
                + $"{(plan.HalfWidthDb <= wanted ? "enough" : "not enough")} for {width}.";
        }

        if (!plan.Fewest.IsEmpty)
        {
            return $"For {width}: "
                + $"{string.Join("; or ", plan.Fewest.Select(w => $"{Numbers(w.Numbers)} (±{Width(w.HalfWidthDb)})"))}.";
        }

        return plan.Question is { PlacementsFixed: true, Numbers.Placements: > 1 and var held }
            ? $"{width} cannot be had with {Count(held, "placement")}, however often each is swept: take more "
                + $"placements{(plan.Question.ReferenceFixed ? ", or more reference sweeps" : string.Empty)}."
            : $"{width} cannot be had with {Plain(FewestSweeps.Most)} repeats and {Plain(FewestSweeps.MostCovered)} covered "
                + "sweeps: what repeats do not average away, or too few reference sweeps, stand in the way.";
    }

    internal static string Numbers(SweepNumbers numbers) => numbers.Placements > 1
        ? $"{Count(numbers.Placements, "placement")} of {Count(numbers.SweepsEach, "sweep")}, "
            + $"{Count(numbers.ReferenceSweeps, "reference sweep")}"
        : $"{Count(numbers.SweepsEach, "sweep")} of one placement, {Count(numbers.ReferenceSweeps, "reference sweep")}";

    private static string Width(double decibels) => double.IsFinite(decibels)
        ? Math.Round(decibels, 2).ToString("0.00", System.Globalization.CultureInfo.InvariantCulture) + " dB" : "none";

    private static string Capital(string sentence) => char.ToUpperInvariant(sentence[0]) + sentence[1..];
}
