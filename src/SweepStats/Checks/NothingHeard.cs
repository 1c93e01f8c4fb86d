using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// A specimen that lies in the floor all over, where others of its lot let far more through: it shields far better, or nothing
/// was sent. Where all specimens lie in the floor, nothing in the campaign shows that anything was.
/// </summary>
/// <remarks>
/// Sweeps with the source off, or a cable loose, read as the best cloth of all, and their bounds lie above the truth. Its own
/// sweeps cannot tell, so the others of its lot, which are of one cloth, decide whether it is asked; of a lot that is not heard
/// at all the other lots do, though lots may truly differ. Where none is heard, only a sweep of an opened specimen shows that the
/// source was on: it is looked for among the covered sweeps that were left out, and settles it for a lot too.
/// </remarks>
internal sealed class NothingHeard : ICheck
{
    // As for a specimen that reads like nothing in its place.
    private const double NearlyAll = 0.9;

    // A hundred times the power: pieces of one cloth do not differ by it (judgement, no source).
    private const double AnotherThingDb = 20;

    // A transmitter that came after the floor was taken stands clear at a few frequencies, and shows nothing of what is sent
    // (judgement, no source).
    private const double ShareHeard = 0.05;
    private const int FewestHeard = 2;

    // A filter ten times as wide lets ten times the noise through; this is ten times more.
    private const double OpenedDb = 20;

    public string Code => "nothing-heard";

    public string? UntestedBecause(Evidence seen) => Lacking.Floor(seen);

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        Heard[] all = [.. seen.Curves.Select(Heard.Of)];
        HashSet<string> opened = [.. OpenedLots(seen)];
        if (all.Length > 0 && Array.TrueForAll(all, h => h.IsUnheard))
        {
            return opened.Count > 0 ? [] : [OfAll(all)];
        }

