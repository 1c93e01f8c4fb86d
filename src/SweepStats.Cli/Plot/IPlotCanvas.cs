namespace SweepStats.Cli.Plot;

/// <summary>A field of dots that prints as lines of text.</summary>
internal interface IPlotCanvas
{
    /// <summary>Dots from left to right.</summary>
    int Columns { get; }

    /// <summary>Dots from top to bottom.</summary>
    int Rows { get; }

    /// <summary>Sets the dots of a column from a row down to another, both included.</summary>
    void Fill(int column, int top, int bottom);

    /// <summary>What to print, from top to bottom, without blanks at the ends.</summary>
    IReadOnlyList<string> Lines();
}
