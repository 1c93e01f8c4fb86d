using OxyPlot;
using SweepStats.Report.Specimens;

namespace SweepStats.Report.Drawing;

/// <summary>A line among those of a chart, told from the others by ink, and by where its marks begin.</summary>
/// <param name="Place">Its place from 0.</param>
/// <param name="Places">How many there are.</param>
internal readonly record struct OneOfSeveral(int Place, int Places)
{
    private const double MarkerSpacing = 96;
    private const double ArrowSpacing = 42;

    /// <summary>What it is drawn with.</summary>
    public Ink Ink => Ink.Lines[Place];

    /// <summary>Where its markers begin, so that those of several do not hide each other.</summary>
    public double MarkerStart => Shift(MarkerSpacing);

    /// <summary>The line.</summary>
    /// <param name="points">Its points.</param>
    /// <param name="title">Its name.</param>
    /// <param name="arrows">Whether arrows of bounds belong to it.</param>
    public Trace Line(IReadOnlyList<DataPoint> points, string title, bool arrows = false) => new()
    {
        Colour = Ink.Colour,
        Points = points,
        Dash = Ink.Dash,
        Marker = Ink.Marker,
        MarkerStart = MarkerStart,
        MarkerSpacing = MarkerSpacing,
        LoneDots = true,
        Title = title,
        ArrowStyle = arrows ? Place : null,
    };

    /// <summary>Its bounds.</summary>
    /// <param name="bounds">The bounds.</param>
    /// <param name="title">Its name, where it has no line; null where the line has it.</param>
    public OpenBounds Arrows(IReadOnlyList<DataPoint> bounds, string? title) => new()
    {
        Colour = Ink.Colour,
        Bounds = bounds,
        Length = 16,
        Style = Place,
        Spacing = ArrowSpacing,
        Shift = Shift(ArrowSpacing),
        Title = title,
    };

    private double Shift(double spacing) => (Place + 0.5) * spacing / Places;
}
