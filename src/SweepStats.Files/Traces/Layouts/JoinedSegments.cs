namespace SweepStats.Files.Traces.Layouts;

/// <summary>The points of segments behind each other.</summary>
internal sealed class JoinedSegments(int segments)
{
    private readonly List<double> _hertz = [];
    private readonly List<double> _levels = [];
    private readonly List<int> _first = new(segments);
    private readonly List<int> _lines = new(segments);

    /// <summary>The frequencies in Hz.</summary>
    public double[] Hertz => [.. _hertz];

    /// <summary>The level at each.</summary>
    public double[] Levels => [.. _levels];

    /// <summary>Adds the first points of a segment.</summary>
    public void Add(Segment segment, int points)
    {
        _first.Add(_hertz.Count);
        _lines.Add(segment.Line);
        for (int k = 0; k < points; k++)
        {
            _hertz.Add(segment.Range.Start + (k * segment.Range.Step));
            _levels.Add(segment.Levels[k]);
        }
    }

    /// <summary>The line from 1 of a point.</summary>
    public int Line(int point)
    {
        int at = _first.BinarySearch(point);
        return _lines[at >= 0 ? at : ~at - 1];
    }
}
