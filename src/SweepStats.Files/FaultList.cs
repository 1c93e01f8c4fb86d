using System.Collections.Immutable;

namespace SweepStats.Files;

/// <summary>Collects the faults of one file, and what was taken for granted in reading it.</summary>
/// <param name="file">Path as people see it.</param>
internal sealed class FaultList(string file)
{
    private readonly List<ReadFault> _faults = [];
    private readonly List<string> _assumptions = [];

    public string File => file;

    public bool Any => _faults.Count > 0;

    public ImmutableArray<ReadFault> All => [.. _faults];

    public ImmutableArray<string> Assumptions => [.. _assumptions];

    public void Assume(string assumption) => _assumptions.Add(ReadFault.Shortened(assumption));

    public void AssumeAll(IEnumerable<string> assumptions)
    {
        foreach (string assumption in assumptions)
        {
            Assume(assumption);
        }
    }

    public void Add(int? line, string problem, string remedy) => _faults.Add(new ReadFault(file, line, problem, remedy));

    public void Add(ReadFault fault) => _faults.Add(fault);

    public void AddRange(IEnumerable<ReadFault> faults) => _faults.AddRange(faults);
}
