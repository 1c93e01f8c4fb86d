using System.Globalization;
using SweepStats.Files.Places;
using SweepStats.Files.Results;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>
/// The file that --values names. It appears whole or not at all: readings are gathered beside it and put in its place at the end.
/// </summary>
internal sealed class ValuesFile : IDisposable
{
    private readonly string _shown;
    private readonly GatheredFile _file;
    private readonly LookJson? _json;
    private readonly TraceValuesCsv? _csv;
    private int _refused;
    private bool _closed;

    /// <param name="target">A place that <see cref="ValuesPlace.Refusal"/> has nothing against.</param>
    /// <exception cref="IOException">Nothing can be written there.</exception>
    public ValuesFile(string target)
    {
        _shown = target;
        string behind = ValuesPlace.Behind(target);
        try
        {
            _file = new GatheredFile(behind);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new IOException($"{target}: the readings cannot be written, since nothing can be created in "
                + $"'{Path.GetDirectoryName(behind)}'; name another file after --values", e);
        }

        _json = ValuesPlace.IsJson(target) ? new LookJson(_file.Content) { WithValues = true } : null;
        _csv = _json is null ? new TraceValuesCsv(_file.Content) : null;
    }

    /// <summary>Writes the readings of a file that could be read.</summary>
    public void Add(string file, SeenFile seen)
    {
        _json?.Add(file, seen);
        _csv?.Add(file, seen.Reading);
    }

    /// <summary>Tells of a file that could not be read: JSON says why, a table has no row for it and counts it.</summary>
    public void Refuse(string file, TraceReading reading)
    {
        _json?.Refuse(file, reading);
        _refused++;
    }

    /// <summary>Whether an error is one of writing this file.</summary>
    public bool IsMeant(IOException e) => _file.IsMeant(e);

    /// <summary>The same error as a sentence that names the file as the user did, and what to do.</summary>
    public IOException Told(IOException e) => GatheredFile.Told(e, _shown, "the readings", "name another file after --values");

    /// <summary>Puts the file in its place, and says what a table cannot hold: files that were not read.</summary>
    /// <returns>A sentence, or null.</returns>
    public string? Commit()
    {
        _json?.End();
        Close();
        _file.Commit(overwrite: true);
        return _refused == 0 || _json is not null
            ? null
            : string.Create(CultureInfo.InvariantCulture,
                $"{_shown}: {(_refused == 1 ? "a file" : $"{_refused} files")} could not be read and "
                    + $"{(_refused == 1 ? "has" : "have")} no rows here");
    }

    /// <summary>Removes what was gathered and not committed.</summary>
    public void Dispose()
    {
        try
        {
            Close();
        }
        catch (IOException)
        {
            // What was committed is closed already; of anything else nothing is kept.
        }
        finally
        {
            _file.Dispose();
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
    }
}
