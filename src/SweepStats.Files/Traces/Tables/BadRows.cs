namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Collects the bad rows of a file and tells of the first few, so that one broken export does not fill the screen.
/// </summary>
internal sealed class BadRows(FaultList faults)
{
    private const int MostListed = 5;

    private const int MostCounted = 1000;

    private readonly SortedList<int, (string Problem, string Remedy)> _rows = [];
    private int _count;

    /// <summary>Whether so many rows are bad that it does not matter how many more are.</summary>
    public bool IsFull => _count >= MostCounted;

    /// <summary>Adds a row by its line from 1.</summary>
    public void Add(int line, string problem, string remedy)
    {
        _count++;
        _rows.TryAdd(line, (problem, remedy));
        if (_rows.Count > MostListed + 1)
        {
            _rows.RemoveAt(MostListed + 1);
        }
    }

    /// <summary>Hands the rows over as faults, in the order of their lines.</summary>
    public void Report()
    {
        foreach ((int line, (string problem, string remedy)) in _rows.Take(MostListed))
        {
            faults.Add(line, problem, remedy);
        }

        if (_rows.Count > MostListed)
        {
            int more = _count - MostListed;
            string many = IsFull ? "more" : FormattableString.Invariant($"{more} more");
            faults.Add(_rows.Keys[MostListed], $"and {many} bad {(more == 1 ? "row" : "rows")} from here on",
                "correct them too, or export the sweep again");
        }
    }
}
