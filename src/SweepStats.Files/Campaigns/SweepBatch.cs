using System.Collections.Immutable;
using System.Runtime.InteropServices;
using SweepStats.Files.Traces;
using SweepStats.Files.Traces.Twins;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>The sweeps of all listed files, read side by side and put back in their order.</summary>
internal sealed record SweepBatch(
    ImmutableArray<Sweep> Sweeps, ImmutableArray<ReadFault> Faults, ImmutableArray<InputFile> Inputs,
    ImmutableArray<string> Assumptions)
{
    private const double UsualImpedanceOhm = 50;

    /// <summary>Whether a level is a voltage, so that the impedance matters.</summary>
    public bool HoldsVoltages { get; private init; }

    public static SweepBatch Read(string root, ImmutableArray<SweepEntry> entries, CampaignSettings settings, SharedWork work)
    {
        SweepEntry[][] files = [.. entries.GroupBy(e => e.File).Select(g => g.ToArray())];
        var readings = new TraceReading[files.Length];
        int done = 0;
        var memory = new Memory(new GridMemory(), new TwinMemory());
        Parallel.For(0, files.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, work.Threads) }, i =>
        {
            readings[i] = ReadOne(root, files[i], settings, memory);
            work.Progress?.Report((double)Interlocked.Increment(ref done) / files.Length);
        });
        return Gathered(files, readings, settings);
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

    private static SweepBatch Gathered(SweepEntry[][] files, TraceReading[] readings, CampaignSettings settings)
    {
        var sweeps = ImmutableArray.CreateBuilder<Sweep>();
        List<string> assumptions = [];
        var grids = new Dictionary<FrequencyGrid, FrequencyGrid>();
        bool impedanceUsed = false;
        for (int i = 0; i < files.Length; i++)
        {
            TraceReading reading = readings[i];
            assumptions.AddRange(reading.Assumptions.Select(a => $"{files[i][0].File}: {a}"));
            bool each = files[i][0].Column is not null;
            for (int k = 0; k < reading.Traces.Length; k++)
            {
                Trace trace = reading.Traces[k];
                FrequencyGrid grid = trace.Axis.Grid!;
                assumptions.AddRange(Reflection(files[i][0], trace));
                impedanceUsed |= trace.Unit!.Value.IsVoltage();
                grids.TryAdd(grid, grid);
                string name = reading.Traces.Length > 1 || each ? $"{files[i][0].File}[{trace.Column}]" : files[i][0].File;
                Trace level = InDecibels(trace, settings.ImpedanceOhm ?? UsualImpedanceOhm);
                sweeps.Add(AsSweep(name, files[i][each ? k : 0], level, grids[grid]));
            }
        }

        if (impedanceUsed && settings.ImpedanceOhm is null)
        {
            assumptions.Add("voltages were taken across 50 Ω, since impedance_ohm is not set under [setup] in campaign.toml");
        }

        return new SweepBatch(
            sweeps.ToImmutable(),
            [.. readings.SelectMany(r => r.Faults)],
            [.. readings.Zip(files).Where(p => p.First.Sha256.Length > 0)
                .Select(p => new InputFile(p.Second[0].File, p.First.Sha256))],
            [.. assumptions])
        {
            HoldsVoltages = impedanceUsed,
        };
    }

    // Asked for by name, it is read; but a wave that came back has not passed the specimen.
    private static IEnumerable<string> Reflection(SweepEntry entry, Trace trace) =>
        entry.Role == SweepRole.Covered && trace.Quantity is ['S', var row, var column] && row == column
            ? [$"{entry.File}: {trace.Column} is a reflection: it says nothing of the attenuation of the specimen"]
            : [];

    // Levels that are in dB stay as they are.
    private static Trace InDecibels(Trace trace, double impedanceOhm)
    {
        LevelUnit unit = trace.Unit!.Value;
        if (unit is LevelUnit.Decibels or LevelUnit.DecibelMilliwatts or LevelUnit.DecibelMicrovoltsPerMeter)
        {
            return trace;
        }

        var converted = new double[trace.Levels.Length];
        for (int i = 0; i < converted.Length; i++)
        {
            converted[i] = unit.ToDecibels(trace.Levels[i], impedanceOhm);
        }

        return trace with { Levels = ImmutableCollectionsMarshal.AsImmutableArray(converted) };
    }

    private static Sweep AsSweep(string name, SweepEntry entry, Trace trace, FrequencyGrid grid) =>
        new(name, entry.Role, grid, trace.Levels, trace.Unit!.Value.Scale())
        {
            Lot = entry.Lot,
            Specimen = entry.Specimen,
            Placement = entry.Placement,
            TakenAt = entry.TakenAt ?? trace.TakenAt,
            SourceDbm = entry.SourceDbm,
            Phases = trace.Phases,
            ReverseLevels = trace.ReverseLevels,
            Settings = trace.Settings,
            ExcludedBecause = entry.Exclude,
        };

    /// <summary>What files that are read side by side share.</summary>
    private sealed record Memory(GridMemory Grids, TwinMemory Twins);
}
