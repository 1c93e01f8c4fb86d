using System.Collections.Concurrent;
using System.Runtime.InteropServices;
using SweepStats.Files.Traces;
using SweepStats.Storage;
using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>Makes sweeps of the traces of files, as the list of the campaign and its settings say. For many threads.</summary>
/// <param name="settings">The settings.</param>
/// <param name="store">Where levels of covered sweeps are kept: of those there are many, and of the others few.</param>
internal sealed class SweepMaker(CampaignSettings settings, RowStore store)
{
    private const double UsualImpedanceOhm = 50;

    private readonly ConcurrentDictionary<FrequencyGrid, FrequencyGrid> _grids = [];

    /// <summary>The settings.</summary>
    public CampaignSettings Settings => settings;

    /// <summary>The sweeps of a file.</summary>
    /// <param name="entries">Its entries of the list, at least one.</param>
    /// <param name="reading">What was found in it.</param>
    public FileSweeps Of(SweepEntry[] entries, TraceReading reading)
    {
        var sweeps = ImmutableArray.CreateBuilder<Sweep>(reading.Traces.Length);
        List<string> assumptions = [.. reading.Assumptions.Select(a => $"{entries[0].File}: {a}")];
        bool voltages = false, each = entries[0].Column is not null;
        for (int k = 0; k < reading.Traces.Length; k++)
        {
            Trace trace = reading.Traces[k];
            assumptions.AddRange(Reflection(entries[0], trace));
            voltages |= trace.Unit!.Value.IsVoltage();
            string name = reading.Traces.Length > 1 || each ? $"{entries[0].File}[{trace.Column}]" : entries[0].File;
            sweeps.Add(AsSweep(name, entries[each ? k : 0], InDecibels(trace, settings.ImpedanceOhm ?? UsualImpedanceOhm)));
        }

        return new FileSweeps(entries[0].File, sweeps.ToImmutable(), reading.Faults, [.. assumptions], reading.Sha256, voltages);
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

    private Sweep AsSweep(string name, SweepEntry entry, Trace trace) =>
        new(name, entry.Role, _grids.GetOrAdd(trace.Axis.Grid!, trace.Axis.Grid!), trace.Levels, trace.Unit!.Value.Scale(),
            entry.Role == SweepRole.Covered ? store : RowStore.InMemory)
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
}
