using SweepStats.Bands;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// A specimen that hardly rises over the floor, where others of its lot let far more through: it shields far better, or nothing
/// was sent. Where none rises, nothing in the campaign shows that anything was.
/// </summary>
/// <remarks>
/// Sweeps with the source off, or a cable loose, read as the best cloth of all, and their bounds lie above the truth. Its own
/// sweeps cannot tell, so the others of its lot, which are of one cloth, decide whether it is asked; of a lot that is not heard
/// at all the other lots do, though lots may truly differ. Where none is heard, only a sweep of an opened specimen shows that the
/// source was on: it is looked for among the covered sweeps that were left out, and settles it for a lot too. A little over the
/// floor is no sign of it: with its antenna on a receiver hears more than with its input closed. Nor is more, where it keeps the
/// floor's shape (<see cref="FloorLikeness"/>) or scatters as noise does (<see cref="NoiseScatter"/>), nor what stands alone, or
/// at a part of the band in another shape than the reference (<see cref="HeardFrequencies"/>): transmitters do.
/// </remarks>
internal sealed class NothingHeard : ICheck
{
    // A hundred times the power: pieces of one cloth do not differ by it (judgement, no source).
    private const double AnotherThingDb = 20;

    // Where pieces of a lot are known to lie close together, less will do (judgement, no source).
    private const double LeastDb = 10, Deviations = 8;
    private const int FewestFreedom = 3;

    private static readonly string Rise = string.Create(Amount.Print, $"{HeardFrequencies.RiseDb:0} dB");

    public string Code => "nothing-heard";

    public string? UntestedBecause(Evidence seen) => Lacking.Floor(seen);

    /// <inheritdoc/>
    public string? LeftBecause(Evidence seen)
    {
        if (seen.Floor is not { } floor)
        {
            return null;
        }

        Dictionary<SpecimenName, int> places = Places(seen);
        int near = seen.Curves.Count(c => HeardSpecimen.MayBeNoise(seen, c, places[c.Name], floor));
        int few = seen.Curves.Count(c => HeardSpecimen.Of(seen, c, places[c.Name], floor).MayBeTransmitters);
        string?[] left =
        [
            near == 0 ? null : $"{Amount.Count(near, "specimen", "specimens")} near the floor may be noise alone, and to tell "
                + $"takes {FloorLikeness.FewestPoints} frequencies and a reference with ripple, or more sweeps",
            few == 0 ? null : $"{Amount.Count(few, "specimen is", "specimens are")} heard at less than half of the frequencies "
                + "and not in the reference's shape, as transmitters may be",
        ];
        return string.Join("; ", left.OfType<string>()) is { Length: > 0 } told ? told : null;
    }

