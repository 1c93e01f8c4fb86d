namespace SweepStats.Rehearsal;

/// <summary>How far the source has moved.</summary>
internal static class Drift
{
    // What remains of an exponential way after a third of the campaign, so that nine tenths of the whole are done: (1 − x)/(1 −
    // x³) = 0.9, x² + x + 1 = 1/0.9.
    private static readonly double AfterThird = (Math.Sqrt(1 - (4 * (1 - (1 / 0.9)))) - 1) / 2;

    /// <summary>Share of the drift at a time from 0, the first sweep, to 1, the last.</summary>
    public static double Share(DriftShape shape, double time) => shape switch
    {
        DriftShape.WarmUp => (1 - Math.Pow(AfterThird, 3 * time)) / (1 - Math.Pow(AfterThird, 3)),
        _ => time,
    };
}
