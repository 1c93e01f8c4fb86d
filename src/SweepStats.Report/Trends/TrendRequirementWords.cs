using SweepStats.Report.Findings;
using SweepStats.Report.Lots;
using SweepStats.Trends;
using SweepStats.Verdicts;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Trends.FactorWords;

namespace SweepStats.Report.Trends;

/// <summary>Up to where along an ordered factor a requirement is met, and what that rests on.</summary>
internal static class TrendRequirementWords
{
    internal static string ScopeOf(TrendRequirement asked) =>
        asked.Frequencies == 1 ? "at the one frequency it asks about" : $"at all {Count(asked.Frequencies, "frequency")}";

    internal static IEnumerable<string> MetAlong(FactorTrend trend, TrendRequirement asked, string scope)
    {
        string level = asked.Rule.IsSimpleAcceptance ? string.Empty : $" ({Level(asked.Rule.Level)}, one-sided)";
        string? hindered = asked.Obstacle switch
        {
            TrendObstacle.Faults => "Mend the faults first: up to where the requirement is met cannot be told.",
            TrendObstacle.LotsApart =>
                "Up to where the requirement is met cannot be told: specimens of a lot go together, lots lie apart "
                + $"about the line ({LotAnswerWords.Chance(trend.Whole.LotsApartProbability ?? 0)}). Analyse each lot as a "
                + "campaign of its own, or take several lots at each value.",
            TrendObstacle.ReferenceOnce =>
                "Up to where the requirement is met cannot be told: the reference was swept once, so how "
                + "far the level is off is not known. Sweep it three times or more.",
            _ => null,
        };
        yield return hindered ?? MetUpTo(trend, asked, scope, level).TrimEnd();
    }

    private static string MetUpTo(FactorTrend trend, TrendRequirement asked, string scope, string level)
    {
        const string Shown = "The mean of such specimens is shown";
        double first = trend.Groups[0].Value, last = trend.Groups[^1].Value;
        return asked.MetUpTo == last
                ? $"{Shown} to meet the requirement up to the {Along(trend, last)} measured, {scope}{level}."
            : asked.NotMetFrom == first
                ? $"{Shown} not to meet the requirement at any value measured, {ValueRange(trend)} {Factor(trend)}{level}."
            : asked.MetUpTo is { } upTo
                ? $"{Shown} to meet the requirement up to {Along(trend, Down(trend, upTo))}, {scope}{level}. "
                    + $"{Beyond(trend, asked)}"
            : $"The mean of such specimens is not shown to meet the requirement even at {Along(trend, first)}, the lowest "
                + $"value{level}: {OutcomeWord(trend.Groups[0].Outcome)}. {Beyond(trend, asked)}";
    }

    private static string Beyond(FactorTrend trend, TrendRequirement asked)
    {
        double from = asked.MetUpTo ?? trend.Groups[0].Value, last = trend.Groups[^1].Value;
        bool untold = trend.Groups.Any(g =>
            g.Value >= from && (asked.NotMetFrom is not { } ends || g.Value < ends)
                && g.Outcome == RequirementOutcome.CannotTell);
        string open = untold ? "cannot be told" : "is undecided";
        return asked.NotMetFrom is { } notMet ? Unmet(trend, asked, Up(trend, notMet)) + $" Between, it {open}."
            : asked.MetUpTo is null ? $"Nowhere up to {Along(trend, last)} is it shown not to be met."
            : $"From there to the {Along(trend, last)} measured it {open}.";
    }

    private static string Unmet(FactorTrend trend, TrendRequirement asked, double notMet)
    {
        double last = trend.Groups[^1].Value;
        string where = asked.Frequencies > 1 ? ", at one frequency or more" : string.Empty;
        return notMet == last ? $"At the {Along(trend, last)} measured it is shown not to be met{where}."
            : $"From {Plain(notMet)} to the {Along(trend, last)} measured it is shown not to be met{where}.";
    }

    internal static IEnumerable<string> TrendRests(FactorTrend trend, TrendRequirement asked)
    {
        if (asked.Obstacle is TrendObstacle.Faults or TrendObstacle.LotsApart or TrendObstacle.ReferenceOnce)
        {
            yield break;
        }

        if (asked is { DecidedAt: { } at, Frequencies: > 1 }
            && (asked.MetUpTo == trend.Groups[^1].Value || asked.NotMetFrom > trend.Groups[0].Value))
        {
            yield return asked.NotMetFrom is null ? $"{Frequency(at)} has the least to spare."
                : $"It stops being shown first at {Frequency(at)}.";
        }

        string guard = asked.Rule.GuardBand.Value > 0 ? $", with the guard band of {Exact(asked.Rule.GuardBand.Value, "dB")}"
            : string.Empty;
        yield return asked.Rule.IsSimpleAcceptance ? $"By the estimate alone{guard}."
            : $"The errors of reference, floor and what is stated are allowed for{guard}.";
        if (asked.Obstacle == TrendObstacle.NoRepeats)
        {
            yield return "Without a straight line, specimens at the same value have to show the scatter: measure two or more at "
                + "each value.";
        }

        if (!asked.OverturnedBy.IsEmpty)
        {
            yield return "What the figures say could be overturned by a finding: "
                + $"{string.Join("; ", asked.OverturnedBy.Select(CheckWords.InPassing))}.";
        }

        if (asked.Obstacle == TrendObstacle.FrequenciesLeftOut)
        {
            yield return "Frequencies that not all sweeps have were left out, so nothing is known about the requirement there.";
        }
    }

    internal static string OutcomeWord(RequirementOutcome? outcome) => outcome switch
    {
        RequirementOutcome.Meets => "meets",
        RequirementOutcome.Fails => "fails",
        RequirementOutcome.Undecided => "undecided",
        _ => "cannot be told",
    };
}
