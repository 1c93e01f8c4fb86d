using SweepStats.Alignment;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Plate sweeps that read like the reference or like the covered sweeps of a specimen.</summary>
/// <remarks>
/// A plate may read like a specimen where all that arrives behind either comes round it. Then no specimen can read far lower
/// than the plate: where one does, the plate was not in place, or not alone. Where none does, either may be, and looking costs
/// less than sealing edges.
/// </remarks>
internal static class MistakenPlate
{
    // A single sweep is told by each frequency. Noise adds less than 1 dB from here on; nearer to it all sweeps are alike.
    private const double ClearOfNoiseDb = 6;

    // All plate sweeps are told by the band as a whole: a plate that leaks nothing rises by nothing, whatever a specimen does.
    // The median of single looks at noise lies 0.9 dB over their log mean, and a median of normal values scatters by 1.25 times
    // as much as their mean.
    private const double ShownDb = 2.5, Errors = 3, OfMedian = 1.25;

    /// <summary>Why plates could not be looked at, as half a sentence; null where they could, or there are none.</summary>
    public static string? UntestedBecause(Evidence seen) => seen.Floor is null && !Plates(seen).IsEmpty
        ? "without a floor nobody knows whether plate sweeps show more than noise" : null;

    /// <summary>Single sweeps that differ from the other plates.</summary>
    public static IEnumerable<MistakenSweep> Single(Evidence seen)
    {
        ImmutableArray<SetAsideSweep> plates = Plates(seen);
        double[] levels = [.. plates.Select(p => Sample.Mean(p.Levels.AsSpan()))];
        return levels.Length < 2 || levels.Max() - levels.Min() < MistakenSweeps.FarDb / 2 ? []
            : MistakenSweeps.In(plates, [.. Kinds(seen, levels.Min(), levels.Max()).Where(k => IsClear(seen, k.MiddleDb))]);
    }

    /// <summary>The plate as a whole.</summary>
    public static IEnumerable<Finding> Whole(Evidence seen, string code)
    {
        ImmutableArray<SetAsideSweep> plates = Plates(seen);
        if (plates.IsEmpty || SourceLevelChange.IsPlateElsewhere(seen) || ExchangedPlate.IsLikely(seen))
        {
            yield break;
        }

        double[] plate = KindCurve.Middle([.. plates.Select(p => p.Levels.ToArray())]);
        double level = Sample.Mean(plate);
        bool IsAlike(KindCurve kind) => IsShown(seen, kind.MiddleDb, plates.Length) && kind.IsLike(plate);
        if (IsShown(seen, plate, plates.Length)
            && Kinds(seen, level, level).Where(IsAlike).MinBy(k => k.AwayDb(plate)) is { } like)
        {
            yield return Told(seen, code, like, plate);
        }
    }

    private static ImmutableArray<SetAsideSweep> Plates(Evidence seen) =>
        [.. SetAsideSweeps.OnGrid(seen.Campaign, SweepRole.Plate)];

    private static Finding Told(Evidence seen, string code, KindCurve like, double[] plate)
    {
        string kind = WrongKind.Kind(like.Role, like.Specimen, one: false);
        bool open = like.Role == SweepRole.Reference;
        string left = open ? "the plate was not in place" : "the specimen was in place of the plate";
        SpecimenName? lower = seen.Campaign.Covered.FirstOrDefault(c => IsBelow(c.Block.Means(), plate))?.Name;
        return new Finding
        {
            Code = code,
            Severity = lower is null ? Severity.Warning : Severity.Fault,
            Role = SweepRole.Plate,
            Size = new(like.AwayDb(plate)),
            // A plate that reads too high only widens the intervals.
            Misleads = true,
            Message = $"The plate reads like {kind}: either {left}, or "
                + (lower is { } name ? $"files were exchanged. It does not leak as it reads, since {name} reads far lower."
                    : "all that is read there comes round it."),
            Basis = $"At {Amount.OutOf(like.Agreeing(plate), plate.Length)} the middle of the plate sweeps lies within three "
                + "deviations of those; "
                + $"half of them are nearer than {Amount.Db(like.AwayDb(plate))}.",
            NextStep = $"Look whether {(open ? "the plate was in place" : left)}; take the plate again with nothing else in "
                + "its place. Only if it reads the same seal the edges.",
        };
    }

    private static bool IsBelow(ImmutableArray<double> covered, double[] plate) =>
        covered.Zip(plate).Count(p => p.Second - p.First >= MistakenSweeps.FarDb) >= KindCurve.Most * plate.Length;

    // Reference and specimens, as far as they read about as high.
    private static KindCurve[] Kinds(Evidence seen, double lowest, double highest)
    {
        bool IsNear(SweepBlock block) =>
            Sample.Mean(block.Means().AsSpan()) is var level
                && level >= lowest - MistakenSweeps.FarDb && level <= highest + MistakenSweeps.FarDb;
        return
        [
            .. seen.Campaign.Covered.Where(c => IsNear(c.Block)).Select(c => KindCurve.Of(c.Block, c.Name)),
            .. IsNear(seen.Campaign.Reference) ? [KindCurve.Of(seen.Campaign.Reference)] : Array.Empty<KindCurve>(),
        ];
    }

    private static bool IsClear(Evidence seen, IReadOnlyList<double> levels) =>
        Rises(seen, levels) is { Length: > 0 } rises
            && rises.Count(rise => rise >= ClearOfNoiseDb) >= KindCurve.Most * rises.Length;

    private static bool IsShown(Evidence seen, IReadOnlyList<double> levels, int sweeps)
    {
        double[] rises = Rises(seen, levels);
        double error = OfMedian * (seen.Floor?.ReadingDeviationDb ?? 0) / Math.Sqrt(Math.Max(1, rises.Length * sweeps));
        return rises.Length > 0 && Sample.Median(rises) >= ShownDb + seen.Floor!.HalfWidthDb + (Errors * error);
    }

    // Over the noise in dB; none where it is not known.
    private static double[] Rises(Evidence seen, IReadOnlyList<double> levels) =>
        seen.Floor is not { } floor ? [] : [.. levels.Select((level, f) => level - floor.LevelDb[f])];
}
