using SweepStats.Files.Campaigns;
using SweepStats.Files.Traces;
using SweepStats.Sweeps;

namespace SweepStats.Files.Proposals;

/// <summary>What sweeps.csv and campaign.toml of a folder of trace files may say: each cell guessed from names and levels, with
/// its reason. Immutable.</summary>
public sealed record FolderProposal
{
    /// <summary>The rows, those of files that cannot be read among them, in natural order of their files.</summary>
    public required ImmutableArray<ProposedSweep> Rows { get; init; }

    /// <summary>Links and folders that cannot be followed or listed.</summary>
    public required ImmutableArray<ReadFault> NotListed { get; init; }

    /// <summary>The rows of sweeps that can be read.</summary>
    public IEnumerable<ProposedSweep> Sweeps => Rows.Where(s => s.Faults.IsEmpty);

    /// <summary>Files that cannot be read as they are, or hold nothing that is a sweep, each with the reason.</summary>
    public IEnumerable<ReadFault> LeftOut => [.. NotListed, .. Rows.SelectMany(r => r.Faults)];

    /// <summary>Traces of files that were taken, which are no sweeps: "file: trace".</summary>
    public required ImmutableArray<string> TracesLeftOut { get; init; }

    /// <summary>Files that do not say their unit of frequency.</summary>
    public required ImmutableArray<string> WithoutFrequencyUnit { get; init; }

    /// <summary>Files that do not say their unit of level.</summary>
    public required ImmutableArray<string> WithoutLevelUnit { get; init; }

    /// <summary>Files of other kinds, which were not looked at.</summary>
    public required int OtherFiles { get; init; }

    /// <summary>Rows in which something has to be filled in.</summary>
    public IEnumerable<ProposedSweep> Doubtful => Sweeps.Where(s => !s.ToFillIn.IsEmpty);

    /// <summary>Looks at a folder. Nothing in it is changed.</summary>
    /// <param name="folder">The folder.</param>
    /// <returns>The proposal; null where the folder is not there or holds no trace file.</returns>
    /// <exception cref="IOException">The folder holds too many files to be a campaign.</exception>
    public static FolderProposal? Of(string folder)
    {
        if (!Directory.Exists(folder))
        {
            return null;
        }

        string root = Path.GetFullPath(folder);
        FolderWalk walk = FolderWalk.Through(root);
        if (walk.TooMany is { } tooMany)
        {
            throw new IOException(new ReadFault(folder, null, tooMany.Problem, tooMany.Remedy).ToString());
        }

        string[] files = Files(root, walk);
        string[] traces = [.. files.Where(IsTrace)];
        if (traces.Length == 0)
        {
            return null;
        }

        TakenFile[] taken = [.. traces.Select(f => FileTaking.Of(root, f))];
        ImmutableArray<SweepCandidate> sweeps = [.. taken.SelectMany(t => t.Sweeps)];
        return new FolderProposal
        {
            Rows = Proposed(sweeps),
            NotListed = walk.Faults,
            TracesLeftOut = [.. taken.SelectMany(t => t.NotTaken.Select(n => $"{t.File}: {n}"))],
            WithoutFrequencyUnit = [.. Asking(sweeps, StatableKeys.FrequencyUnit)],
            WithoutLevelUnit = [.. Asking(sweeps, StatableKeys.LevelUnit)],
            OtherFiles = files.Length - traces.Length,
        };
    }

    private static string[] Files(string root, FolderWalk walk)
    {
        string[] reports = FolderRoles.ReportsAmong(root, walk);
        return [.. walk.Files.Where(f => !reports.Any(r => f.StartsWith(r, StringComparison.Ordinal)))];
    }

    private static bool IsTrace(string file) => TraceFile.HasTraceExtension(file) && file != CampaignFolder.TruthName
        && !FolderRoles.IsNotes(file[(file.LastIndexOf('/') + 1)..]);

    private static IEnumerable<string> Asking(ImmutableArray<SweepCandidate> sweeps, StatableKeys key) =>
        sweeps.Where(s => s.Asks.HasFlag(key)).Select(s => s.File).Distinct();

    private static ImmutableArray<ProposedSweep> Proposed(ImmutableArray<SweepCandidate> sweeps)
    {
        ImmutableArray<RoleGuess> roles = new RoleProposer(sweeps).All();
        ImmutableArray<TimeGuess> times = TimeProposer.Of(sweeps);
        int[] covered = [.. Enumerable.Range(0, sweeps.Length).Where(i => roles[i].Role is null or SweepRole.Covered)];
        ImmutableArray<PlaceGuess> places = new PlaceProposer(sweeps, [.. covered.Select(i => sweeps[i])]).All();
        Dictionary<int, PlaceGuess> placeOf = covered.Zip(places).ToDictionary(p => p.First, p => p.Second);
        return [.. sweeps.Select((s, i) => Row(s, roles[i], placeOf.GetValueOrDefault(i), times[i]))];
    }

    // Where the role is doubtful the rest is kept for the case that it is a covered one, but for a doubt that only then counts.
    private static ProposedSweep Row(SweepCandidate sweep, RoleGuess role, PlaceGuess? place, TimeGuess time)
    {
        string? asked = place?.ToFillIn is { } specimen ? role.Role is null ? $"if it is covered, {specimen}" : specimen : null;
        return new ProposedSweep
        {
            File = sweep.File,
            Column = sweep.Column,
            Role = role.Role,
            Lot = place?.Lot,
            Specimen = place?.Specimen,
            Placement = place?.Placement,
            TakenAt = time.At,
            Reasons = [.. new[] { role.Role is null ? "" : role.Reason, place?.Reason ?? "",
                time.Reason }.Where(r => r.Length > 0)],
            Faults = sweep.Faults,
            ToFillIn = [.. new[] { role.Role is null ? $"role: {role.Reason}" : null, asked }.OfType<string>()],
        };
    }
}
