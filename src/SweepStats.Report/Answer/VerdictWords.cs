using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Report.Fields;
using SweepStats.Report.Findings;
using SweepStats.Report.Setup;
using SweepStats.Report.Specimens;
using SweepStats.Report.Text;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Answer;

/// <summary>The verdict and what can be said of a specimen.</summary>
public static class VerdictWords
{
    internal const string Trusted = "This measurement can be trusted";
    internal const string TrustedWithinLimits = "This measurement can be trusted within limits";
    internal const string TrustedAsTested = "Trust this measurement no further than it was tested";
    internal const string Untrusted = "Do not rely on this measurement";
    internal const string RehearsedMark = "Drawn by rehearse, not measured. ";

    /// <summary>
    /// The verdict in one sentence: can it be trusted, is the requirement met, and that the floor is missing where it is; before
    /// it that nothing was measured, where it is so.
    /// </summary>
    public static string Headline(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        string trust = result.Verdict.Trust switch
        {
            Trust.Trustworthy => Trusted,
            Trust.Limited when !HasWarnings(result) => TrustedAsTested,
            Trust.Limited => TrustedWithinLimits,
            _ => Untrusted,
        };
        string asked = result.Verdict.Requirement is { } outcome
            ? Joined(result.Verdict.Trust, outcome) + Outcome(outcome, result) : string.Empty;
        string floor = result.Floor is not null ? string.Empty
            : (result.FloorLife is null ? $"; {NoFloor(result)}" : "; the floor sweeps show no noise")
                + ", so nobody can tell which readings are capped";
        string unmeasured = result.Verdict.Requirement is not null && AskedWords.NotMeasured(result) is { } stretches
            ? $"; asked also {stretches}" : string.Empty;
        string mark = result.Rehearsed ? RehearsedMark : string.Empty;
        return mark + trust + asked + unmeasured + floor + "." + NotTested(result);
    }

    private static string NoFloor(AnalysisResult result) =>
        UnreadFiles.Of(result.Campaign.Unread, SweepRole.Floor)?.Told ?? "no floor sweep is in use and no floor is declared";

    private static bool HasWarnings(AnalysisResult result) => result.Findings.Any(f => f.Severity == Severity.Warning);

    // What matters to every figure and nothing could test: without it nobody may say that the measurement can be trusted.
    private static string NotTested(AnalysisResult result) => result.Verdict.Untested.IsEmpty ? string.Empty
        : $" Not tested: {string.Join(", ", result.Verdict.Untested.Select(Doubt))}.";

    internal static string Doubt(UntestedDoubt doubt) => doubt switch
    {
        UntestedDoubt.Overload => "overload of the receiver",
        UntestedDoubt.Leakage => "leakage round the specimen",
        UntestedDoubt.PuttingBack => "putting the specimen back",
        _ => "drift between reference and specimen",
    };

    /// <summary>The headline of a console that shows no findings, and where they are told where there are any.</summary>
    internal static string HeadlineWithReason(AnalysisResult result) =>
        Headline(result)
            + (result.Verdict.Trust == Trust.Trustworthy ? string.Empty : " 'sweepstats check' tells why and what to do.");

    /// <summary>
    /// "Nothing was measured from 99 MHz to 601 MHz."; null where the grid leaves out no more than a sweep does.
    /// </summary>
    internal static string? Unmeasured(FrequencyGrid grid) => FrequencyGaps.Of(grid) is { IsEmpty: false } gaps
        ? $"Nothing was measured from {Listed([.. gaps.Select(Band)], PulseWords.MostGapsNamed)}." : null;

    /// <summary>Why the measurement is trusted as far as it is, and what no check has looked at.</summary>
    public static string TrustReason(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        FindingGroup[] told = [.. FindingGroup.Of(result.Findings)];
        int faults = told.Count(g => g.Severity == Severity.Fault);
        int warnings = told.Count(g => g.Severity == Severity.Warning);
        string weighed = (faults, warnings) switch
        {
            (0, 0) => NothingFound,
            (0, _) => $"{Count(warnings, "warning")} {(warnings == 1 ? "limits" : "limit")} what may be claimed.",
            (_, 0) => $"Mend {Count(faults, "fault")} before anything is claimed.",
            _ => $"Mend {Count(faults, "fault")} before anything is claimed; {Count(warnings, "warning")} "
                + $"{(warnings == 1 ? "limits" : "limit")} what may be claimed then.",
        };
        string scope = result.Findings.Any(f => f.Code == PlacementCode) ? $" {RepeatsOnly}" : string.Empty;
        string gaps = Unmeasured(result.Campaign.Grid) is { } left ? $" {left}" : string.Empty;
        return $"{weighed}{scope}{gaps} {CheckWords.Untested(result)}";
    }

