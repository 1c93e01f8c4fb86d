using System.Globalization;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Traces;
using SweepStats.Files.Traces.Tables;
using SweepStats.Quantities;

namespace SweepStats.Files.Proposals;

/// <summary>Takes the sweeps of a file as a campaign would, each by the column that names it.</summary>
internal static class FileTaking
{
    private const StatableKeys Units = StatableKeys.FrequencyUnit | StatableKeys.LevelUnit;
    private const double UsualImpedanceOhm = 50;
    private const int MostColumns = 200;

    // So that levels of files without unit can be held against each other; nothing else is made of them.
    private static readonly TraceReadOptions AnyUnits =
        new() { FrequencyUnit = FrequencyUnit.Megahertz, LevelUnit = LevelUnit.Decibels };

    /// <summary>The sweeps of a file; what keeps it from being read is in the answer.</summary>
    /// <param name="root">The folder.</param>
    /// <param name="file">The file, relative to it, with '/'.</param>
    public static TakenFile Of(string root, string file)
    {
        string path = Path.Combine(root, file);
        if (ManifestName.Problem(file) is { } problem)
        {
            return Refused(file, [new ReadFault(file, null, problem, "rename it, so that sweeps.csv can name it")]);
        }

        if (!FolderWalk.LiesWithin(root, path))
        {
            return Refused(file,
                [new ReadFault(file, null, "the file is a link that leads out of the campaign",
                    "put the file itself into the campaign")]);
        }

        TraceReading seen = TraceFile.Look(path, file, new TraceReadOptions());
        TraceReading taken = TraceFile.Taken(seen, file, new TraceReadOptions());
        var at = new FilePlace(path, file);
        return taken.Faults.IsEmpty ? Of(at, seen, taken, new TraceReadOptions()) : Doubtful(at, taken.Faults);
    }

    // What only lacks its units is a sweep all the same. What is refused as a whole, but names a role for each column, holds
    // sweeps once they are named.
    private static TakenFile Doubtful(FilePlace at, ImmutableArray<ReadFault> faults)
    {
        StatableKeys asks = faults.Aggregate(StatableKeys.None, (all, f) => all | f.Asks);
        TraceReadOptions said = new()
        {
            FrequencyUnit = asks.HasFlag(StatableKeys.FrequencyUnit) ? AnyUnits.FrequencyUnit : null,
            LevelUnit = asks.HasFlag(StatableKeys.LevelUnit) ? AnyUnits.LevelUnit : null,
        };
        TraceReading seen = TraceFile.Look(at.Path, at.File, said);
        TraceReading taken = TraceFile.Taken(seen, at.File, said);
        taken = taken.Faults.IsEmpty ? taken : NamedByRole(at, seen, said);
        if (!taken.Faults.IsEmpty || taken.Traces.IsEmpty)
        {
            return Refused(at.File, faults);
        }

        TakenFile file = Of(at, seen, taken, said);
        return file with
        {
            Sweeps =
            [.. file.Sweeps.Select(
                s => s with { Asks = asks & Units, Scale = asks.HasFlag(StatableKeys.LevelUnit) ? null : s.Scale })],
        };
    }

    // Several readings of the same sweeps, such as highest and mean, are no sweeps beside each other.
    private static TraceReading NamedByRole(FilePlace at, TraceReading seen, TraceReadOptions said)
    {
        Trace[] named = [.. seen.Traces.Where(t => NameReader.Read(t.Column).Role is not null)];
        bool statistics = seen.Traces.Select(t => ColumnName.Of(t.Column).Statistic).Distinct().Count() > 1;
        if (named.Length < 2 || statistics)
        {
            return new TraceReading();
        }

        // Others beside them are sweeps too, unless their names leave open whether they are levels at all.
        TraceReading all = seen.Traces.Any(t => t.Doubts.Any(d => d.Asks.HasFlag(StatableKeys.LevelColumns))) ? new TraceReading()
            : Of([.. seen.Traces.Where(t => t.Blank is null && t.Quantity != "correction")]);
        return all.Faults.IsEmpty && !all.Traces.IsEmpty ? all : Of(named);

        TraceReading Of(Trace[] traces) =>
            TraceFile.Read(at.Path, at.File, said with { Columns = [.. traces.Select(t => t.Column)] });
    }

