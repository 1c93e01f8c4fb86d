namespace SweepStats.Files;

/// <summary>Collects the faults of one file, and what was taken for granted in reading it.</summary>
/// <param name="file">Path as people see it.</param>
internal sealed class FaultList(string file)
{
    private readonly List<ReadFault> _faults = [];
    private readonly List<string> _assumptions = [];

    /// <summary>Path as people see it; every fault that is added by its line names it.</summary>
    public string File => file;

    /// <summary>Whether anything is wrong; what was taken for granted does not count.</summary>
    public bool Any => _faults.Count > 0;

    /// <summary>The faults so far, in the order in which they were found.</summary>
    public ImmutableArray<ReadFault> All => [.. _faults];

    /// <summary>What was taken for granted so far, in order.</summary>
    public ImmutableArray<string> Assumptions => [.. _assumptions];

    /// <summary>Notes what was taken for granted; a long sentence is shortened.</summary>
    public void Assume(string assumption) => _assumptions.Add(ReadFault.Shortened(assumption));

    /// <summary>Notes several in their order, each shortened where it is long.</summary>
    public void AssumeAll(IEnumerable<string> assumptions)
    {
        foreach (string assumption in assumptions)
        {
            Assume(assumption);
        }
    }

    /// <summary>Adds a fault of this file; its line counts from 1, null where it concerns no single line.</summary>
    public void Add(int? line, string problem, string remedy) => _faults.Add(new ReadFault(file, line, problem, remedy));

    /// <summary>Adds a fault as it is, which may name another file.</summary>
    public void Add(ReadFault fault) => _faults.Add(fault);

    /// <summary>Adds several as they are, in their order.</summary>
    public void AddRange(IEnumerable<ReadFault> faults) => _faults.AddRange(faults);
}
