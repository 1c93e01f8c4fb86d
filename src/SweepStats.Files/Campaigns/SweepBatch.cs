using SweepStats.Files.Traces;
using SweepStats.Files.Traces.Twins;
using SweepStats.Storage;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>The sweeps of all listed files, read side by side and put back in their order.</summary>
internal sealed record SweepBatch(
    ImmutableArray<Sweep> Sweeps, ImmutableArray<ReadFault> Faults, ImmutableArray<InputFile> Inputs,
    ImmutableArray<string> Assumptions)
{
    /// <summary>Whether a level is a voltage, so that the impedance matters.</summary>
    public bool HoldsVoltages { get; private init; }

    /// <param name="root">The campaign's folder.</param>
    /// <param name="entries">The list of its sweeps.</param>
    /// <param name="maker">Makes sweeps of what the files hold.</param>
    /// <param name="work">How the work is shared out.</param>
    /// <exception cref="AggregateException">
    /// Holds a <see cref="ScratchFileException"/>: there is no room for temporary files.
    /// </exception>
    public static SweepBatch Read(string root, ImmutableArray<SweepEntry> entries, SweepMaker maker, SharedWork work)
    {
        SweepEntry[][] files = [.. entries.GroupBy(e => e.File).Select(g => g.ToArray())];
        var read = new FileSweeps[files.Length];
        int done = 0;
        var memory = new Memory(new GridMemory(), new TwinMemory());
        Parallel.For(0, files.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, work.Threads) }, i =>
        {
            read[i] = maker.Of(files[i], ReadOne(root, files[i], maker.Settings, memory));
            work.Progress?.Report((double)Interlocked.Increment(ref done) / files.Length);
        });
        return Gathered(read, maker.Settings);
    }

    private static TraceReading ReadOne(string root, SweepEntry[] entries, CampaignSettings settings, Memory memory)
    {
        string file = entries[0].File;
        string path = Path.Combine(root, file);
        if (IsLink(path) && File.Exists(path) && !FolderWalk.LiesWithin(root, path))
        {
            return TraceReading.Refused(file, null, "the file is a link that leads out of the campaign",
                "put the file itself into the campaign");
        }

        TraceReadOptions options = settings.Known(file) with { Grids = memory.Grids, Twins = memory.Twins };
        string[] named = [.. entries.Where(e => e.Column is not null).Select(e => e.Column!)];
        return TraceFile.Read(path, file,
            named.Length == 0 ? options : options with { Columns = [.. named], ColumnsStatedIn = "'column' in sweeps.csv" });
    }

    // Asked first: a file that is none lies where the list says.
    private static bool IsLink(string path) => new FileInfo(path).Attributes.HasFlag(FileAttributes.ReparsePoint);

    private static SweepBatch Gathered(FileSweeps[] files, CampaignSettings settings)
    {
        bool voltages = files.Any(f => f.HoldsVoltages);
        string[] impedance = voltages && settings.ImpedanceOhm is null
            ? ["voltages were taken across 50 Ω, since impedance_ohm is not set under [setup] in campaign.toml"] : [];
        return new SweepBatch([.. files.SelectMany(f => f.Sweeps)], [.. files.SelectMany(f => f.Faults)],
            [.. files.Where(f => f.Sha256.Length > 0).Select(f => new InputFile(f.File, f.Sha256))],
            [.. files.SelectMany(f => f.Assumptions), .. impedance])
        {
            HoldsVoltages = voltages,
        };
    }

    /// <summary>What files that are read side by side share.</summary>
    private sealed record Memory(GridMemory Grids, TwinMemory Twins);
}