        return [.. OfLots(all, opened), .. all.GroupBy(h => h.Name.Lot).SelectMany(lot => InLot([.. lot]))];
    }

    // Noise of a wider filter lies higher too, and what lost its sign above all that is sent.
    private static IEnumerable<string> OpenedLots(Evidence seen)
    {
        if (seen.Floor is not { } floor)
        {
            return [];
        }

        double noise = Sample.Mean(floor.LevelDb.AsSpan()), sent = Sample.Mean(seen.Campaign.Reference.Means().AsSpan());
        return seen.Campaign.Excluded.Where(s => s.Role == SweepRole.Covered && s.Scale == seen.Campaign.Scale
            && Sample.Mean(s.Levels.AsSpan()) is var level && level - noise >= OpenedDb && level <= sent)
            .Select(s => SpecimenName.Of(s).Lot);
    }

    private Finding OfAll(Heard[] all) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = SweepRole.Covered,
        Message = $"Nothing is heard behind {(all.Length == 1 ? all[0].Name.ToString() : $"any of {all.Length} specimens")}: all "
            + $"covered sweeps lie in the floor{ButFor(all)}. So they read too with the source off, with a cable loose, or where "
            + "the floor was taken with the source on.",
        Basis = $"The floor hides {Amount.OutOf(all.Min(h => h.Hidden), all[0].Points)} or more of each, and none stands clear "
            + $"of it at {ShareHeard * 100:0} % of the frequencies: at fewer a transmitter may. Told from {NearlyAll * 100:0} % "
            + $"on, unless a covered sweep that was left out stands {Amount.Db(OpenedDb)} over the floor and not over the "
            + "reference.",
        NextStep = "Open a specimen and look that its level rises while the source is on. Keep that sweep among the covered "
            + "ones, excluded in sweeps.csv because it was opened. If it does not rise, mend the path and sweep all again.",
    };

    // Lots may truly differ, and so it is asked; where the best of the others nears the end of the range, better cloth is enough.
    private IEnumerable<Finding> OfLots(Heard[] all, HashSet<string> opened)
    {
        Heard[] heard = [.. all.Where(h => h.IsKnown)];
        double best = heard.Select(h => h.MiddleDb).DefaultIfEmpty(double.PositiveInfinity).Max();
        return all.GroupBy(h => h.Name.Lot)
            .Where(lot => !opened.Contains(lot.Key) && lot.All(h => h.IsUnheard)
                && lot.Min(h => h.MiddleDb) - best >= AnotherThingDb)
            .Select(lot => Asked([.. lot], heard.Length, best));
    }

    private IEnumerable<Finding> InLot(Heard[] lot)
    {
        Heard[] heard = [.. lot.Where(h => h.IsKnown)];
        if (heard.Length == 0)
        {
            yield break;
        }

        double best = heard.Max(h => h.MiddleDb);
        foreach (Heard silent in lot.Where(h => h.IsSilent && h.MiddleDb - best >= AnotherThingDb))
        {
            yield return Asked(silent, heard.Length, best);
        }
    }

    private Finding Asked(Heard silent, int heard, double bestDb) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = SweepRole.Covered,
        Specimen = silent.Name,
        Size = new Decibels(silent.MiddleDb - bestDb),
        Bias = Bias.Unknown,
        Misleads = true,
        Message = $"Nothing is heard behind {silent.Name}: it lies in the floor at "
            + $"{Amount.OutOf(silent.Hidden, silent.Points)}, where "
            + $"{(heard == 1 ? "the other" : "the best of the others")} "
            + $"of its lot shields {Amount.Db(bestDb)}. So it reads too with the source off or a cable loose.",
        Basis = $"Its bounds, {Amount.Db(silent.MiddleDb)} in the middle, lie {Amount.Db(silent.MiddleDb - bestDb)} "
            + "above that; "
            + $"told from {Amount.Db(AnotherThingDb)} on, where {NearlyAll * 100:0} % of the frequencies lie in the floor.",
        NextStep = $"Look whether the source was on and every cable tight while {silent.Name} was swept, and sweep it again.",
    };

    private Finding Asked(Heard[] lot, int heard, double bestDb)
    {
        double least = lot.Min(h => h.MiddleDb);
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
                + $"{(heard == 1 ? "the other specimen" : $"the best of {heard} others")} shields {Amount.Db(bestDb)}. "
                + "So it reads too with the source off or a cable loose.",
            Basis = $"The floor hides {Amount.OutOf(lot.Min(h => h.Hidden), lot[0].Points)}"
                + $"{(lot.Length == 1 ? string.Empty : " or more of each")}, and none stands clear of it at "
                + $"{ShareHeard * 100:0} % of the frequencies: at fewer a transmitter may. The bounds, "
                + $"{Amount.Db(least)} in the middle, lie {Amount.Db(least - bestDb)} above that. Told from "
                + $"{Amount.Db(AnotherThingDb)} and {NearlyAll * 100:0} % on, unless a sweep of it that was left out stands "
                + $"{Amount.Db(OpenedDb)} over the floor and not over the reference. Nearer to the end of the range a somewhat "
                + "better cloth reads so too. A far better one does as well, and these sweeps cannot tell.",
            NextStep = $"Look whether the source was on and every cable tight while {named} was swept, and sweep it again. If it "
                + "stays in the floor, open a specimen of it. Keep that sweep among the covered ones, excluded in sweeps.csv "
                + "because it was opened: that settles it.",
        };
    }

    private static string ButFor(Heard[] unheard) => unheard.Max(h => h.Clear) is > 0 and var clear
        ? $", but for {Amount.OutOf(clear, unheard[0].Points)} at most" : string.Empty;

    /// <summary>What comes through a specimen.</summary>
    /// <param name="Name">Which specimen.</param>
    /// <param name="Hidden">Frequencies that the floor hides.</param>
    /// <param name="Points">Frequencies in all.</param>
    /// <param name="MiddleDb">Median of its values and bounds in dB; not a number where there are none.</param>
    /// <param name="Clear">
    /// Frequencies at which it stands clear of the floor: where they are more than a few, the source was on.
    /// </param>
    private sealed record Heard(SpecimenName Name, int Hidden, int Points, double MiddleDb, int Clear)
    {
        public bool IsSilent => Hidden >= NearlyAll * Points;

        public bool IsUnheard => IsSilent && Clear < Math.Max(FewestHeard, ShareHeard * Points);

        public bool IsKnown => !IsSilent && double.IsFinite(MiddleDb);

        public static Heard Of(ShieldingCurve curve)
        {
            double[] known = [.. curve.Readings.ValuesDb.ToArray().Where(double.IsFinite)];
            int hidden = Enumerable.Range(0, curve.Readings.Length).Count(f => curve.Readings.Mark(f).HiddenByFloor);
            return new Heard(curve.Name, hidden, curve.Readings.Length, known.Length == 0 ? double.NaN : Sample.Median(known),
                curve.Readings.Counted(ShieldingState.Clear));
        }
    }
}
