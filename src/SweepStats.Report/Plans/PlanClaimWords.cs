using SweepStats.Checks;
using SweepStats.Planning;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;

namespace SweepStats.Report.Plans;

/// <summary>What a plan says of a claim, on the console.</summary>
internal static class PlanClaimWords
{
    // Source power, bandwidth, attenuation and averaging together give no more on a bench.
    private const double BeyondSettingsDb = 60;

    // From here on the floor is pooled over enough readings that its looks are as good as known.
    private const int EnoughFloorFrequencies = 10;

    internal static IEnumerable<string> Source(SweepPlan plan)
    {
        if (plan.Question.FromRequirement is { } asked)
        {
            string guard = asked.GuardBand.Value > 0 ? $" and its guard band of {Exact(asked.GuardBand.Value, "dB")}"
                : string.Empty;
            yield return "No claim was stated: planned for the pilot's requirement of "
                + $"{Exact(Math.Round(asked.Required.Value, 2), "dB")}{guard} at {Frequency(asked.At)}, where the pilot has "
                + "least to spare.";
        }
    }

    internal static IEnumerable<string> Claimed(SweepPlan plan, ClaimPlan claim, bool overloaded)
    {
        yield return $"To claim SE ≥ {Exact(Math.Round(claim.ClaimDb, 2), "dB")} at one frequency ({Sureness(plan.Question)}) "
            + $"of a specimen that truly shields {Exact(Math.Round(claim.ShieldingDb, 2), "dB")}, with "
            + $"{PlanWords.Numbers(plan.Chosen)}:";
        string aim = Percent(plan.Question.Probability);
        if (claim.RangeNeededDb is not { } needed)
        {
            yield return $"  with any range the claim succeeds in {Percent(claim.ShareWithPlenty)} of campaigns, not in {aim}: "
                + "take more placements or sweeps, or claim less.";
        }
        else
        {
            yield return $"  it succeeds in at least {aim} of campaigns where the reference stands {HighTenths(needed)} dB over "
                + "the floor.";
            if (plan.MissingRangeDb is { } missing)
            {
                yield return "  " + Missing(missing, overloaded);
            }
        }

        if (claim is { Expected: { } expected, ShareNow: { } now })
        {
            string interval = double.IsFinite(expected.MedianLowDb)
                ? $"an interval of {Interval(expected.MedianLowDb, expected.MedianHighDb)}" : "no bound at all";
            yield return $"  Expected with the range there is: {interval}; the claim succeeds in {Percent(now)}, and "
                + $"{Percent(expected.BoundedShare)} are bounded from both sides.";
        }

        yield return "  A claim over a whole band has to succeed at every frequency at once, and does so less often: reckon "
            + "with the weakest frequency and ask for more (--probability 0.99).";
    }

    private static string Sureness(PlanQuestion question)
    {
        var level = question.ClaimLevel ?? question.Confidence;
        return level.Level > 0.5 ? $"{Level(level)}, one-sided" : "simple acceptance, by the estimate alone";
    }

    private static string Missing(double missing, bool overloaded) => missing switch
    {
        <= 0 => "This set-up has that range.",
        > BeyondSettingsDb =>
            $"{HighTenths(missing)} dB are missing: no setting gives so much. Claim less, or measure with another set-up.",
        _ => $"{HighTenths(missing)} dB are missing. {RangeRemedy.For(Math.Ceiling((missing * 10) - 1e-6) / 10, overloaded)}",
    };

    internal static string FloorKnown(PlanBasis basis) => basis.FloorFrequencies is { } few and < EnoughFloorFrequencies
        ? $"Caution: the pilot's floor was taken at {Count(few, "frequency")}, too few to know the noise by unless some 100 "
            + "floor sweeps are taken: with fewer, range and claims come out too hopeful. They hold for bands of "
            + $"{EnoughFloorFrequencies} and more frequencies."
        : $"Range and claims hold for bands of {EnoughFloorFrequencies} and more frequencies, whose floors together show the "
            + "noise; a single frequency needs some 100 floor sweeps.";
}
