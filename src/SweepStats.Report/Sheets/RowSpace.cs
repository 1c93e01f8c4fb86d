namespace SweepStats.Report.Sheets;

/// <summary>Size of a picture of rows, and the decibels from left to right.</summary>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
/// <param name="Low">Decibels at the left.</param>
/// <param name="High">Decibels at the right.</param>
internal sealed record RowSpace(double Width, double Height, double Low, double High)
{
    /// <summary>Where rows begin: above stands what is measured.</summary>
    public const double Top = 22;

    private const double RoomForNames = 128;
    private const double RightMargin = 12;
    private const double BottomMargin = 24;

    /// <summary>Where the decibels begin; names stand before them.</summary>
    public double Left { get; } = RoomForNames;

    /// <summary>Where the decibels end.</summary>
    public double Right => Width - RightMargin;

    /// <summary>Where rows end; decibels are named below.</summary>
    public double Bottom => Height - BottomMargin;
}