    /// <summary>What the outcome of a requirement means and what would change it; null where nothing is asked.</summary>
    public static string? OutcomeReason(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        bool simple = result.Plan.Rule is { IsSimpleAcceptance: true };
        string? reason = result.Verdict.Requirement switch
        {
            RequirementOutcome.Meets when NothingRelied(result) =>
                "Mend the faults first: until then no specimen is shown to meet the requirement.",
            RequirementOutcome.Meets =>
                $"{(simple ? "The estimate, or the bound where only that is known," : "The lower limit")} is at or above the "
                    + $"requirement{DecisionWords.Guarded(result)} {AskedWords.WhereAsked(result)} of every specimen.",
            RequirementOutcome.Fails => Face(result, capital: true) + RequirementWords.FailingReason(result, simple),
            RequirementOutcome.Undecided => UndecidedWords.UndecidedReason(result),
            RequirementOutcome.CannotTell => RequirementWords.CannotTellReason(result),
            _ => null,
        };
        return reason is not null && AskedWords.NotMeasured(result) is { } stretches
            ? $"{reason} Asked also {stretches}." : reason;
    }

    /// <summary>What is asked: "40 dB", or "20 dB to 40 dB, depending on frequency".</summary>
    public static string Required(Requirement requirement, FrequencyGrid grid)
    {
        ArgumentNullException.ThrowIfNull(requirement);
        ArgumentNullException.ThrowIfNull(grid);
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        foreach (double hertz in grid.Hertz)
        {
            if (requirement.At(new Hertz(hertz)) is { } asked)
            {
                low = Math.Min(low, asked.Value);
                high = Math.Max(high, asked.Value);
            }
        }

        return low > high ? "nothing in this band" : low == high ? $"{Plain(low)} dB"
            : $"{Short(low)} dB to {Short(high)} dB, depending on frequency";
    }

    /// <summary>
    /// The claim over the band: "SE ≥ 34.2 dB at all 161 frequencies from 30 MHz to 1 GHz (weakest at 433.9 MHz)", or that there
    /// is none.
    /// </summary>
    public static string Claim(BandStatement band)
    {
        ArgumentNullException.ThrowIfNull(band);
        if (band.AtLeast is not { } claim)
        {
            return $"no claim holds over the whole band, {Band(band.Band)}";
        }

        string weakest = band.WeakestAt is { } at && band.PointCount > 1 ? $" (weakest at {Frequency(at)})" : string.Empty;
        return $"SE {Bound(claim)} {AtAll(band)}{weakest}";
    }

    /// <summary>
    /// A figure of the band as far as it is known: a value with its interval, a bound, or that it cannot be told.
    /// </summary>
    public static string Figure(BandFigure figure) => figure switch
    {
        { Value: { } value, Low: { } low, High: { } high } => $"{Ratio(value)} ({Interval(low, high)})",
        { Low: { } low } => Bound(new Decibels(low)),
        { Value: { } value } => $"{Ratio(value)}, {SpecimenChartWords.UnrepeatedLegend}",
        _ => "cannot be told",
    };

    /// <summary>A share of the band as far as it is known: "87.5 % (80.0 to 93.1 %)".</summary>
    public static string Share(BandFigure figure) => figure switch
    {
        { Value: { } value, Low: <= 0, High: >= 1 } => $"{Percent(value)}, too few repeats for limits",
        { Value: { } value, Low: { } low, High: { } high } =>
            $"{Percent(value)} ({LowTenths(low * 100)} to {HighTenths(high * 100)} %)",
        { Low: > 0 and var low } => $"≥ {LowTenths(low * 100)} %",
        { Value: { } value } => $"{Percent(value)}, {SpecimenChartWords.UnrepeatedLegend}",
        _ => "cannot be told",
    };

