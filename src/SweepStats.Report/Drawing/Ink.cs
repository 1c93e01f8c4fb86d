using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>
/// Colours, dashes and markers of the charts. Every line also differs from its neighbours by dash and marker: prints are often
/// grey.
/// </summary>
/// <param name="Colour">Colour, dark enough on white for text.</param>
/// <param name="Dash">Dash pattern in pixels; null for a full line.</param>
/// <param name="Marker">Marker set along the line.</param>
internal readonly record struct Ink(OxyColor Colour, double[]? Dash, MarkerType Marker)
{
    /// <summary>Text, axes, the line that matters.</summary>
    public static OxyColor Black { get; } = OxyColor.FromRgb(0x1d, 0x22, 0x28);

    /// <summary>Secondary text.</summary>
    public static OxyColor Grey { get; } = OxyColor.FromRgb(0x55, 0x5b, 0x62);

    /// <summary>Grid lines.</summary>
    public static OxyColor Faint { get; } = OxyColor.FromRgb(0xde, 0xe0, 0xe2);

    /// <summary>Interval bands.</summary>
    public static OxyColor Blue { get; } = OxyColor.FromRgb(0x1f, 0x4e, 0x79);

    /// <summary>Requirements.</summary>
    public static OxyColor Red { get; } = OxyColor.FromRgb(0x9c, 0x2f, 0x1f);

    /// <summary>Lines of specimens side by side. No triangles: they would be taken for the heads of arrows.</summary>
    public static Ink[] Lines { get; } =
    [
        new(Blue, null, MarkerType.Circle),
        new(OxyColor.FromRgb(0x8a, 0x4b, 0x08), [9, 4], MarkerType.Square),
        new(OxyColor.FromRgb(0x2f, 0x6b, 0x3c), [2, 3], MarkerType.Diamond),
        new(OxyColor.FromRgb(0x6d, 0x2c, 0x63), [10, 3, 2, 3], MarkerType.Cross),
        new(OxyColor.FromRgb(0x1b, 0x6f, 0x7a), [5, 2], MarkerType.Plus),
        new(OxyColor.FromRgb(0x55, 0x5b, 0x62), null, MarkerType.Star),
        new(OxyColor.FromRgb(0x7d, 0x6a, 0x00), [14, 4], MarkerType.Circle),
        new(OxyColor.FromRgb(0x3a, 0x36, 0x8c), [4, 2, 2, 2, 2, 2], MarkerType.Square),
    ];

    /// <summary>The same colour, see-through.</summary>
    public static OxyColor Veil(OxyColor colour, byte strength) => OxyColor.FromAColor(strength, colour);
}
