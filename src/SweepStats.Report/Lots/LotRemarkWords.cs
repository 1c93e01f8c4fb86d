using SweepStats.Lots;
using SweepStats.Report.Answer;
using SweepStats.Report.Text;
using SweepStats.Statistics;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Lots;

/// <summary>What stands beside the figures of lots.</summary>
internal static class LotRemarkWords
{
    internal const string Same = "same";
    private const string Farther = "apart";
    private const string Open = "open";

    /// <summary>Pairs, scatter and standing, sentence by sentence.</summary>
    internal static IEnumerable<string> LotRemarks(AnalysisResult result, LotBand band)
    {
        LotQuestion question = result.Lots.Question;
        NamedEquivalence[] pairs = [.. band.Pairs.Select(p => new NamedEquivalence(Pair(p.First, p.Second), p.Tested))];
        string? same = SameWithin(pairs, question) is { } within ? VerdictWords.Face(result, capital: true) + within : null;
        string?[] remarks =
        [
            band.Name is null ? null : LotAnswerWords.LotsHeadline(result, band),
            SharedByAll(band, question), Single(band), same, Scatter(band), Share(band, question),
            band.LotStanding is { } lots ? Standing("lots", lots) : null,
            band.SpecimenStanding is { } specimens ? Standing("specimens", specimens) : null,
        ];
        return remarks.OfType<string>();
    }

    private static string? Single(LotBand band)
    {
        string[] single = [.. band.Lots.Where(l => l.Specimens == 1).Select(l => PlainText.Of(l.Lot))];
        string which = single.Length == 1 ? $"that of lot {single[0]} is"
            : $"those of lots {Listed(single, MostSpecimensNamed)} are";
        return single.Length == 0 || band.Probability is null ? null
            : $"One specimen shows no scatter: {which} taken to be at most twice that of the others. Take a second specimen.";
    }

    private static string? Scatter(LotBand band) => band.Scatter.IsEmpty ? null : "Standard deviations of the mean: "
        + $"{string.Join(", ", band.Scatter.Select(s => $"{Between(s.Level)} {Small(s.DeviationDb)}"))}.";

    // With few lots the share scatters widely; it tells something where lots are shown to differ.
    private static string? Share(LotBand band, LotQuestion question) =>
        band.IntraclassCorrelation is { } share && band.Probability <= question.FalseAlarm
            ? $"Lots make {Percent(share)} of the variance between specimens (intraclass correlation)." : null;

