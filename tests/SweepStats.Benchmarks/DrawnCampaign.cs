using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Benchmarks;

/// <summary>
/// A campaign as large as a bench takes it: sweeps of 1 601 points, ten of the floor, ten of the reference, twenty of each
/// specimen.
/// </summary>
internal static class DrawnCampaign
{
    private const ulong Seed = 20;

    // Shielding falls into the noise at the upper end of the band, so that values and bounds both have their share.
    public static Campaign Of(int lots, int specimensPerLot) => Rehearser.Draw(new RehearsalPlan
    {
        Seed = Seed,
        Points = 1601,
        FloorSweeps = 10,
        ReferenceSweeps = 10,
        CoveredSweeps = 20,
        Lots = lots,
        SpecimensPerLot = specimensPerLot,
        LotDeviationDb = 1,
        SpecimenDeviationDb = 0.5,
        ShieldingStartDb = 40,
        ShieldingStopDb = 75,
    }).Campaign;

    public static AlignedCampaign Aligned(int lots, int specimensPerLot) => Aligner.Align(Of(lots, specimensPerLot), null);

    public static AnalysisResult Analysed(int lots, int specimensPerLot) => Analysis.Run(Of(lots, specimensPerLot), Choices);

    public static NoiseFloor Floor(AlignedCampaign campaign) => NoiseFloorEstimator.Estimate(campaign.Floor!, Averaging.Power);

    public static ShieldingCurve Curve(AlignedCampaign campaign, NoiseFloor floor) =>
        new ShieldingEstimator(campaign, floor, Confidence.NinetyFive, []).Estimate(campaign.Covered[0]);

    private static AnalysisPlan Choices => new() { Averaging = Averaging.Power };
}
