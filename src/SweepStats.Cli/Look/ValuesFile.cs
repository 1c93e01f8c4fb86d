using System.Globalization;
using SweepStats.Files.Results;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>The file that --values names. It appears whole or not at all: readings are gathered beside it and put in its place at the end.</summary>
internal sealed class ValuesFile : IDisposable
{
    private readonly string _shown;
    private readonly string _target;
    private readonly string _stage;
    private readonly FileStream _to;
    private readonly LookJson? _json;
    private readonly TraceValuesCsv? _csv;
    private int _refused;
    private bool _closed;

    /// <param name="target">A place that <see cref="ValuesPlace.Refusal"/> has nothing against.</param>
    /// <exception cref="IOException">Nothing can be written there.</exception>
    public ValuesFile(string target)
    {
        _shown = target;
        _target = ValuesPlace.Behind(target);
        string parent = Path.GetDirectoryName(_target)!;
        _stage = Path.Combine(parent, $".{Path.GetFileName(_target)}.{Guid.NewGuid():N}.part");
        try
        {
            Directory.CreateDirectory(parent);
            _to = File.Create(_stage);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new IOException($"{target}: the readings cannot be written, since nothing can be created in '{parent}'; name another file after --values", e);
        }

        _json = ValuesPlace.IsJson(target) ? new LookJson(_to) { WithValues = true } : null;
        _csv = _json is null ? new TraceValuesCsv(_to) : null;
    }

    public void Add(string file, SeenFile seen)
    {
        _json?.Add(file, seen);
        _csv?.Add(file, seen.Reading);
    }

    public void Refuse(string file, TraceReading reading)
    {
        _json?.Refuse(file, reading);
        _refused++;
    }

    /// <summary>Puts the file in its place, and says what a table cannot hold: files that were not read.</summary>
    /// <returns>A sentence, or null.</returns>
    public string? Commit()
    {
        _json?.End();
        Close();
        File.Move(_stage, _target, overwrite: true);
        return _refused == 0 || _json is not null
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"{_shown}: {(_refused == 1 ? "a file" : $"{_refused} files")} could not be read and {(_refused == 1 ? "has" : "have")} no rows here");
    }

    public void Dispose()
    {
        try
        {
            Close();
        }
        finally
        {
            File.Delete(_stage);
        }
    }

    private void Close()
    {
        if (_closed)
        {
            return;
        }

        _closed = true;
        _json?.Dispose();
        _csv?.Dispose();
        _to.Dispose();
    }
}