    private static Dictionary<SpecimenName, int> Places(Evidence seen) =>
        seen.Campaign.Covered.Index().ToDictionary(c => c.Item.Name, c => c.Index);

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Floor is not { } floor)
        {
            return [];
        }

        Dictionary<SpecimenName, int> places = Places(seen);
        HeardSpecimen[] all = [.. seen.Curves.Select(c => HeardSpecimen.Of(seen, c, places[c.Name], floor))];
        HashSet<SpecimenName> opened = [.. OpenedSpecimens.In(seen, floor)];
        HashSet<string> lots = [.. opened.Select(name => name.Lot)];
        if (all.Length > 0 && Array.TrueForAll(all, h => h.IsSilent))
        {
            return lots.Count == 0 ? [OfAll(all) with { Severity = OfNothing(seen, all) }]
                : all.Where(h => !lots.Contains(h.Name.Lot)).GroupBy(h => h.Name.Lot)
                    .Select(lot => OfAll([.. lot], lot.Key));
        }

        double apart = ApartDb(all);
        return
        [
            .. OfLots(all, lots, seen),
            .. all.GroupBy(h => h.Name.Lot).SelectMany(lot => InLot([.. lot], apart, seen.Rule))
                .Where(f => !opened.Contains(f.Specimen!.Value)),
            .. InStretches(seen, floor, [.. all.Where(h => !h.IsSilent)]),
        ];
    }

    // Where all are silent there, one that was opened shows that the source was on.
    private IEnumerable<Finding> InStretches(Evidence seen, NoiseFloor floor, HeardSpecimen[] heard)
    {
        SilentStretch[] silent = [.. heard.Select(h => SilentStretch.Of(h.Curve, h.At.Heard, floor)).OfType<SilentStretch>()];
        SpecimenName[] Opened(IEnumerable<SilentStretch> some) =>
            [.. OpenedSpecimens.At([.. some.SelectMany(s => s.Points).Distinct()], seen, floor)];
        return silent.Length == 0 || silent.Length < seen.Curves.Length
            ? silent.Where(s => !Opened([s]).Contains(s.Curve.Name)).Select(s => Stopped(seen, [s]))
            : Opened(silent).Length > 0 ? [] : [Stopped(seen, silent)];
    }

    private Finding Stopped(Evidence seen, SilentStretch[] silent)
    {
        string named = silent is [var one] ? one.Curve.Name.ToString() : $"all {silent.Length} specimens";
        int most = silent.Max(s => s.Points.Length);
        double fallDb = silent.Max(s => s.FallDb);
        HashSet<int> points = [.. silent.SelectMany(s => s.Points)];
        return new()
        {
            Code = Code,
            Severity = Severity.Warning,
            Role = SweepRole.Covered,
            Specimen = silent is [var only] ? only.Curve.Name : null,
            Where = Stretches.Where(seen.Campaign.Grid, points.Contains),
            Size = new Decibels(fallDb),
            Bias = Bias.Unknown,
            Misleads = true,
            Message = $"Nothing is heard behind {named} at {Amount.OutOf(most, seen.Campaign.Grid.Count)}, as if the source had "
                + $"stopped there: the level falls at once, by {Amount.Db(fallDb)} from one frequency to the "
                + "next. Or it was off throughout, and transmitters are heard at the others.",
            Basis = $"Told from a fall of {Amount.Db(SilentStretch.LeastFallDb)}, {SilentStretch.UsualChanges:0} times the usual "
                + $"change, or of {Amount.Db(SilentStretch.AnywayDb)} on, over the floor and against the reference, beside "
                + $"{SilentStretch.FewestPoints} frequencies in a row at which nothing is heard.",
            NextStep = $"Look whether the source sends at these frequencies: open {(silent.Length == 1 ? named : "a specimen")} "
                + "without touching source or cables, and look that the level rises there. Keep that sweep "
                + $"{OpenedSpecimens.Kept}: that settles it.",
        };
    }

    // A reference on either side of the specimens shows at least that there was something to hear then; so does, perhaps, what
    // is heard at a part of the band, or has the reference's ripple near the floor: an antenna gives it to noise too.
    private static Severity OfNothing(Evidence seen, HeardSpecimen[] all) => seen.Timing == ReferenceTiming.BothSides
        || all.Any(h => !h.IsInFloor || FloorLikeness.Follows(h.Curve, seen.Floor!)) ? Severity.Warning : Severity.Fault;

    private Finding OfAll(HeardSpecimen[] all, string? lot = null) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = SweepRole.Covered,
        Lot = lot,
        Bias = Bias.Unknown,
        Misleads = true,
        Message = $"Nothing is heard behind {(all.Length == 1 ? all[0].Name.ToString() : $"any of {all.Length} specimens")}"
            + $"{(lot is null || all.Length == 1 ? string.Empty : $" of lot {lot}")}: "
            + $"{Covered(all)}{ButFor(all)}. So they read too with the source off, with a cable loose, or where the floor was "
            + "taken with the source on.",
        Basis = $"Means over the sweeps of each specimen. {Told(all)}, unless a covered sweep that was left out stands "
            + $"{Amount.Db(OpenedSpecimens.RiseDb)} over the floor and not over the reference.",
        NextStep = $"Open a specimen{(lot is null ? string.Empty : $" of lot {lot}")} without touching source or cables, look "
            + "that its level rises, and sweep it closed once more. Keep the opened sweep "
            + $"{OpenedSpecimens.Kept}. If the closed one differs from before, or nothing rises, sweep all again.",
    };

    // Lots may truly differ: where the best of the others nears the end of the range, better cloth is enough, and a reference on
    // either side. Without one nothing shows that the source was on; and what only silence meets is asked about in any case.
    private IEnumerable<Finding> OfLots(HeardSpecimen[] all, HashSet<string> opened, Evidence seen)
    {
        HeardSpecimen[] heard = [.. all.Where(h => h.IsKnown)];
        double best = heard.Select(h => h.MiddleDb).DefaultIfEmpty(double.PositiveInfinity).Max();
        var noneMeets = new Lazy<bool>(() => NoneMeets(heard, seen.Rule));
        return all.GroupBy(h => h.Name.Lot)
            .Where(lot => !opened.Contains(lot.Key) && lot.All(h => h.IsSilent) && Least(lot) > best)
            .Select(lot => Weighed(Asked([.. lot], heard.Length, best), Least(lot) - best >= AnotherThingDb
                || seen.Timing != ReferenceTiming.BothSides || (noneMeets.Value && lot.Any(h => h.Meets(seen.Rule!)))));
    }

    // Where none that is heard does, silence is all that others meet by.
    private static bool NoneMeets(HeardSpecimen[] heard, DecisionRule? rule) =>
        rule is not null && !Array.Exists(heard, h => h.Meets(rule));

    private static Finding Weighed(Finding asked, bool misleads) =>
        misleads ? asked : asked with { Severity = Severity.Note, Misleads = false, Bias = null };

    // Of a specimen that cannot be read anywhere there is none.
    private static double Least(IEnumerable<HeardSpecimen> lot) =>
        lot.Select(h => h.MiddleDb).Where(double.IsFinite).DefaultIfEmpty(double.NaN).Min();

    // By how much pieces of these lots do not differ.
    private static double ApartDb(HeardSpecimen[] all)
    {
        double[][] lots =
            [.. all.Where(h => h.IsKnown).GroupBy(h => h.Name.Lot).Select(lot => lot.Select(h => h.MiddleDb).ToArray())];
        int freedom = lots.Sum(l => l.Length - 1);
        double squares = lots.Where(l => l.Length > 1).Sum(l => (l.Length - 1) * Math.Pow(Sample.StandardDeviation(l), 2));
        return freedom < FewestFreedom ? AnotherThingDb
            : Math.Clamp(Deviations * Math.Sqrt(squares / freedom), LeastDb, AnotherThingDb);
    }

    private IEnumerable<Finding> InLot(HeardSpecimen[] lot, double apartDb, DecisionRule? rule)
    {
        HeardSpecimen[] heard = [.. lot.Where(h => h.IsKnown)];
        if (heard.Length == 0)
        {
            yield break;
        }

        double best = heard.Max(h => h.MiddleDb);
        var noneMeets = new Lazy<bool>(() => NoneMeets(heard, rule));
        foreach (HeardSpecimen silent in lot.Where(h => h.NoiseDb is not null || (h.IsSilent && h.MiddleDb > best)))
        {
            yield return Weighed(Asked(silent, heard.Length, best, apartDb), silent.NoiseDb is not null
                || silent.MiddleDb - best >= apartDb || (noneMeets.Value && silent.Meets(rule!)));
        }
    }

    private Finding Asked(HeardSpecimen silent, int heard, double bestDb, double apartDb) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = SweepRole.Covered,
        Specimen = silent.Name,
        Size = new Decibels(silent.MiddleDb - bestDb),
        Bias = Bias.Unknown,
        Misleads = true,
        Message = $"Nothing is heard behind {silent.Name}: {Position(silent)}, where "
            + $"{(heard == 1 ? "the only one that is heard" : "the best of the others")} "
            + $"of its lot shields {Amount.Db(bestDb)}. So it reads too with the source off or a cable loose.",
        Basis = $"Its values and bounds, {Amount.Db(silent.MiddleDb)} in the middle, lie {Amount.Db(silent.MiddleDb - bestDb)} "
            + $"above that. It misleads from {Amount.Db(apartDb)} on, where it alone of its lot meets the requirement, or "
            + $"where it shows noise alone. {Told([silent])}.",
        NextStep = $"Look whether the source was on and every cable tight while {silent.Name} was swept, and sweep it again. "
            + "If it stays so low, open it. Keep that sweep "
            + $"{OpenedSpecimens.Kept}: that settles it.",
    };

    private Finding Asked(HeardSpecimen[] lot, int heard, double bestDb)
    {
        double least = Least(lot);
        string named = lot is [var one] ? one.Name.ToString() : $"lot {lot[0].Name.Lot}";
        return new()
        {
            Code = Code,
            Severity = Severity.Warning,
            Role = SweepRole.Covered,
            Specimen = lot.Length == 1 ? lot[0].Name : null,
            Lot = lot.Length == 1 ? null : lot[0].Name.Lot,
            Size = new Decibels(least - bestDb),
            Bias = Bias.Unknown,
            Misleads = true,
            Message = $"Nothing is heard behind {(lot.Length == 1 ? named : $"any of the {lot.Length} specimens of {named}")}"
                + $"{ButFor(lot)}, where "
                + $"{(heard == 1 ? "the only one that is heard" : $"the best of {heard} others")} shields {Amount.Db(bestDb)}. "
                + "So it reads too with the source off or a cable loose.",
            Basis = $"{Told(lot)}, unless a sweep of it that was left out stands {Amount.Db(OpenedSpecimens.RiseDb)} over the "
                + "floor and not over the reference. Where a reference stands on either side it misleads from "
                + $"{Amount.Db(AnotherThingDb)} above the others on (here {Amount.Db(least - bestDb)}: values and bounds of "
                + $"{Amount.Db(least)} in the middle), or where it alone meets the requirement. Better cloth reads so too, and "
                + "these sweeps cannot tell.",
            NextStep = $"Look whether the source was on and every cable tight while {named} was swept, and sweep it again"
                + (least - bestDb >= AnotherThingDb ? ". "
                    : ", with a reference before and after (taken_at, or taken = \"before-and-after\" under [reference]). ")
                + $"If it stays in the floor, open a specimen of it. Keep that sweep {OpenedSpecimens.Kept}: that settles it.",
        };
    }

    private static string ButFor(HeardSpecimen[] unheard) => unheard.Max(h => h.Over) is > 0 and var over
        ? $", but for {Amount.OutOf(over, unheard[0].At.Points)} at most, where transmitters may be heard" : string.Empty;

    private static string Covered(HeardSpecimen[] unheard) => Array.Exists(unheard, h => h.ScatterDb is not null)
        ? $"all covered levels lie within {Rise} of the floor or scatter as noise does, up to "
            + $"{Amount.Db(unheard.Max(h => h.NoiseDb)!.Value)} above it"
        : Array.Exists(unheard, h => h.ParallelDb is not null)
        ? $"all covered levels lie within {Rise} of the floor or run parallel to it, "
            + $"{Amount.Db(unheard.Max(h => h.ParallelDb)!.Value)} above at most"
        : $"no covered level rises {Rise} over the floor";

    private static string Position(HeardSpecimen silent) => silent.ParallelDb is { } above
        ? $"it runs parallel to the floor, {Amount.Db(above)} above it"
        : silent.ScatterDb is { } higher ? $"its sweeps scatter as noise does, {Amount.Db(higher)} over the floor"
        : $"it rises less than {Rise} over the floor at "
            + Amount.OutOf(silent.At.Points - silent.At.Over, silent.At.Points);

    private static string Told(HeardSpecimen[] unheard)
    {
        int points = unheard[0].At.Points;
        string alone = points < FloorLikeness.FewestPoints ? string.Empty : " that do not stand alone";
        return $"Told where each rises {Rise} over the floor at fewer than {HeardSpecimen.Fewest(points)} frequencies{alone}, "
            + "keeps its shape or scatters as it does; without a reference on either side also where it rises at less than half "
            + "of them and not in the reference's shape";
    }
}
