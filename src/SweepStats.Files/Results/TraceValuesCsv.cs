using SweepStats.Files.Traces;

namespace SweepStats.Files.Results;

/// <summary>Every reading of every trace as it was understood: one row a reading, to the last bit.</summary>
public sealed class TraceValuesCsv : IDisposable
{
    /// <summary>
    /// First line. <c>point</c> counts from 1 within a trace; <c>unit</c> is that of <c>level</c> and empty where nothing states
    /// it. A cell is empty where there is no number or none that is finite.
    /// </summary>
    public const string Header = "file,trace,quantity,point,frequency_hz,level,unit,phase_deg,reverse_level_db";

    private readonly CsvRows _rows;

    /// <param name="to">Where to; stays open.</param>
    public TraceValuesCsv(Stream to) => _rows = new CsvRows(to, Header);

    /// <summary>All traces of a file, doubted and blank ones too.</summary>
    public void Add(string file, TraceReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        foreach (Trace trace in reading.Traces)
        {
            Add(file, trace);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _rows.Dispose();

    private void Add(string file, Trace trace)
    {
        string unit = trace.Unit?.Symbol() ?? "";
        for (int i = 0; i < trace.Levels.Length; i++)
        {
            _rows.Text(file).Text(trace.Column).Text(trace.Quantity).Count(i + 1);
            _rows.Cell(Exact(trace.Axis.Hertz[i])).Cell(Exact(trace.Levels[i])).Cell(unit);
            _rows.Cell(trace.Phases.IsEmpty ? "" : Exact(trace.Phases[i]));
            _rows.Cell(trace.ReverseLevels.IsEmpty ? "" : Exact(trace.ReverseLevels[i]));
            _rows.End();
        }
    }

    private static string Exact(double value) => double.IsFinite(value) ? ResultNumber.Exact(value) : "";
}
