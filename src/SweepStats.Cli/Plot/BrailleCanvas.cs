namespace SweepStats.Cli.Plot;

/// <summary>
/// Eight dots a character, as the braille patterns of Unicode (U+2800 to U+28FF) have them: two across, four down.
/// </summary>
/// <param name="width">Characters across.</param>
/// <param name="height">Lines.</param>
internal sealed class BrailleCanvas(int width, int height) : IPlotCanvas
{
    private const char Pattern = '\u2800';
    private const int Across = 2;
    private const int Down = 4;

    private readonly byte[] _cells = new byte[width * height];

    /// <inheritdoc/>
    public int Columns => width * Across;

    /// <inheritdoc/>
    public int Rows => height * Down;

    /// <inheritdoc/>
    public void Fill(int column, int top, int bottom)
    {
        for (int row = top; row <= bottom; row++)
        {
            _cells[(row / Down * width) + (column / Across)] |= Dot(column % Across, row % Down);
        }
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> Lines() =>
        [.. Enumerable.Range(0, height)
            .Select(line => new string([.. _cells.Skip(line * width).Take(width).Select(Character)]).TrimEnd())];

    // The empty pattern is not a blank everywhere: some fonts draw eight hollow dots.
    private static char Character(byte dots) => dots == 0 ? ' ' : (char)(Pattern + dots);

    // Dots 1 to 6 go down the two columns; 7 and 8 were added below them later.
    private static byte Dot(int across, int down) => (byte)(down < 3 ? 1 << ((3 * across) + down) : 0x40 << across);
}
