namespace SweepStats.Files.Traces.Tables;

/// <summary>Collects the bad rows of a file and tells of the first few, so that one broken export does not fill the screen.</summary>
internal sealed class BadRows(FaultList faults)
{
    private const int MostListed = 5;

    private readonly List<(int Line, string Problem, string Remedy)> _rows = [];

    /// <summary>Adds a row by its line from 1.</summary>
    public void Add(int line, string problem, string remedy) => _rows.Add((line, problem, remedy));

    /// <summary>Hands the rows over as faults, in the order of their lines.</summary>
    public void Report()
    {
        _rows.Sort((a, b) => a.Line.CompareTo(b.Line));
        foreach ((int line, string problem, string remedy) in _rows.Take(MostListed))
        {
            faults.Add(line, problem, remedy);
        }

        if (_rows.Count > MostListed)
        {
            int more = _rows.Count - MostListed;
            faults.Add(_rows[MostListed].Line, FormattableString.Invariant($"and {more} more bad {(more == 1 ? "row" : "rows")} from here on"), "correct them too, or export the sweep again");
        }
    }
}
