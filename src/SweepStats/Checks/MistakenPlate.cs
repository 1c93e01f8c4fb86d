using System.Collections.Immutable;
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
    // Noise adds less than 1 dB from here on; nearer to it all sweeps are alike.
    private const double ClearOfNoiseDb = 6;

    /// <summary>Single sweeps that differ from the other plates.</summary>
    public static IEnumerable<MistakenSweep> Single(Evidence seen)
    {
        ImmutableArray<SetAsideSweep> plates = Plates(seen);
        double[] levels = [.. plates.Select(p => Sample.Mean(p.Levels.AsSpan()))];
        return levels.Length < 2 || levels.Max() - levels.Min() < MistakenSweeps.FarDb / 2 ? []
            : MistakenSweeps.In(plates, Kinds(seen, levels.Min(), levels.Max()));
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
        if (Kinds(seen, level, level).Where(k => k.IsLike(plate)).MinBy(k => k.AwayDb(plate)) is { } like)
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
                + "its place. "
                + "Only if it reads the same seal the edges.",
        };
    }

    private static bool IsBelow(double[] covered, double[] plate) =>
        covered.Zip(plate).Count(p => p.Second - p.First >= MistakenSweeps.FarDb) >= KindCurve.Most * plate.Length;

    // Reference and specimens that stand clear of the noise, as far as they read about as high.
    private static List<KindCurve> Kinds(Evidence seen, double lowest, double highest)
    {
        if (seen.Floor is not { } floor)
        {
            return [];
        }

        bool IsNear(SweepBlock block) =>
            Sample.Mean(block.Means()) is var level && level >= lowest - MistakenSweeps.FarDb
                && level <= highest + MistakenSweeps.FarDb;
        bool IsClear(KindCurve kind) =>
            kind.MiddleDb.Zip(floor.LevelDb)
                .Count(p => p.First - p.Second >= ClearOfNoiseDb) >= KindCurve.Most * kind.MiddleDb.Count;
        return
        [
            .. seen.Campaign.Covered.Where(c => IsNear(c.Block)).Select(c => KindCurve.Of(c.Block, c.Name))
                .Concat(IsNear(seen.Campaign.Reference) ? [KindCurve.Of(seen.Campaign.Reference)] : Array.Empty<KindCurve>())
                .Where(IsClear),
        ];
    }
}
