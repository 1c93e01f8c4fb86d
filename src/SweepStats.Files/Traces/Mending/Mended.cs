using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Mending;

/// <summary>A text on its way through what mends it; owns every text but the first.</summary>
internal sealed class Mended(TraceText first) : IDisposable
{
    private readonly List<MendedText> _steps = [];

    /// <summary>The text as it is now.</summary>
    public TraceText Text => _steps.Count > 0 ? _steps[^1].Text : first;

    /// <summary>Whether it is another than the first.</summary>
    public bool IsChanged => _steps.Count > 0;

    /// <summary>Takes out what stands between rows, and what stands between digits.</summary>
    public void Mend()
    {
        Take(RowPattern.Find(Text) is { } rows ? PageBreaks.Mend(Text, rows) : null);
        Take(RowPattern.Find(Text) is { } pattern ? GroupedDigits.Mend(Text, pattern) : null);
    }

    /// <summary>Goes on with a text; null changes nothing.</summary>
    public void Take(MendedText? step)
    {
        if (step is not null)
        {
            _steps.Add(step);
        }
    }

    /// <summary>A reading with what was done before it.</summary>
    public TraceReading Said(TraceReading reading) =>
        reading.Faults.IsEmpty ? reading with
        {
            Assumptions =
            [.. _steps.Select(s => s.Said).Where(s => s.Length > 0), .. reading.Assumptions],
        } : reading;

    /// <summary>Gives back every text but the first, which is its owner's.</summary>
    public void Dispose() => _steps.ForEach(s => s.Text.Dispose());
}
