using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Shielding;
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
/// floor's shape (<see cref="FloorLikeness"/>) or scatters as noise does (<see cref="NoiseScatter"/>).
/// </remarks>
internal sealed class NothingHeard : ICheck
{
    // As for a specimen that reads like nothing in its place.
    private const double NearlyAll = 0.9;

    // Four times the power of the floor: as much as noise from outside brings that was not there while the floor was taken
    // (judgement, no source).
    private const double RiseDb = 6;

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
        if (seen.Floor is not { } floor)
        {
            return [];
        }

        Dictionary<SpecimenName, SweepBlock> blocks = seen.Campaign.Covered.ToDictionary(c => c.Name, c => c.Block);
        Heard[] all = [.. seen.Curves.Select(c => Heard.Of(seen, c, blocks[c.Name], floor))];
        HashSet<SpecimenName> opened = [.. Opened(seen, floor)];
        HashSet<string> lots = [.. opened.Select(name => name.Lot)];
        if (all.Length > 0 && Array.TrueForAll(all, h => h.IsUnheard))
        {
            return lots.Count == 0 ? [OfAll(all)]
                : all.Where(h => !lots.Contains(h.Name.Lot)).GroupBy(h => h.Name.Lot)
                    .Select(lot => OfAll([.. lot], lot.Key));
        }

