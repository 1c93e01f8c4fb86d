using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// A specimen with which as much arrives as with nothing in its place: swept without it, or it truly shields nothing.
/// </summary>
/// <remarks>
/// Its own sweeps cannot tell which, so it is asked. How hard, others decide: specimens of one lot are of one cloth, and lots may
/// truly differ. A lot that reads so as a whole is asked about where all others shield well; where others shield little it is
/// only said. Where nothing shields at all, the bench is asked about, unless one specimen is stated to shield nothing.
/// </remarks>
internal sealed class NotInPlace : ICheck
{
    // As far as an untouched set-up moves between two roles, cables and all (judgement, no source).
    private const double AlikeDb = 2;

    // Further above the reference it is no missing specimen that makes it.
    private const double FarthestAboveDb = -10;

    // Nearly all, so that a cloth that shields in a part of the band is not asked about.
    private const double NearlyAll = 0.9;

    // More of them are a list that nobody reads.
    private const int MostNamed = 2;

    public string Code => "not-in-place";

    public string? UntestedBecause(Evidence seen) => seen.Curves.Any(c => Level.Of(c) is not null) ? null
        : "no reference stands clear of the floor";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        Level[] levels = [.. seen.Curves.Select(Level.Of).OfType<Level>()];
        Level[] open = [.. levels.Where(l => l.IsOpen && !seen.ShieldNothing.Contains(l.Name))];
        if (open.Length == 0)
        {
            yield break;
        }

        if (open.Length > 1 && open.Length == seen.Curves.Length && Array.TrueForAll(open, o => o.MiddleDb >= -AlikeDb))
        {
            yield return OfAll(open);
            yield break;
        }

        var others = new Others(levels);
        Level[] doubtful = [.. open.Where(o => others.Of(o).Severity != Severity.Note)];
        foreach (IGrouping<string, Level> lot in doubtful.GroupBy(d => d.Name.Lot))
        {
            foreach (Level[] asked in Whole(lot, levels) ? [[.. lot]] : lot.Select(one => new[] { one }))
            {
                yield return Asked(asked, others.Of(asked[0]));
            }
        }

