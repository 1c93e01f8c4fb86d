using System.Collections.Immutable;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;

namespace SweepStats.StudyRuns.Trust;

/// <summary>
/// What a receiver does to the levels: overload, clipping, coarse steps, and settings that are not what they are said to be.
/// </summary>
internal static class ReceiverFaults
{
    private const double BandwidthHz = 10e3;

    // 10^(0.1) − 1, as in the model of compression.
    private const double OneDecibel = 0.25892541179416723;

    /// <summary>The curves: each a kind of fault, over its sizes.</summary>
    public static ImmutableArray<FaultCurve> All { get; } =
    [
        new("saturation-step", "shortfall at the highest source level", "dB",
            [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.7, 1, 1.5, 2], Compressed),
        new("saturation-step", "shortfall of the reference, linearity sweeps 10 dB below it alone", "dB",
            [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.7, 1, 2, 3], size => TenBelow(Compressed(size))),
        new("saturation-plateau", "tops clipped, 201 points", "% of the band", [0, 0.5, 1, 2, 3, 5, 10, 20, 40],
            share => Clipped(share, 201)),
        new("saturation-plateau", "tops clipped, 1001 points", "% of the band", [0, 0.5, 1, 2, 5, 10, 20, 40],
            share => Clipped(share, 1001)),
        new("saturation-plateau", "tops clipped, 1001 points, no scatter", "% of the band", [0, 0.2, 0.5, 1, 2, 5],
            share => Unscattered(Clipped(share, 1001))),
        new("over-input", "reference over the stated maximum", "dB", [-0.5, -0.2, -0.1, 0, 0.1, 0.2, 0.5, 1], OverInput),
        new("quantised", "step of the display", "dB", [0, 0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, 1],
            step => KnownFaults.With(plan => plan with { QuantisationDb = step })),
        new("below-thermal", "floor below thermal noise", "dB", [0, 1, 1.5, 2, 2.5, 3, 4, 6], Cold),
        new("settings-changed", "floor taken too high", "dB", [0, 0.5, 1, 1.5, 2, 2.5, 3, 4, 6], FloorRaised),
        new("averaging-doubtful", "power averaging stated as sample", "looks", [1, 2, 3, 5, 10, 20],
            looks => Misstated(Averaging.Power, Averaging.Sample, looks)),
        new("averaging-doubtful", "power averaging stated as log", "looks", [1, 2, 3, 5, 10, 20, 50],
            looks => Misstated(Averaging.Power, Averaging.Log, looks)),
        new("averaging-doubtful", "log averaging stated as power", "looks", [1, 2, 3, 5, 10, 20, 50],
            looks => Misstated(Averaging.Log, Averaging.Power, looks)),
    ];

    // Short by the given amount at the middle of the reference level: 10·lg(1 + k·10^((level − onset)/10)) solved for the onset.
    private static TrustCase Compressed(double shortfall) => KnownFaults.With(plan => plan with
    {
        CompressionDbm = shortfall > 0
            ? plan.ReferenceDbm - (10 * Math.Log10((Math.Pow(10, shortfall / 10) - 1) / OneDecibel)) : null,
    });

    // As the user is told to take them: no other source level than the reference's own to compare with.
    private static TrustCase TenBelow(TrustCase faulty) =>
        faulty with { Drawn = faulty.Drawn with { LinearitySourcesDbm = [faulty.Drawn.SourceDbm - 10] } };

    // The share is that of the points whose level without scatter lies over the limit. Tops are rounded: the flatter, the more of
    // their readings scatter back under it.
    private static TrustCase Clipped(double percent, int points) => KnownFaults.With(plan =>
    {
        RehearsalPlan fine = plan with { Points = points };
        int clipped = (int)Math.Round(percent / 100 * points);
        double[] tops = Reference(fine);
        return fine with { LimitDbm = clipped > 0 ? (tops[clipped - 1] + tops[clipped]) / 2 : null };
    });

    private static TrustCase Unscattered(TrustCase faulty) =>
        faulty with { Drawn = faulty.Drawn with { ScatterDb = 0, SweepDeviationDb = 0 } };

    private static TrustCase OverInput(double over) =>
        KnownFaults.Clean with
        {
            Analysed =
            KnownFaults.Clean.Analysed with { MaximumInputDbm = Reference(KnownFaults.Clean.Drawn)[0] - over },
        };

    // Levels of the reference without noise and scatter, highest first.
    private static double[] Reference(RehearsalPlan plan) =>
    [
        .. Rehearser.Draw(plan with { ScatterDb = 0, SweepDeviationDb = 0, Looks = 1, FloorDbm = -300 }).Campaign.Sweeps.First(
            s => s.Role == SweepRole.Reference).Levels.OrderDescending(),
    ];

    private static TrustCase Cold(double below)
    {
        TrustCase cold = KnownFaults.With(
            plan => plan with { FloorDbm = ThermalNoise.DbmPerHertz() + (10 * Math.Log10(BandwidthHz)) - below, PlateDb = 200 });
        return cold with
        {
            Analysed =
            cold.Analysed with { Setup = new ReceiverSettings { ResolutionBandwidthHz = BandwidthHz } },
        };
    }

    // The upper part of the band shields more than the range, so that the covered level there is noise.
    private static TrustCase FloorRaised(double by) => KnownFaults.With(plan => plan with
    {
        ShieldingStopDb = 90,
        OddSweeps = [.. Enumerable.Range(1, plan.FloorSweeps).Select(number => new OddSweep(SweepRole.Floor, number, by))],
    });

    private static TrustCase Misstated(Averaging drawn, Averaging stated, double looks) =>
        new CleanCell(drawn, stated, looks, 5).Case(placements: false);
}
