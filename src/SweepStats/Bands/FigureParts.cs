using SweepStats.Statistics;

namespace SweepStats.Bands;

/// <summary>
/// What the error of a figure of a curve is made of: for its limits and for its uncertainty budget. Unit: that of the figure.
/// </summary>
internal readonly record struct FigureParts
{
    /// <summary>The figure, with bounds standing in where only those are known.</summary>
    public required double Value { get; init; }

    /// <summary>Bounds stand in somewhere: the figure is one itself.</summary>
    public required bool Bound { get; init; }

    /// <summary>Whether reference and covered sweeps repeat; without, none of the parts below is known.</summary>
    public required bool Repeated { get; init; }

    /// <summary>Scatter of the reference repeats, by the jackknife, and what the display rounds away.</summary>
    public Contribution Reference { get; init; }

    /// <summary>The same of the covered repeats.</summary>
    public Contribution Covered { get; init; }

    /// <summary>The floor's error, moving all frequencies together.</summary>
    public Contribution Floor { get; init; }

    /// <summary>
    /// How far the figure moves with an error that moves all frequencies together, per dB: less than 1 where bounds stand in,
    /// which do not move.
    /// </summary>
    public double TypeBShare { get; init; }

    /// <summary>How far the figure may lie to either side for not knowing how the receiver averages.</summary>
    public double AveragingShift { get; init; }
}
