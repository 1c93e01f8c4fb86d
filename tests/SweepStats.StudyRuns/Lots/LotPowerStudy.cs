using System.Collections.Immutable;
using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Rehearsal;

namespace SweepStats.StudyRuns.Lots;

/// <summary>Over which part of the band a lot is off.</summary>
public enum OffWhere
{
    /// <summary>Everywhere.</summary>
    Everywhere,

    /// <summary>A fifth of the frequencies below the middle of the band.</summary>
    LowerFifth,

    /// <summary>The highest fifth of the frequencies.</summary>
    HighestFifth,
}

/// <summary>How often a lot that is off was found.</summary>
/// <param name="Capping">What the floor hid.</param>
/// <param name="Where">Where the lot was off.</param>
/// <param name="Deviations">By how many standard deviations of specimens it shielded less.</param>
/// <param name="Band">Found by the answer for the band, at 5 %.</param>
/// <param name="Stretch">Campaigns with a stretch of frequencies at which lots differ.</param>
/// <param name="Right">Of these, those whose strongest stretch names the lot that is off.</param>
/// <param name="Wrong">Of these, those whose strongest stretch names another lot.</param>
public sealed record LotPowerRow(Capping Capping, OffWhere Where, double Deviations, Tally Band, Tally Stretch,
    Tally Right, Tally Wrong);

/// <summary>Compares three lots of four specimens, one of which is off.</summary>
public static class LotPowerStudy
{
    private const string Off = "B";

    /// <summary>Sizes in standard deviations of specimens.</summary>
    public static ImmutableArray<double> Sizes { get; } = [0.5, 1, 2, 3, 5];

    /// <summary>Draws campaigns and counts.</summary>
    public static LotPowerRow Run(Capping capping, OffWhere where, double deviations, StudyDraws draws)
    {
        LotCell cell = Cell(capping, where, deviations);
        var found = new LotComparison[draws.Campaigns];
        Parallel.For(0, found.Length, i => found[i] = cell.Compare(draws.Seed + (ulong)i, new LotQuestion()).Lots);
        LotStretch[] strongest = [.. found.Where(f => f.Stretches.Length > 0).Select(f => f.Stretches[0])];
        return new LotPowerRow(
            capping, where, deviations,
            Tally.Over(found.Select(f => (bool?)(f.Whole.Probability < LotSizeStudy.Level))),
            new Tally(strongest.Length, found.Length),
            new Tally(strongest.Count(s => s.Lot == Off), strongest.Length),
            new Tally(strongest.Count(s => s.Lot is not null && s.Lot != Off), strongest.Length));
    }

    private static LotCell Cell(Capping capping, OffWhere where, double deviations)
    {
        LotCell alike = new([4, 4, 4]) { Capping = capping };
        double change = -deviations * Math.Sqrt((alike.SpecimenDb * alike.SpecimenDb) + (alike.FrequencyDb * alike.FrequencyDb));
        return alike with { Steps = [new LotStep(Off, new Decibels(change), Band(where))] };
    }

    // 21 points from 30 MHz to 1 GHz; four of them from a point on, ends between points.
    private static FrequencyBand Band(OffWhere where)
    {
        static Hertz At(double point) => new(30e6 * Math.Pow(1e9 / 30e6, point / (LotCell.Points - 1)));
        return where switch
        {
            OffWhere.Everywhere => new FrequencyBand(new Hertz(30e6), new Hertz(1e9)),
            OffWhere.LowerFifth => new FrequencyBand(At(4.5), At(8.5)),
            _ => new FrequencyBand(At(16.5), new Hertz(1e9)),
        };
    }
}
