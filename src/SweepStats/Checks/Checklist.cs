using SweepStats.Statistics;
using SweepStats.Sweeps;

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
        new TwoLevels(),
        new RestlessSweeps(),
        new OddSpecimen(),
        new SweepsAlike(),
        new NonNormal(),
        new Capped(),
        new TooFewRepeats(),
        new GridMismatch(),
        new RequirementBeyond(),
        new SettingsChanged(),
        new NegativeShielding(),
        new Ambient(),
        new LateTransmitter(),
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

    // What moves levels by a hundred times the power makes the range look short, and more range does not mend it (judgement, no
    // source).
    private const double FarDb = 20;
    private static readonly string[] OfWrongLevels =
        ["lost-sign", "wrong-unit", "wrong-kind", "stray-placement", "settings-changed"];
    private static readonly string[] OfRange = ["under-ranged", "capped"];

    /// <summary>
    /// Findings of all checks, gravest first. What is said of the range of levels that a fault calls wrong is left out.
    /// </summary>
    /// <param name="seen">What the checks look at.</param>
    /// <param name="threads">Threads to use; each check stands alone, and the findings do not depend on it.</param>
    public static ImmutableArray<Finding> Inspect(Evidence seen, int threads = 1)
    {
        Finding[] Found(int check) => [.. All[check].Inspect(seen)];
        Finding[] found = [.. SideBySide.Of(All.Length, threads, Found).SelectMany(f => f)];
        return [.. found.Where(f => !OfRange.Contains(f.Code) || !WrongLevels(found, f.Specimen).Any())
            .OrderByDescending(finding => finding.Severity)];
    }

    private static IEnumerable<Finding> WrongLevels(IEnumerable<Finding> findings, SpecimenName? specimen) =>
        findings.Where(f => AreLevelsWrong(f) && f.Concerns(specimen));

    private static bool AreLevelsWrong(Finding finding) =>
        finding is { Severity: Severity.Fault, Size.Value: >= FarDb or <= -FarDb } && OfWrongLevels.Contains(finding.Code);

    /// <summary>Every check with the reason why it could not be made, where there is one; in order.</summary>
    /// <param name="seen">What the checks looked at.</param>
    /// <param name="findings">What they found: a check that found something was made, if not wholly.</param>
    public static ImmutableArray<CheckRun> Runs(Evidence seen, ImmutableArray<Finding> findings) =>
        [.. All.Select(check => Run(check, seen, findings))];

    private static CheckRun Run(ICheck check, Evidence seen, ImmutableArray<Finding> findings)
    {
        string? because = check.UntestedBecause(seen);
        CheckRun run = because is null ? LeftTo(check, seen, findings) : new CheckRun(check.Code, because);
        return !findings.Any(f => f.Code == check.Code) ? run
            : new CheckRun(check.Code, null) { LeftBecause = run.UntestedBecause ?? run.LeftBecause };
    }

    // What is said of the range of other specimens stands.
    private static CheckRun LeftTo(ICheck check, Evidence seen, ImmutableArray<Finding> findings)
    {
        Finding[] wrong = OfRange.Contains(check.Code) ? [.. findings.Where(AreLevelsWrong)] : [];
        SpecimenName[] whose =
            [.. wrong.Length == 0 ? [] : seen.Curves.Select(c => c.Name).Where(name => WrongLevels(wrong, name).Any())];
        string codes = string.Join(", ", wrong.Select(f => f.Code).Distinct());
        return whose.Length == 0 ? new CheckRun(check.Code, null) { LeftBecause = check.LeftBecause(seen) }
            : whose.Length == seen.Curves.Length ? new CheckRun(check.Code, $"levels are wrong first ({codes})")
            : new CheckRun(check.Code, null)
            {
                LeftBecause = $"levels of {(whose.Length == 1 ? whose[0] : Amount.Count(whose.Length, "specimen", "specimens"))} "
                    + $"are wrong first ({codes})",
            };
    }
}
