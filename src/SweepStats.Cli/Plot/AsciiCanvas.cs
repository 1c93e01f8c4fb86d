namespace SweepStats.Cli.Plot;

/// <summary>One dot a character, for outputs that know no other.</summary>
internal sealed class AsciiCanvas : IPlotCanvas
{
    private const char Dot = '*';

    private readonly char[][] _lines;

    /// <param name="width">Characters across.</param>
    /// <param name="height">Lines.</param>
    public AsciiCanvas(int width, int height)
    {
        (Columns, Rows) = (width, height);
        _lines = [.. Enumerable.Range(0, height).Select(_ => Enumerable.Repeat(' ', width).ToArray())];
    }

    /// <inheritdoc/>
    public int Columns { get; }

    /// <inheritdoc/>
    public int Rows { get; }

    /// <inheritdoc/>
    public void Fill(int column, int top, int bottom)
    {
        for (int row = top; row <= bottom; row++)
        {
            _lines[row][column] = Dot;
        }
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> Lines() => [.. _lines.Select(line => new string(line).TrimEnd())];
}
