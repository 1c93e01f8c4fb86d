using SweepStats.Files.Traces.Twins;

namespace SweepStats.Files.Traces;

/// <summary>What is known about a trace file beside its content. What the file states goes before.</summary>
public sealed record TraceReadOptions
{
    /// <summary>Unit of frequency for files that do not say.</summary>
    public FrequencyUnit? FrequencyUnit { get; init; }

    /// <summary>Unit of level for files that do not say.</summary>
    public LevelUnit? LevelUnit { get; init; }

    /// <summary>Columns wanted, by header or by number from 1, or S-parameters; empty for every level column.</summary>
    public ImmutableArray<string> Columns { get; init; } = [];

    /// <summary>The column of frequencies, by header or by number from 1; null to find it.</summary>
    public string? FrequencyColumn { get; init; }

    /// <summary>The column with the phase of the one level wanted; null to find it.</summary>
    public string? PhaseColumn { get; init; }

    /// <summary>Unit of <see cref="PhaseColumn"/> where its name does not say.</summary>
    public PhaseUnit? PhaseUnit { get; init; }

    /// <summary>
    /// The column with the real part of a complex ratio whose magnitude is the level; stated together with
    /// <see cref="ImaginaryColumn"/>.
    /// </summary>
    public string? RealColumn { get; init; }

    /// <summary>The column with its imaginary part.</summary>
    public string? ImaginaryColumn { get; init; }

    /// <summary>
    /// Whether <see cref="FrequencyUnit"/> is stated of this very file, so that a file that states another is refused.
    /// </summary>
    public bool IsOwnFrequencyUnit { get; init; }

    /// <summary>
    /// Whether <see cref="LevelUnit"/> is stated of this very file, so that a file that states another is refused.
    /// </summary>
    public bool IsOwnLevelUnit { get; init; }

    /// <summary>Where these units are stated, as an assumption names it.</summary>
    public string StatedIn { get; init; } = "campaign.toml";

    /// <summary>Where <see cref="Columns"/> are stated, as a message names it.</summary>
    internal string ColumnsStatedIn { get => field ?? (ColumnsOnCommandLine ? "--column" : "'column' in sweeps.csv"); init; }

    /// <summary>Every column that is named, whatever for.</summary>
    internal IEnumerable<string> NamedColumns =>
        Columns.Concat(new[] { FrequencyColumn, PhaseColumn, RealColumn, ImaginaryColumn }.OfType<string>());

    /// <summary>Whether columns are named with --column and not in sweeps.csv.</summary>
    public bool ColumnsOnCommandLine { get; init; }

    /// <summary>Where columns are named, as a remedy says it: "name the column to read " and this.</summary>
    internal string NamedWhere =>
        ColumnsOnCommandLine ? "with --column (its header or its number), in a campaign in sweeps.csv (column) or as "
            + "level_columns under [[files]] in campaign.toml"
            : "in sweeps.csv (column = its header or its number), or as level_columns under [[files]] in campaign.toml";

    /// <summary>What to do where nobody can tell which column is the level.</summary>
    internal string NameColumn => "name the column to read " + NamedWhere;

    internal GridMemory Grids { get; init; } = new();

    /// <summary>Files read before, for reading those like them sooner; null where every file is read for itself.</summary>
    internal TwinMemory? Twins { get; init; }
}
