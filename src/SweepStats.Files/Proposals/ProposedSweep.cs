using SweepStats.Sweeps;

namespace SweepStats.Files.Proposals;

/// <summary>A row of sweeps.csv as init proposes it. Immutable.</summary>
public sealed record ProposedSweep
{
    /// <summary>The file, relative to the folder, with '/'.</summary>
    public required string File { get; init; }

    /// <summary>The column of the file; null where it holds one sweep.</summary>
    public string? Column { get; init; }

    /// <summary>What it was taken for; null where that is doubtful.</summary>
    public SweepRole? Role { get; init; }

    /// <summary>The lot of a covered sweep; null for the only one.</summary>
    public string? Lot { get; init; }

    /// <summary>The specimen of a covered sweep; null where that is doubtful.</summary>
    public string? Specimen { get; init; }

    /// <summary>The placement of a covered sweep; null where no name tells one.</summary>
    public string? Placement { get; init; }

    /// <summary>When it was taken; null where neither file nor name tells.</summary>
    public DateTimeOffset? TakenAt { get; init; }

    /// <summary>Why each cell is what it is, one short sentence each.</summary>
    public required ImmutableArray<string> Reasons { get; init; }

    /// <summary>Why the file cannot be read as it is: its row is a remark then; empty where it can.</summary>
    public ImmutableArray<ReadFault> Faults { get; init; } = [];

    /// <summary>What a person has to fill in, each with what is doubtful about it; empty where nothing is doubtful.</summary>
    public ImmutableArray<string> ToFillIn { get; init; } = [];
}
