namespace SweepStats.Report.Text;

/// <summary>
/// Lines of a console up to the height of one screen: what does not fit is refused, so that the caller says where it is told.
/// </summary>
/// <param name="columns">Width that heights are reckoned with.</param>
/// <param name="kept">Lines of the screen kept free for what ends it.</param>
internal sealed class ScreenLines(int columns, int kept)
{
    /// <summary>A first screen has no more lines.</summary>
    public const int Most = 25;

    private readonly List<string> _lines = [];
    private int _height;

    /// <summary>The lines so far, unwrapped.</summary>
    public IReadOnlyList<string> Lines => _lines;

    /// <summary>Lines of the screen that are left.</summary>
    public int Left => Most - kept - _height;

    /// <summary>Adds lines that a reader cannot do without, whatever room is left.</summary>
    public void Add(params IEnumerable<string> lines)
    {
        foreach (string line in lines)
        {
            _lines.Add(line);
            _height += WrappedLine.Of(line, columns).Count;
        }
    }

    /// <summary>Adds lines that belong together if all of them fit.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="beside">Lines of the screen to leave for what follows.</param>
    /// <returns>Whether they were added.</returns>
    public bool TryAdd(IReadOnlyList<string> lines, int beside = 0)
    {
        bool fits = lines.Sum(line => WrappedLine.Of(line, columns).Count) <= Left - beside;
        if (fits)
        {
            Add(lines);
        }

        return fits;
    }
}