    // What is in the intervals beside the scatter of specimens, and that it drops out between lots.
    private static string? SharedByAll(LotBand band, LotQuestion question) =>
        band.Lots.Any(l => l.SharedUnknown)
            ? "How far the reference is off nobody can tell: it was swept once. Sweep it twice or more. Until then only the "
                + $"intervals \"{LotWords.AloneColumn}\" can be told."
        : band.SharedErrorDb is > 0 and var error && band.Lots.Any(l => l.MeanIntervalDb is not null)
            ? "Intervals of means and promises hold what all specimens share: reference, floor and stated errors, "
                + $"±{HighTenths(error)} dB ({Level(question.Confidence)}). It drops out between "
                + $"lots{(LotWords.ShowsAlone(band) ? $"; \"{LotWords.AloneColumn}\" leaves it out" : string.Empty)}."
            : null;

    /// <summary>
    /// Which pairs are the same within the margin, which are not, and which nobody can tell; null where there is no pair.
    /// </summary>
    internal static string? SameWithin(IReadOnlyList<NamedEquivalence> pairs, LotQuestion question)
    {
        if (pairs.Count == 0)
        {
            return null;
        }

        ILookup<string, string> by = pairs.ToLookup(p => Decided(p.Tested, question), p => p.Name);
        string margin = $"within ±{Exact(question.MarginDb, "dB")} of each other";
        if (pairs.Count > LotWords.MostPairsNamed)
        {
            return $"Of {Count(pairs.Count, "pair")} of lots, the means of {Plain(by[Same].Count())} are shown to be {margin}, "
                + $"those of {Plain(by[Farther].Count())} to be farther apart; {Plain(by[Open].Count())} are undecided.";
        }

        string Told(string decided, string words) => by[decided].Any() ? $"{words}: {string.Join(", ", by[decided])}." : "";
        string[] parts =
        [
            Told(Same, $"Means shown to be {margin}"), Told(Farther, $"Means shown not to be {margin}"),
            Told(Open, $"Undecided whether their means are {margin}"),
        ];
        return string.Join(" ", parts.Where(p => p.Length > 0));
    }

    internal static string Decided(Equivalence? tested, LotQuestion question) => tested switch
    {
        null => Open,
        _ when tested.Probability <= question.FalseAlarm => Same,
        _ when tested.Interval(question.FalseAlarm) is var interval
            && (interval.Low > tested.Margin || interval.High < -tested.Margin) => Farther,
        _ => Open,
    };

    internal static string Pair(string first, string second) => $"{PlainText.Of(first)} and {PlainText.Of(second)}";

    private static string Between(VarianceLevel level) => level switch
    {
        VarianceLevel.Lot => "from lot to lot",
        VarianceLevel.Specimen => "between specimens of a lot",
        VarianceLevel.Placement => "between placements of a specimen",
        _ => "between sweeps of a placement",
    };

    private static string Standing(string groups, GroupStanding standing)
    {
        OutOfLine[] outliers = [.. Passing(standing, c => c.Outlier)];
        OutOfLine[] stragglers = [.. Passing(standing, c => c.Straggler).Where(s => !outliers.Contains(s))];
        string precision = $"Among the {groups} (ISO 5725-2; repeatability {Small(standing.RepeatabilityDb)}, reproducibility "
            + $"{Small(standing.ReproducibilityDb)})";
        string found = (outliers.Length, stragglers.Length) switch
        {
            (0, 0) => "no mean and no scatter is out of line",
            (0, _) => $"past the 5 % limit, as one in twenty is by chance: {Told(stragglers)}",
            (_, 0) => $"past the 1 % limit: {Told(outliers)}",
            _ => $"past the 1 % limit: {Told(outliers)}; past the 5 % limit: {Told(stragglers)}",
        };
        string unequal = standing.Members.Select(m => m.Count).Distinct().Count() > 1
            ? " The means are compared as equally precise, though they are of different numbers of values." : string.Empty;
        return $"{precision} {found}.{unequal}";
    }

    private static string Told(OutOfLine[] found) =>
        Listed([.. found.Select(f => $"{PlainText.Of(f.Name)} ({f.Why})")], MostSpecimensNamed);

    private static IEnumerable<OutOfLine> Passing(GroupStanding standing, Func<ConsistencyLimits, double> limit)
    {
        foreach (GroupMember member in standing.Members)
        {
            if (Math.Abs(member.H) > limit(standing.CriticalH))
            {
                yield return new(member.Name, member.H < 0 ? "mean low" : "mean high");
            }

            if (member.K > limit(member.CriticalK))
            {
                yield return new(member.Name, "scatters");
            }
        }

        double level = limit(new(GroupStanding.StragglerLevel, GroupStanding.OutlierLevel));
        if (standing.Grubbs.Probability <= level
            && !standing.Members.Any(m => m.Name == standing.Grubbs.Name && Math.Abs(m.H) > limit(standing.CriticalH)))
        {
            yield return new(standing.Grubbs.Name, "mean outermost");
        }

        if (standing.Cochran.Probability <= level
            && !standing.Members.Any(m => m.Name == standing.Cochran.Name && m.K > limit(m.CriticalK)))
        {
            yield return new(standing.Cochran.Name, "scatters most");
        }
    }

    /// <summary>A specimen or lot that is out of line, and what is.</summary>
    private readonly record struct OutOfLine(string Name, string Why);
}
