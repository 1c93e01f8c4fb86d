namespace SweepStats.Rehearsal;

/// <summary>What the receiver shows of a level: too little where it is overloaded, nothing over its limit, in steps.</summary>
internal sealed class Display(RehearsalPlan plan)
{
    // 10^(0.1) − 1: what is added to 1 to show 1 dB too little.
    private const double OneDecibel = 0.25892541179416723;

    /// <summary>The level shown, in dBm.</summary>
    public double Of(double level)
    {
        double shown = plan.CompressionDbm is { } onset
            ? level - (10 * Math.Log10(1 + (OneDecibel * Math.Pow(10, (level - onset) / 10))))
            : level;
        shown = Math.Min(shown, plan.LimitDbm ?? double.PositiveInfinity);
        return plan.QuantisationDb > 0 ? Math.Round(shown / plan.QuantisationDb) * plan.QuantisationDb : shown;
    }
}
