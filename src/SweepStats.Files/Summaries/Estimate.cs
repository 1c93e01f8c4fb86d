using System.Globalization;
using System.Text.Json.Serialization;
using SweepStats.Bands;
using SweepStats.Statistics;
using static SweepStats.Files.Results.ResultNumber;

namespace SweepStats.Files.Summaries;

/// <summary>A figure as a summary holds it: a value with its interval, a bound, or unknown. Immutable.</summary>
/// <param name="Value">The value; null where only a bound is known, or nothing.</param>
/// <param name="Low">Lower end of the interval, or the bound from below; null where there is none.</param>
/// <param name="High">Upper end of the interval; null where there is none.</param>
[method: JsonConstructor]
public readonly record struct Estimate(double? Value, double? Low, double? High)
{
    /// <summary>Whether no number can belong to both: one interval ends below where the other begins.</summary>
    /// <param name="other">Another figure of the same kind, in the same unit.</param>
    public bool IsApartFrom(Estimate other) => Low > other.High || High < other.Low;

    /// <summary>How far the figure lies above another: of values, else of bounds; null where one is of the other kind.</summary>
    /// <param name="other">Another figure of the same kind, in the same unit.</param>
    public double? Above(Estimate other) =>
        Value is not null || other.Value is not null ? Value - other.Value : (Low - other.Low) ?? (High - other.High);

    /// <summary>"57.9 (56.3 to 59.5)", "at least 57.9" or "unknown", to one decimal and without a unit.</summary>
    public override string ToString() => this switch
    {
        { Value: { } value, Low: { } low, High: { } high } => $"{Tenths(value)} ({Tenths(low)} to {Tenths(high)})",
        { Value: { } value } => Tenths(value),
        { Low: { } low } => $"at least {Tenths(Math.Floor(low * 10) / 10)}",
        { High: { } high } => $"at most {Tenths(Math.Ceiling(high * 10) / 10)}",
        _ => "unknown",
    };

    /// <summary>A figure of a band.</summary>
    internal static Estimate Of(BandFigure figure) => new(Finite(figure.Value), Finite(figure.Low), Finite(figure.High));

    /// <summary>The same; null where there is none.</summary>
    internal static Estimate? Of(BandFigure? figure) => figure is { } stated ? Of(stated) : null;

    /// <summary>A value with the interval about it.</summary>
    internal static Estimate Of(double value, Interval? interval) => Of(new BandFigure(value, interval?.Low, interval?.High));

    private static string Tenths(double value) =>
        value.ToString("0.0", CultureInfo.InvariantCulture).Replace('-', '−').Replace("−0.0", "0.0", StringComparison.Ordinal);
}
