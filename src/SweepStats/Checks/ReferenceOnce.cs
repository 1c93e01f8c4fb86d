using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>The reference was taken on one side of the covered sweeps only: a drift in between does not show.</summary>
internal sealed class ReferenceOnce : ICheck
{
    /// <inheritdoc/>
    public string Code => "reference-once";

    // Where no drift shows either, the finding says the same.
    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => seen.Timing == ReferenceTiming.Unknown && seen.Drifts.Any(d => d.IsClear)
        ? "nothing says when the reference was taken" : null;

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        // A drift that shows stands in the intervals, and is told.
        if (seen.Drifts.Any(d => d.IsClear))
        {
            yield break;
        }

        if (seen.Timing == ReferenceTiming.Unknown)
        {
            yield return Unknown(seen);
        }

        if (seen.Timing != ReferenceTiming.OneSide)
        {
            yield break;
        }

        double? hidden = HiddenDb(seen);
        Severity weight = Materiality.Weight(hidden, seen.Curves);
        yield return new Finding
        {
            Code = Code,
            // Its size is not known: what shows within groups says nothing of a step between them.
            Severity = Severity.Warning,
            Role = SweepRole.Reference,
            Size = hidden is { } db ? new Decibels(db) : null,
            Message = "The reference was taken on one side of the specimens only: what moved in between does not show, and "
                + "stands in no interval."
                + (hidden is { } most ? string.Create(Amount.Print,
                    $" Had it moved as fast as within each group, it would be up to {most:0.0} dB; a step would not show at all.")
                    : string.Empty),
            Basis = hidden is null
                ? string.Create(Amount.Print, $"{Amount.Count(seen.Campaign.Used().Count(), "sweep", "sweeps")}; too few of "
                    + $"them repeat each other and have times to show a slope.")
                : string.Create(Amount.Print, $"95 % limit of the slope over time within groups, over the longest time from "
                    + $"reference to specimen: {hidden:0.00} dB, against half of a typical half-width, "
                    + $"{Materiality.Share * Materiality.HalfWidthDb(seen.Curves):0.00} dB."),
            NextStep = UnreadFiles.Of(seen.Campaign.Unread, SweepRole.Reference)?.Mend
                ?? "Take the reference again after the specimens, as IEEE Std 299-2006 (4.4) asks.",
            Bias = weight == Severity.Warning && hidden is { } shift ? new Bias(shift, shift) : null,
        };
    }

    private Finding Unknown(Evidence seen) => new()
    {
        Code = Code,
        // Its size is unknown, and nothing in the interval stands for it.
        Severity = Severity.Warning,
        Role = SweepRole.Reference,
        Message = "Nothing says whether the reference was taken before and after the specimens: what drifted in between may not "
            + "show, and stands in no interval.",
        Basis = string.Create(Amount.Print,
            $"{seen.Campaign.Used().Count(s => s.TakenAt is null)} of {seen.Campaign.Used().Count()} sweeps have no time."),
        NextStep = "Write the times into sweeps.csv (taken_at), or taken = \"before-and-after\" under [reference] in "
            + "campaign.toml where it is so.",
    };

    private static double? HiddenDb(Evidence seen) => seen.Drifts.FirstOrDefault(d => d.IsOfTheClock)?.FromReferenceDb();
}
