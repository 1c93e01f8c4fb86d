using SweepStats.Checks;
using SweepStats.Linearity;
using SweepStats.Repeats;

namespace SweepStats.Verdicts;

/// <summary>A doubt that matters to every shielding figure, and that nothing in the campaign could test.</summary>
public enum UntestedDoubt
{
    /// <summary>Whether the receiver follows the level up to the reference.</summary>
    Overload,

    /// <summary>What reaches the receiver round the specimen.</summary>
    Leakage,

    /// <summary>How well the specimen can be put back.</summary>
    PuttingBack,

    /// <summary>What drifted between reference and specimen.</summary>
    Drift,
}

/// <summary>Finds what was not tested, and what no finding tells of.</summary>
internal static class UntestedDoubts
{
    private static readonly Dictionary<UntestedDoubt, string[]> ToldBy = new()
    {
        [UntestedDoubt.Overload] = ["over-input", "saturation-plateau", "saturation-step"],
        [UntestedDoubt.Leakage] = ["leakage"],
        [UntestedDoubt.PuttingBack] = [],
        [UntestedDoubt.Drift] = ["drift", "reference-once"],
    };

    /// <summary>The doubts.</summary>
    /// <param name="seen">What was looked at.</param>
    /// <param name="findings">What was found: a doubt that a fault or a warning tells of is none any more.</param>
    public static ImmutableArray<UntestedDoubt> Of(Evidence seen, ImmutableArray<Finding> findings)
    {
        var untested = ImmutableArray.CreateBuilder<UntestedDoubt>();
        void Add(UntestedDoubt doubt, bool tested)
        {
            if (!tested && !IsTold(doubt, findings))
            {
                untested.Add(doubt);
            }
        }

        Add(UntestedDoubt.Overload, IsOverloadTested(seen));
        Add(UntestedDoubt.Leakage, Checks.Leakage.CouldTell(seen));
        Add(UntestedDoubt.PuttingBack, seen.Curves.All(c => c.PlacementCount > 1));
        Add(UntestedDoubt.Drift, seen.Timing == ReferenceTiming.BothSides && !seen.Drifts.IsEmpty);
        return untested.ToImmutable();
    }

    /// <summary>Whether a fault or a warning tells of a doubt.</summary>
    internal static bool IsTold(UntestedDoubt doubt, IEnumerable<Finding> findings) => findings.Any(f =>
        f.Severity != Severity.Note && (f.IsOfAll || IsOfTheSetUp(f)) && ToldBy[doubt].Contains(f.Code));

    // What is found of one specimen or lot says nothing of the others, but leakage is a matter of the set-up.
    private static bool IsOfTheSetUp(Finding finding) => finding.Code == "leakage";

    // A test that could not have shown what matters was none.
    private static bool IsOverloadTested(Evidence seen) =>
        new OverInput().UntestedBecause(seen) is null
        || (seen.Linearity?.MostAtReferenceDb is { } most
            && most <= Math.Max(2 * LinearityStep.WorthTellingDb, Materiality.Share * Materiality.HalfWidthDb(seen.Curves)));
}