        if (open.Except(doubtful).ToArray() is { Length: > 0 } rest)
        {
            yield return Said(rest, levels.Any(l => !l.IsOpen));
        }
    }

    private static bool Whole(IGrouping<string, Level> lot, Level[] levels) =>
        levels.Count(l => l.Name.Lot == lot.Key) is > 1 and var all && all == lot.Count();

    // One poor cloth is a result; where none of several shields, it is more likely the bench (judgement, no source).
    private Finding OfAll(Level[] open) => Finding(open) with
    {
        Severity = Severity.Warning,
        Size = new Decibels(open.Max(o => o.MiddleDb)),
        Bias = Bias.TooSmall,
        Misleads = true,
        Message = $"All {open.Length} specimens read like the reference, as if the bench was never closed: each shows "
            + $"{Amount.Db(Math.Max(0, open.Max(o => o.MiddleDb)))} or less at half of the frequencies.",
        Basis = Rule(open) + "It misleads where two or more specimens were swept, all read so, and none is stated to shield "
            + "nothing.",
        NextStep = "Look whether the bench was closed, each specimen in place, and nothing in place for the reference; then "
            + "sweep again. If they were in place and truly shield nothing, naming one of them in campaign.toml settles it: "
            + $"shields_nothing = [\"{open[0].Name}\"] under [setup].",
    };

    private Finding Asked(Level[] open, OtherLevels others) => Finding(open) with
    {
        Severity = others.Severity,
        Size = new Decibels(others.MostDb),
        // Whatever it would shield.
        Bias = Bias.TooSmall,
        Lot = open.Length == 1 ? null : open[0].Name.Lot,
        Misleads = true,
        Message = open is [var one]
            ? $"{one.Name} reads like the reference, as if swept without it: {others.Told}. It stays in the result."
            : $"All {open.Length} specimens of lot {open[0].Name.Lot} read like the reference, as if swept without them: "
                + $"{others.Told}. They stay in the result.",
        NextStep = (open is [var only] ? $"Look whether {only.Name} was in place; put it in place and sweep it again. "
            : $"Look whether the specimens of lot {open[0].Name.Lot} were in place; put them in place and sweep them again. ")
            + OrSaySo(open),
    };

    private Finding Said(Level[] open, bool doOthersShield)
    {
        string named = Named(open);
        string reference = doOthersShield ? string.Empty : ", and nothing in place for the reference";
        return Finding(open) with
        {
            Message = $"{named} {(open.Length == 1 ? "shields" : "shield")} next to nothing: "
                + "about as much arrives as with nothing in place.",
            NextStep = $"Look whether {named} {(open.Length == 1 ? "was" : "were")} in place{reference}. {OrSaySo(open)}",
        };
    }

    private Finding Finding(Level[] open) => new()
    {
        Code = Code,
        Severity = Severity.Note,
        Role = SweepRole.Covered,
        Specimen = open.Length == 1 ? open[0].Name : null,
        Message = string.Empty,
        Basis = Rule(open) + $"It misleads where all others of its lot shield {Amount.Db(Others.SistersDb)} "
            + $"or one of them {Amount.Db(Others.AnotherThingDb)}, and where it is alone in its lot, or all of its lot read so, "
            + "and all other specimens shield as much as that.",
        NextStep = string.Empty,
    };

    private static string Rule(Level[] open) => $"Shielding of {Amount.Db(AlikeDb)} at most, or an interval that holds 0 dB, at "
        + $"{Amount.OutOf(open.Min(o => o.Alike), open[0].Seen)}{(open.Length == 1 ? string.Empty : " or more")}; told from "
        + $"{NearlyAll * 100:0} % on. ";

    private static string OrSaySo(Level[] open) => open.Length == 1
        ? $"If it was and truly shields nothing, say so in campaign.toml: shields_nothing = [\"{open[0].Name}\"] under [setup]."
        : $"Name those that truly shield nothing in campaign.toml: shields_nothing = [\"{open[0].Name}\", …] under [setup].";

    private static string Named(Level[] open) => open.Length <= MostNamed
        ? string.Join(" and ", open.Select(o => o.Name))
        : $"{open[0].Name} and {Amount.Count(open.Length - 1, "other", "others")}";

    /// <summary>What the specimens that one is held against shield, and how much the difference weighs.</summary>
    private sealed record OtherLevels(string Told, double MostDb, Severity Severity);

    /// <summary>The specimens that shield: those of one lot are of one cloth, lots may truly differ.</summary>
    private sealed class Others(Level[] levels)
    {
        // A cloth may be uneven, but not by ten times the power from piece to piece; a hundred times is another thing
        // (judgement, no source).
        public const double SistersDb = 10, AnotherThingDb = 20;

        // Who is alone, or in a lot that reads so as a whole, has only the other lots beside it.
        private readonly Dictionary<string, OtherLevels> _ofLot = levels.GroupBy(l => l.Name.Lot)
            .Where(lot => lot.Skip(1).Any() && !lot.All(l => l.IsOpen))
            .ToDictionary(lot => lot.Key, lot => InLot([.. lot.Where(l => !l.IsOpen)]));

        private readonly OtherLevels _ofLots = Apart([.. levels.Where(l => !l.IsOpen)]);

        public OtherLevels Of(Level open) => _ofLot.GetValueOrDefault(open.Name.Lot, _ofLots);

        private static OtherLevels InLot(Level[] others) =>
            new(Told(others, " of its lot"), Most(others), Weight(Least(others), Most(others)));

        private static OtherLevels Apart(Level[] others) =>
            new(Told(others, string.Empty), Most(others), WeightAlone(Least(others)));

        private static string Told(Level[] others, string whose) => others.Length == 1
            ? $"{others[0].Name} shields {Amount.Db(Most(others))}"
            : $"{others.Length} others{whose} shield {Amount.Db(Least(others))} to {Amount.Db(Most(others))}";

        private static double Least(Level[] others) => others.Length == 0 ? 0 : others.Min(o => o.MiddleDb);

        private static double Most(Level[] others) => others.Length == 0 ? 0 : others.Max(o => o.MiddleDb);

        private static Severity Weight(double least, double most) => least >= AnotherThingDb ? Severity.Fault
            : least >= SistersDb || most >= AnotherThingDb ? Severity.Warning : Severity.Note;

        private static Severity WeightAlone(double least) => least >= AnotherThingDb ? Severity.Warning : Severity.Note;
    }

    /// <summary>What a specimen shields over the band, as far as the reference shows it.</summary>
    /// <param name="Name">Which specimen.</param>
    /// <param name="MiddleDb">Median of its values and bounds in dB.</param>
    /// <param name="Alike">Frequencies at which it reads like nothing in its place.</param>
    /// <param name="Seen">Frequencies looked at.</param>
    private sealed record Level(SpecimenName Name, double MiddleDb, int Alike, int Seen)
    {
        public bool IsOpen => Alike >= NearlyAll * Seen && MiddleDb is >= FarthestAboveDb and <= AlikeDb;

        public static Level? Of(ShieldingCurve curve)
        {
            double[] values = curve.Readings.ValuesDb.ToArray();
            int[] seen = [.. Enumerable.Range(0, values.Length).Where(f => IsSeen(curve.Readings.Mark(f), values[f]))];
            return 2 * seen.Length <= values.Length ? null
                : new Level(curve.Name, Sample.Median([.. seen.Select(f => values[f])]),
                    seen.Count(f => IsAlike(curve.Readings, f)), seen.Length);
        }

        private static bool IsSeen(ReadingMark mark, double value) =>
            mark is { Ambient: false, ReferenceInFloor: false } && double.IsFinite(value);

        // A bound says that it shields at least so much, and not that it reads like nothing in its place.
        private static bool IsAlike(ShieldingReadings readings, int f) => readings.Mark(f).Kind switch
        {
            ReadingKind.Measured => readings.ValuesDb[f] <= AlikeDb || (readings.LowDb[f] <= 0 && readings.HighDb[f] >= 0),
            ReadingKind.Unrepeated => readings.ValuesDb[f] <= AlikeDb,
            _ => false,
        };
    }
}
