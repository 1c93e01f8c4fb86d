using SweepStats.Quantities;
using static SweepStats.Report.Text.Printed;

namespace SweepStats.Report.Text;

/// <summary>
/// Levels, ratios and their limits in dB as a reader sees them: limits rounded away from the claim, so that no print-out promises
/// more than was computed.
/// </summary>
public static class PrintedLevel
{
    /// <summary>A ratio to the nearest tenth: "34.2 dB".</summary>
    public static string Ratio(double decibels) => Tenths(decibels, Math.Round) + " dB";

    /// <summary>A level to the nearest tenth with its unit: "−87.3 dBm".</summary>
    public static string Level(double decibels, LevelScale scale) => Tenths(decibels, Math.Round) + " " + Unit(scale);

    /// <summary>The unit that levels of a scale are printed in.</summary>
    public static string Unit(LevelScale scale) => scale.Symbol();

    /// <summary>A lower bound, rounded down: "≥ 52.3 dB". A bound is never printed without the sign.</summary>
    public static string Bound(Decibels bound) => $"≥ {LowTenths(bound.Value)} dB";

    /// <summary>An interval rounded outwards: "44.1 to 46.6 dB"; an open upper end reads "44.1 dB or more".</summary>
    public static string Interval(double low, double high) =>
        double.IsFinite(high) ? $"{LowTenths(low)} to {HighTenths(high)} dB" : $"{LowTenths(low)} dB or more";
}
