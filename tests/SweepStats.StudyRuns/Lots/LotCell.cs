using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Lots;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;

namespace SweepStats.StudyRuns.Lots;

/// <summary>A kind of campaign whose lots are compared. By default the lots are alike.</summary>
/// <param name="Specimens">Specimens of each lot.</param>
public sealed record LotCell(ImmutableArray<int> Specimens)
{
    /// <summary>Points of a sweep.</summary>
    public const int Points = 21;

    private const double ReferenceDb = 70;

    // Where the floor hides half of the readings: three sweeps of 20 looks, the reference 70 dB over the noise.
    private const double CapDb = 72;

    /// <summary>Standard deviation in dB by which specimens of a lot differ as whole curves.</summary>
    public double SpecimenDb { get; init; } = 1;

    /// <summary>
    /// The same from frequency to frequency, for each placement, or each specimen where placements are not named.
    /// </summary>
    public double FrequencyDb { get; init; } = 0.3;

    /// <summary>How many times as much specimens of each lot differ; empty for alike lots.</summary>
    public ImmutableArray<double> Spreads { get; init; } = [];

    /// <summary>Placements; 0 leaves them unnamed.</summary>
    public int Placements { get; init; }

    /// <summary>Standard deviation in dB between placements.</summary>
    public double PlacementDb { get; init; }

    /// <summary>What the floor hides.</summary>
    public Capping Capping { get; init; }

    /// <summary>Where a lot differs from the others.</summary>
    public ImmutableArray<LotStep> Steps { get; init; } = [];

    /// <summary>The campaign without its draws.</summary>
    internal RehearsalPlan Plan => new()
    {
        Points = Points,
        Lots = Specimens.Length,
        SpecimensPerLot = Specimens.Max(),
        SpecimenDeviationDb = SpecimenDb,
        LotSpreads = Spreads,
        PlacementScatterDb = FrequencyDb,
        Placements = Placements,
        PlacementDeviationDb = PlacementDb,
        CoveredSweeps = Placements > 0 ? 1 : 3,
        LotSteps = Steps,
        FloorDbm = -100,
        ReferenceDbm = -100 + ReferenceDb,
        ShieldingStartDb = Capping switch
        {
            Capping.None => 20,
            Capping.Quarter => CapDb - 22.5,
            Capping.Half => CapDb - 15,
            _ => CapDb
        },
        ShieldingStopDb = Capping switch
        {
            Capping.None => 50,
            Capping.Quarter => CapDb + 7.5,
            Capping.Half => CapDb + 15,
            _ => CapDb
        },
    };

    /// <summary>Draws the campaign of a seed and compares its lots.</summary>
    internal (LotComparison Lots, Tally Capped) Compare(ulong seed, LotQuestion question)
    {
        Campaign drawn = Rehearser.Draw(Plan with { Seed = seed }).Campaign;
        var read = ReadCampaign.Of(drawn with { Sweeps = [.. drawn.Sweeps.Where(Kept)] }, Averaging.Power, []);
        return (LotComparer.Of(read.Aligned, read.Curves, [], question), read.Capped());
    }

    // Plans hold as many specimens in each lot; those beyond a lot's own number are left out.
    private bool Kept(Sweep sweep)
    {
        if (sweep.Lot is null)
        {
            return true;
        }

        int lot = Enumerable.Range(0, Specimens.Length).First(l => Rehearser.LotName(l) == sweep.Lot);
        return int.Parse(sweep.Specimen!.AsSpan(sweep.Lot.Length), CultureInfo.InvariantCulture) <= Specimens[lot];
    }
}