    /// <summary>A reading as far as it is known; a capped or overloaded one is a bound with its sign, never a value.</summary>
    public static string Reading(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured m =>
            $"{Ratio(m.Shielding.Value.Value)} ({Interval(m.Shielding.Low.Value, m.Shielding.High.Value)})",
        ShieldingReading.AtLeast bound => Bound(bound.Bound),
        ShieldingReading.Unrepeated single => $"{Ratio(single.Indication.Value)}, {SpecimenChartWords.UnrepeatedLegend}",
        ShieldingReading.Unreadable unreadable => $"{SpecimenChartWords.UnreadableLegend}: {PlainText.Of(unreadable.Reason)}",
        _ => throw new ArgumentNullException(nameof(reading)),
    };

    /// <summary>How many frequencies are capped, and by what.</summary>
    internal static string Capped(BandStatement band, ShieldingCurve? curve)
    {
        if (band.CappedCount == 0)
        {
            return "No frequency is capped.";
        }

        string by = curve is null ? string.Empty
            : " by " + (BoundCauses.Of(curve.Readings) with { Overload = false, Unmeasured = false }).What;
        return $"Capped{by} at {Plain(band.CappedCount)} of {Count(band.PointCount, "frequency")}.";
    }

    /// <summary>How many frequencies the receiver was overloaded at.</summary>
    internal static string Overloaded(int overloaded, int points) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture,
            $"Overloaded at {overloaded} of {Count(points, "frequency")}: at best a bound.");

    private static string Outcome(RequirementOutcome outcome, AnalysisResult result)
    {
        string asked = result.Plan.Requirement is { } requirement ? $" ({Required(requirement, result.Campaign.Grid)})"
            : string.Empty;
        return outcome switch
        {
            RequirementOutcome.Meets when NothingRelied(result) => $"it shows for no specimen that the requirement{asked} is met",
            RequirementOutcome.Meets =>
                $"every specimen{Missing(result)} meets the requirement{asked} {AskedWords.WhereAsked(result)}",
            RequirementOutcome.Fails => $"{Face(result)}the requirement{asked} is not met{RequirementWords.Standings(result)}",
            RequirementOutcome.Undecided =>
                $"whether the requirement{asked} is met is undecided{RequirementWords.Standings(result)}",
            _ => $"whether the requirement{asked} is met cannot be told{RequirementWords.Standings(result)}",
        };
    }

    // A specimen whose sweeps were all left out, or could not be read, is not among those that meet.
    private static string Missing(AnalysisResult result)
    {
        string[] missing =
        [
            .. result.Campaign.Unread.Where(u => u.Role == SweepRole.Covered).Select(u => u.Specimen)
                .Concat(result.Campaign.Excluded.Where(s => s.Role == SweepRole.Covered)
                    .Select(s => (SpecimenName?)SpecimenName.Of(s)))
                .OfType<SpecimenName>().Distinct().Where(name => result.Curves.All(c => c.Name != name)).Select(SpecimenLabel),
        ];
        return missing.Length == 0 ? string.Empty : $" but {Listed(missing, MostSpecimensNamed)}, of which no sweep is in use,";
    }

    // Where nothing may be relied on, what the figures say must not read as if it were so.
    /// <summary>What stands before figures that may not be claimed; nothing where they may.</summary>
    internal static string FaceValue(AnalysisResult result) => Face(result, capital: true);

    internal static bool NothingRelied(AnalysisResult result) => result.Verdict.Trust == Trust.Untrustworthy;

    internal static string Face(AnalysisResult result, bool capital = false) => !NothingRelied(result) ? string.Empty
        : capital ? "At face value only: " : "taken at face value ";

    internal static string AtAll(BandStatement band)
    {
        string where = Band(band.Band);
        string many = $"at all {Count(band.PointCount, "frequency")}";
        return band.PointCount == 1 ? $"at {where}" : where == Frequency(band.Band.Start) ? $"{many} near {where}"
            : $"{many} from {where}";
    }

    private static string Joined(Trust trust, RequirementOutcome outcome) =>
        trust == Trust.Untrustworthy && outcome == RequirementOutcome.Meets ? ": "
            : trust != Trust.Untrustworthy && outcome is (RequirementOutcome.Undecided or RequirementOutcome.CannotTell)
            ? ", but " : ", and ";

    // Between stated frequencies a requirement has more digits than anybody stated.
    private static string Short(double value) => Plain(Math.Round(value, 2));

    internal const string NothingFound = "The checks that could be made found nothing that limits it.";
    internal const string RepeatsOnly = "The intervals cover how well sweeps repeat, not how well a specimen can be put back.";
    private const string PlacementCode = "placement-unknown";
}