        return
        [
            .. OfLots(all, lots),
            .. all.GroupBy(h => h.Name.Lot).SelectMany(lot => InLot([.. lot])).Where(f => !opened.Contains(f.Specimen!.Value)),
        ];
    }

    // Noise of a wider filter lies higher too, and what lost its sign above all that is sent.
    private static IEnumerable<SpecimenName> Opened(Evidence seen, NoiseFloor floor)
    {
        double noise = Sample.Mean(floor.LevelDb.AsSpan()), sent = Sample.Mean(seen.Campaign.Reference.Means().AsSpan());
        return seen.Campaign.Excluded.Where(s => s.Role == SweepRole.Covered && s.Scale == seen.Campaign.Scale
            && Sample.Mean(s.Levels.AsSpan()) is var level && level - noise >= OpenedDb && level <= sent)
            .Select(SpecimenName.Of);
    }

    private Finding OfAll(Heard[] all, string? lot = null) => new()
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
            + $"{Amount.Db(OpenedDb)} over the floor and not over the reference.",
        NextStep = $"Open a specimen{(lot is null ? string.Empty : $" of lot {lot}")} without touching source or cables, look "
            + "that its level rises, and sweep it closed once more. Keep the opened sweep among the covered ones, excluded in "
            + "sweeps.csv because it was opened. If the closed one differs from before, or nothing rises, sweep all again.",
    };

    // Lots may truly differ, and so it is asked; where the best of the others nears the end of the range, better cloth is enough.
    private IEnumerable<Finding> OfLots(Heard[] all, HashSet<string> opened)
    {
        Heard[] heard = [.. all.Where(h => h.IsKnown)];
        double best = heard.Select(h => h.MiddleDb).DefaultIfEmpty(double.PositiveInfinity).Max();
        return all.GroupBy(h => h.Name.Lot)
            .Where(lot => !opened.Contains(lot.Key) && lot.All(h => h.IsUnheard)
                && Least(lot) - best >= AnotherThingDb)
            .Select(lot => Asked([.. lot], heard.Length, best));
    }

    // Of a specimen that cannot be read anywhere there is none.
    private static double Least(IEnumerable<Heard> lot) =>
        lot.Select(h => h.MiddleDb).Where(double.IsFinite).DefaultIfEmpty(double.NaN).Min();

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
        Message = $"Nothing is heard behind {silent.Name}: {Position(silent)}, where "
            + $"{(heard == 1 ? "the only one that is heard" : "the best of the others")} "
            + $"of its lot shields {Amount.Db(bestDb)}. So it reads too with the source off or a cable loose.",
        Basis = $"Its values and bounds, {Amount.Db(silent.MiddleDb)} in the middle, lie {Amount.Db(silent.MiddleDb - bestDb)} "
            + $"above that; told from {Amount.Db(AnotherThingDb)} on, where it rises so little at {NearlyAll * 100:0} % of the "
            + "frequencies, or keeps the floor's shape or scatter.",
        NextStep = $"Look whether the source was on and every cable tight while {silent.Name} was swept, and sweep it again. "
            + "If it stays so low, open it. Keep that sweep among the covered ones, excluded in sweeps.csv because it was "
            + "opened: that settles it.",
    };

    private Finding Asked(Heard[] lot, int heard, double bestDb)
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
                + $"{(heard == 1 ? "the other specimen" : $"the best of {heard} others")} shields {Amount.Db(bestDb)}. "
                + "So it reads too with the source off or a cable loose.",
            Basis = $"{Told(lot)}, from {Amount.Db(AnotherThingDb)} above the others on (here {Amount.Db(least - bestDb)}: "
                + $"values and bounds of {Amount.Db(least)} in the middle), unless a sweep of it that was left out stands "
                + $"{Amount.Db(OpenedDb)} over the floor and not over the reference. Nearer to the end of the range a somewhat "
                + "better cloth reads so too. A far better one does as well, and these sweeps cannot tell.",
            NextStep = $"Look whether the source was on and every cable tight while {named} was swept, and sweep it again. If it "
                + "stays in the floor, open a specimen of it. Keep that sweep among the covered ones, excluded in sweeps.csv "
                + "because it was opened: that settles it.",
        };
    }

    private static string ButFor(Heard[] unheard) => unheard.Max(h => h.Clear) is > 0 and var clear
        ? $", but for {Amount.OutOf(clear, unheard[0].Points)} at most" : string.Empty;

    private static string Covered(Heard[] unheard) => Array.Exists(unheard, h => h.ScatterDb is not null)
        ? $"all covered levels lie within {RiseDb:0} dB of the floor or scatter as noise does, up to "
            + $"{Amount.Db(unheard.Max(h => h.NoiseDb)!.Value)} above it"
        : Array.Exists(unheard, h => h.ParallelDb is not null)
        ? $"all covered levels lie within {RiseDb:0} dB of the floor or run parallel to it, "
            + $"{Amount.Db(unheard.Max(h => h.ParallelDb)!.Value)} above at most"
        : $"no covered level rises {RiseDb:0} dB over the floor";

    private static string Position(Heard silent) => silent.ParallelDb is { } above
        ? $"it runs parallel to the floor, {Amount.Db(above)} above it"
        : silent.ScatterDb is { } higher ? $"its sweeps scatter as noise does, {Amount.Db(higher)} over the floor"
        : $"it rises less than {RiseDb:0} dB over the floor at {Amount.OutOf(silent.Near, silent.Points)}";

    // A transmitter may raise it at fewer.
    private static string Told(Heard[] unheard) => $"Told where each rises {RiseDb:0} dB over the floor at fewer than "
        + $"{Heard.Fewest(unheard[0].Points)} frequencies, keeps its shape or scatters as it does";

    /// <summary>What comes through a specimen.</summary>
    /// <param name="Name">Which specimen.</param>
    /// <param name="Near">Frequencies at which it hardly rises over the floor.</param>
    /// <param name="Points">Frequencies in all.</param>
    /// <param name="MiddleDb">Median of its values and bounds in dB; not a number where there are none.</param>
    /// <param name="ParallelDb">How far above the floor it runs parallel to it, in dB; null where it does not.</param>
    /// <param name="ScatterDb">How far above the floor it scatters as noise does, in dB; null where it does not.</param>
    private sealed record Heard(
        SpecimenName Name, int Near, int Points, double MiddleDb, double? ParallelDb, double? ScatterDb)
    {
        /// <summary>How far above the floor it is nothing but noise, in dB; null where that does not show.</summary>
        public double? NoiseDb => ParallelDb ?? ScatterDb;

        /// <summary>Frequencies at which it may show the source.</summary>
        public int Clear => NoiseDb is null ? Points - Near : 0;

        public bool IsSilent => NoiseDb is not null || Near >= NearlyAll * Points;

        public bool IsUnheard => IsSilent && Clear < Fewest(Points);

        public bool IsKnown => !IsSilent && double.IsFinite(MiddleDb);

        /// <summary>The fewest frequencies that show that something was sent.</summary>
        public static int Fewest(int points) => Math.Max(FewestHeard, (int)Math.Ceiling(ShareHeard * points));

        public static Heard Of(Evidence seen, ShieldingCurve curve, SweepBlock covered, NoiseFloor floor)
        {
            double[] known = [.. curve.Readings.ValuesDb.ToArray().Where(double.IsFinite)];
            int near = NearOf(curve.Readings.CoveredDb, floor.LevelDb.AsSpan());
            double? parallel = near < curve.Readings.Length ? FloorLikeness.RiseDb(curve, floor) : null;
            return new Heard(curve.Name, near, curve.Readings.Length, known.Length == 0 ? double.NaN : Sample.Median(known),
                parallel, near < curve.Readings.Length && parallel is null
                    ? NoiseScatter.RiseDb(seen, curve, covered, floor) : null);
        }

        private static int NearOf(ReadOnlySpan<double> coveredDb, ReadOnlySpan<double> floorDb)
        {
            int near = 0;
            for (int f = 0; f < coveredDb.Length; f++)
            {
                near += coveredDb[f] - floorDb[f] >= RiseDb ? 0 : 1;
            }

            return near;
        }
    }
}
