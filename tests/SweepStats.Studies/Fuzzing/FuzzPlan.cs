using SweepStats.Files.Traces;

namespace SweepStats.Studies.Fuzzing;

/// <summary>What a run reads: the same plan makes the same files.</summary>
/// <param name="Files">How many.</param>
/// <param name="Seed">Seed of the random numbers.</param>
/// <param name="Folder">Folder of further seed files; null for none.</param>
internal sealed record FuzzPlan(long Files, long Seed, string? Folder)
{
    private const int WarmUps = 300;

    private readonly FuzzSeed[] _seeds = FuzzSeeds.All(Folder);

    public int Seeds => _seeds.Length;

    public FuzzCase Case(long file) => FuzzCase.Of(file, Seed, _seeds);

    /// <summary>Compiles the code and fills the pools, which would be laid at the door of the first files.</summary>
    public void WarmUp(FuzzReading reader)
    {
        foreach (FuzzSeed seed in _seeds)
        {
            reader.Judge(new FuzzCase(0, seed.Name, seed.Content, new TraceReadOptions()));
        }

        for (int i = 1; i <= WarmUps; i++)
        {
            reader.Judge(Case(-i));
        }
    }

    /// <summary>What comes of the seeds themselves, unchanged.</summary>
    public IEnumerable<(string Name, TraceReading Reading)> Unchanged() =>
        _seeds.Select(
            s => (s.Name, TraceFile.Look(s.Content, s.Name,
                new TraceReadOptions { FrequencyUnit = FrequencyUnit.Hertz, LevelUnit = LevelUnit.DecibelMilliwatts })));
}
