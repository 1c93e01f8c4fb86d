using System.Collections.Immutable;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;

namespace SweepStats.StudyRuns.Trust;

/// <summary>
/// What comes between source and receiver: transmitters, leaks, too little range, a specimen that seems to amplify.
/// </summary>
internal static class PathFaults
{
    private const double CarrierHertz = 433e6;
    private static readonly ImmutableArray<double> Carriers = [2, 3, 4, 5, 6, 8, 10, 12, 15, 20];

    private static readonly ImmutableArray<double> Depths = [-20, -10, -5, 0, 5, 10, 15, 20, 30];

    /// <summary>The curves: each a kind of fault, over its sizes.</summary>
    public static ImmutableArray<FaultCurve> All { get; } =
    [
        new("ambient", "steady carrier", "dB over the floor", Carriers, db => Carrier(db, 1)) { IsAbout = IsAtCarrier },
        new("ambient", "carrier in half of the sweeps", "dB over the floor", Carriers,
            db => Carrier(db, 0.5)) { IsAbout = IsAtCarrier },
        new("leakage", "plate below covered", "dB", [0, 5, 10, 15, 18, 19, 20, 21, 22, 25, 30],
            below => KnownFaults.Shielding(40, plan => plan with { PlateDb = 40 + below })),
        new("under-ranged", "reference over the floor", "dB", [4, 6, 8, 9, 9.5, 10, 10.5, 11, 12, 14], LowReference),
        new("capped", "covered over the floor", "dB", [-10, -5, -2, 0, 2, 4, 6, 8, 10, 15, 20],
            over => KnownFaults.Shielding(70 - over, plan => plan with { ReferenceRippleDb = 0 })),
        new("suspected-floor", "covered falls under the noise, reference swings by 3 dB", "dB", Depths, db => Floorless(db, 3)),
        new("suspected-floor", "the same, swings by 6 dB", "dB", Depths, db => Floorless(db, 6)),
        new("suspected-floor", "the same, swings by 12 dB", "dB", Depths, db => Floorless(db, 12)),
        new("negative-shielding", "covered over the reference", "dB", [0, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 1],
            over => KnownFaults.Shielding(-over, plan => plan)),
    ];

    private static TrustCase Carrier(double db, double share) =>
        KnownFaults.With(plan => plan with { Ambient = [new AmbientCarrier(new Hertz(CarrierHertz), new Decibels(db), share)] });

    // Half a step of the grid lies within 1 %.
    private static bool IsAtCarrier(Finding finding) =>
        finding.Where.Any(band => band.Start.Value < 1.01 * CarrierHertz && band.Stop.Value > 0.99 * CarrierHertz);

    // Linearity sweeps would drown here.
    private static TrustCase LowReference(double over) =>
        KnownFaults.Shielding(3,
            plan => plan with { ReferenceDbm = plan.FloorDbm + over, ReferenceRippleDb = 0, LinearitySourcesDbm = [] });

    // How far the covered signal lies under the noise at the end of the band; nobody took the floor.
    private static TrustCase Floorless(double under, double swing) =>
        KnownFaults.With(plan => plan with
        {
            FloorSweeps = 0,
            ReferenceRippleDb = swing,
            ShieldingStopDb = plan.ReferenceDbm - plan.FloorDbm + under,
        });
}