    private static TakenFile Of(FilePlace at, TraceReading seen, TraceReading taken, TraceReadOptions said)
    {
        // What a campaign reads by itself as one sweep needs no name.
        bool alone =
            taken.Traces.Length == 1 && TraceFile.Taken(seen, at.File, said) is { Faults.IsEmpty: true, Traces.Length: 1 };
        ImmutableArray<string>? columns = alone ? [] : Columns(at, taken.Traces, said);
        if (columns is not { } named)
        {
            return Refused(at.File,
                [new ReadFault(at.File, null, "its traces cannot be told apart by name or number", "put one sweep into a file")]);
        }

        SweepCandidate whole = Named(at.File);
        return new TakenFile(at.File, [.. taken.Traces.Select((t, i) => Candidate(whole, t) with
        {
            Column = named.IsEmpty ? null : named[i],
            Header = taken.Traces.Length > 1 ? NameReader.Read(t.Column) : null,
        })])
        {
            NotTaken = [.. seen.Traces.Where(s => !taken.Traces.Any(t => t.Column == s.Column)).Select(t => t.Column)],
        };
    }

    private static SweepCandidate Candidate(SweepCandidate file, Trace trace) => file with
    {
        Level = SweepLevel.Median(trace, UsualImpedanceOhm),
        Scale = trace.Unit?.Scale(),
        Span = new FrequencyBand(new Hertz(trace.Axis.Hertz[0]), new Hertz(trace.Axis.Hertz[^1])),
        TakenAt = trace.TakenAt,
    };

    // By its name where that gives the same levels again, else by its number: what sweeps.csv says must be what is read.
    private static ImmutableArray<string>? Columns(FilePlace at, ImmutableArray<Trace> traces, TraceReadOptions said)
    {
        ImmutableArray<string> names = [.. traces.Select(t => t.Column)];
        if (Gives(at, traces, said, names))
        {
            return names;
        }

        var columns = ImmutableArray.CreateBuilder<string>();
        foreach (Trace trace in traces)
        {
            string? column =
                Enumerable.Range(1, MostColumns).Select(n => n.ToString(CultureInfo.InvariantCulture)).Prepend(trace.Column)
                .Take(Math.Min(MostColumns, 2 * (traces.Length + 2)))
                    .FirstOrDefault(c => !columns.Contains(c) && Gives(at, [trace], said, [c]));
            if (column is null)
            {
                return null;
            }

            columns.Add(column);
        }

        return columns.ToImmutable();
    }

    private static bool Gives(FilePlace at, ImmutableArray<Trace> traces, TraceReadOptions said, ImmutableArray<string> columns)
    {
        if (columns.Any(c => c.Trim() != c || c.Any(char.IsControl) || (c.Length > 0 && "=+-@".Contains(c[0])))
            || columns.Distinct(StringComparer.OrdinalIgnoreCase).Count() < columns.Length)
        {
            return false;
        }

        TraceReading again = TraceFile.Read(at.Path, at.File, said with { Columns = columns });
        return again.Faults.IsEmpty && again.Traces.Length == traces.Length
            && again.Traces.Zip(traces).All(p => p.First.Levels.AsSpan().SequenceEqual(p.Second.Levels.AsSpan()));
    }

    private static SweepCandidate Named(string file)
    {
        string[] parts = file.Split('/');
        return new SweepCandidate(file, null)
        {
            Folders = [.. parts[..^1].Select(NameReader.Read)],
            Name = NameReader.Read(Path.GetFileNameWithoutExtension(parts[^1])),
        };
    }

    private static TakenFile Refused(string file, ImmutableArray<ReadFault> faults) =>
        new(file, [Named(file) with { Faults = faults }]);

    /// <summary>Where a file lies, and its name in the campaign.</summary>
    private readonly record struct FilePlace(string Path, string File);
}
