namespace SweepStats.Report.Sheets;

/// <summary>How large the first picture is drawn: of the two the page shows the one that can be read in its window.</summary>
/// <param name="Kind">Class in the style sheet.</param>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
/// <param name="MostPoints">More points than this show nothing more.</param>
/// <param name="LongestName">Letters of a name that find room.</param>
internal sealed record PictureSize(string Kind, double Width, double Height, int MostPoints, int LongestName)
{
    /// <summary>For screens and paper. Two points in each unit of the width show nothing more.</summary>
    public static PictureSize Broad { get; } = new("plot broad", 720, 268, 700, 28);

    /// <summary>For telephones, where the other would be pushed sideways or shrink until nobody can read it.</summary>
    public static PictureSize Narrow { get; } = new("plot narrow", 350, 300, 350, 14);
}
