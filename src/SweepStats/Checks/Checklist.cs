using System.Collections.Immutable;
using SweepStats.Statistics;

namespace SweepStats.Checks;

/// <summary>All checks, in the order in which their findings of one severity are listed.</summary>
public static class Checklist
{
    /// <summary>Every check. Adding one is one file and one line here.</summary>
    public static ImmutableArray<ICheck> All { get; } =
    [
        new FilesUnread(),
        new DuplicateSweeps(),
        new NearCopy(),
        new LostSign(),
        new WrongUnit(),
        new WrongKind(),
        new NotInPlace(),
        new NothingHeard(),
        new PlacementOff(),
        new NoFloor(),
        new DeadFloor(),
        new NoLife(),
        new OverInput(),
        new SaturationPlateau(),
        new SaturationStep(),
        new SourceStep(),
        new UnderRanged(),
        new Leakage(),
        new TwoWays(),
        new Drift(),
        new ReferenceOnce(),
        new FloorMoved(),
        new UnsteadyFloor(),
        new ForeignFloor(),
        new OddSweep(),
        new SweepsAlike(),
        new NonNormal(),
        new Capped(),
        new TooFewRepeats(),
        new GridMismatch(),
        new RequirementBeyond(),
        new SettingsChanged(),
        new NegativeShielding(),
        new Ambient(),
        new BelowThermal(),
        new SuspectedFloor(),
        new AveragingDoubtful(),
        new NearFloor(),
        new Quantised(),
        new AveragingUnknown(),
        new PlacementEffect(),
        new PlacementUnknown(),
        new LinearityUntested(),
    ];

    /// <summary>Findings of all checks, gravest first.</summary>
    /// <param name="seen">What the checks look at.</param>
    /// <param name="threads">Threads to use; each check stands alone, and the findings do not depend on it.</param>
    public static ImmutableArray<Finding> Inspect(Evidence seen, int threads = 1)
    {
        Finding[] Found(int check) => [.. All[check].Inspect(seen)];
        return [.. SideBySide.Of(All.Length, threads, Found).SelectMany(f => f).OrderByDescending(finding => finding.Severity)];
    }

    /// <summary>Every check with the reason why it could not be made, where there is one; in order.</summary>
    /// <param name="seen">What the checks looked at.</param>
    /// <param name="findings">What they found: a check that found something was made, if not wholly.</param>
    public static ImmutableArray<CheckRun> Runs(Evidence seen, ImmutableArray<Finding> findings) =>
        [.. All.Select(check => Run(check, seen, findings))];

    private static CheckRun Run(ICheck check, Evidence seen, ImmutableArray<Finding> findings) =>
        findings.Any(f => f.Code == check.Code) ? new CheckRun(check.Code, null) { LeftBecause = check.UntestedBecause(seen) }
            : new CheckRun(check.Code, check.UntestedBecause(seen));
}
